import { type Problem, pathText } from '@draughtbook/shared-calc'
import {
  getLocation,
  getNodePath,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser'
import { LineTable } from './line-table.js'

const STRICT = { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false }

/** A fault of a JSON text, with the line it is on where it has one. */
export interface JsonFault extends Problem {
  readonly line?: number
}

/** Most errors that are located: nobody reads more, and a text can hold one per character. */
export const MOST_FAULTS = 100

/** The first fault of a JSON text that does not parse; later ones mostly follow from it. Its nesting must be bounded. */
export function syntaxFaults(text: string): JsonFault[] {
  const errors: ParseError[] = []
  parseTree(text, errors, STRICT)
  const [first] = errors
  if (!first) return [{ path: '', message: 'not valid JSON' }]
  const { offset, length } = first
  const lines = new LineTable(text)
  const found = text.slice(offset, offset + Math.max(1, Math.min(length, 20)))
  const what = found.trim() ? `${JSON.stringify(found)} is not valid JSON here` : 'not valid JSON'
  return [
    {
      path: pathText(getLocation(text, offset).path),
      line: lines.place(offset).line,
      message: `${lines.text(offset)}: ${what} (${words(printParseErrorCode(first.error))})`,
    },
  ]
}

/** The keys that appear twice in one object, the first {@link MOST_FAULTS} of them, and how many more there are. */
export function duplicateKeys(text: string): JsonFault[] {
  const root = parseTree(text, [], STRICT)
  const lines = new LineTable(text)
  const faults: JsonFault[] = []
  let more = 0
  const waiting: Node[] = root ? [root] : []
  for (let node = waiting.pop(); node; node = waiting.pop()) {
    for (const key of repeatedKeys(node)) {
      if (faults.length >= MOST_FAULTS) more++
      else
        faults.push({
          path: pathText([...getNodePath(node), String(key.value)]),
          line: lines.place(key.offset).line,
          message: `${lines.text(key.offset)}: the field appears twice`,
        })
    }
    // Backwards, so that the first child is looked at next and faults come in the order of the text.
    const children = node.children ?? []
    for (let index = children.length - 1; index >= 0; index--) waiting.push(children[index] as Node)
  }
  if (more > 0) faults.push({ path: '', message: `and ${more} more fields that appear twice` })
  return faults
}

function repeatedKeys(node: Node): Node[] {
  if (node.type !== 'object') return []
  const seen = new Set<unknown>()
  return (node.children ?? []).flatMap(({ children }) => {
    const key = children?.[0]
    if (!key) return []
    const again = seen.has(key.value)
    seen.add(key.value)
    return again ? [key] : []
  })
}

/** ValueExpected → "value expected", CloseBraceExpected → "closing brace expected". */
const words = (code: string) =>
  code
    .replace(/(?<=[a-z])([A-Z])/g, ' $1')
    .replace(/^Close /, 'Closing ')
    .toLowerCase()
