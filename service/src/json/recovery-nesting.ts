import { createScanner } from 'jsonc-parser'

const CLOSED_BY: Readonly<Record<string, string>> = { '{': '}', '[': ']' }

/**
 * The deepest that a parser which goes on behind faults may nest in a text that is not valid: by its own tokens, because it ends
 * an open string at the end of the line and passes over comments, and with each bracket open until its own kind closes it.
 */
export function nestingToRecover(text: string): number {
  const scanner = createScanner(text, true)
  const open: string[] = []
  let deepest = 0
  for (;;) {
    scanner.scan()
    // What a token begins with says whether it is a bracket.
    const letter = text[scanner.getTokenOffset()]
    if (letter === undefined) return deepest
    const closing = CLOSED_BY[letter]
    if (closing !== undefined) deepest = Math.max(deepest, open.push(closing))
    else if (open.at(-1) === letter) open.pop()
  }
}
