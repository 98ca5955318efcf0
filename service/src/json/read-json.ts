import { InputError, type Problem } from '@draughtbook/shared-calc'
import { createScanner } from 'jsonc-parser'
import { duplicateKeys, type JsonFault, syntaxFaults } from './json-faults.js'
import { countKeys, DEEPEST, scanJson } from './scan-json.js'

/** JSON that cannot be read at all, before any question of what it says. */
export class JsonError extends InputError {
  constructor(readonly faults: readonly JsonFault[]) {
    super(faults.map(({ line: _, ...problem }): Problem => problem))
  }
}

/**
 * Reads JSON text (RFC 8259). Stricter than JSON.parse in two ways: the same key twice in one object is refused, not
 * silently settled by the later one, and so is nesting deeper than {@link DEEPEST}.
 * @throws JsonError naming line, column and field of each fault
 */
export function readJson(text: string): unknown {
  if (text.trim() === '') throw new JsonError([{ path: '', message: 'it is empty' }])
  const { keys, depth } = scanJson(text)
  if (depth > DEEPEST) throw tooDeep()
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    // Whoever looks for the fault reads on behind it, where the nesting may be another.
    if (nestingToRecover(text) > DEEPEST) throw tooDeep()
    throw new JsonError(syntaxFaults(text))
  }
  // Fewer keys in the value than in the text: some were given twice. Only then is it worth finding out which.
  if (countKeys(value) !== keys) throw new JsonError(duplicateKeys(text))
  return value
}

/** The JSON of a body's bytes. Throws JsonError naming the place of the first fault. */
export function jsonOf(bytes: Uint8Array): unknown {
  if (bytes.length === 0) throw new JsonError([{ path: '', message: 'the body is empty' }])
  return readJson(utf8(bytes))
}

const decoder = new TextDecoder('utf-8', { fatal: true })

function utf8(bytes: Uint8Array): string {
  try {
    return decoder.decode(bytes)
  } catch {
    throw new JsonError([{ path: '', message: 'the body is not text in UTF-8' }])
  }
}

const tooDeep = () =>
  new JsonError([{ path: '', message: `the JSON is nested more than ${DEEPEST} levels deep` }])

const CLOSED_BY: Readonly<Record<string, string>> = { '{': '}', '[': ']' }

/**
 * The deepest that a parser which goes on behind faults may nest in a text that is not valid: by its own tokens, because it ends
 * an open string at the end of the line and passes over comments, and with each bracket open until its own kind closes it.
 */
function nestingToRecover(text: string): number {
  const scanner = createScanner(text, true)
  const open: string[] = []
  let deepest = 0
  for (;;) {
    scanner.scan()
    // The first character of a token shows whether it is a bracket.
    const letter = text[scanner.getTokenOffset()]
    if (letter === undefined) return deepest
    const closing = CLOSED_BY[letter]
    if (closing !== undefined) deepest = Math.max(deepest, open.push(closing))
    else if (open.at(-1) === letter) open.pop()
  }
}
