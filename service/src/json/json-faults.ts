import { type Problem, pathText } from '@draughtbook/shared-calc'
import {
  getLocation,
  getNodePath,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser'

const STRICT = { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false }

/** The first fault of a JSON text that does not parse; later ones mostly follow from it. */
export function syntaxFaults(text: string): Problem[] {
  const errors: ParseError[] = []
  parseTree(text, errors, STRICT)
  const [first] = errors
  if (!first) return [{ path: '', message: 'not valid JSON' }]
  const { offset, length } = first
  const found = text.slice(offset, offset + Math.max(1, Math.min(length, 20)))
  const what = found.trim() ? `${JSON.stringify(found)} is not valid JSON here` : 'not valid JSON'
  return [
    {
      path: pathText(getLocation(text, offset).path),
      message: `${placeText(text, offset)}: ${what} (${words(printParseErrorCode(first.error))})`,
    },
  ]
}

/** Every key that stands twice in one object. */
export function duplicateKeys(text: string): Problem[] {
  const root = parseTree(text, [], STRICT)
  return root ? duplicatesIn(root, text) : []
}

function duplicatesIn(node: Node, text: string): Problem[] {
  const seen = new Set<unknown>()
  const here: Problem[] = []
  for (const { children } of node.type === 'object' ? (node.children ?? []) : []) {
    const [key] = children ?? []
    if (!key) continue
    if (seen.has(key.value))
      here.push({
        path: pathText([...getNodePath(node), String(key.value)]),
        message: `${placeText(text, key.offset)}: the field appears twice`,
      })
    seen.add(key.value)
  }
  return [...here, ...(node.children ?? []).flatMap((child) => duplicatesIn(child, text))]
}

/** "line 3, column 7", both counted from 1. */
export function placeText(text: string, offset: number): string {
  const before = text.slice(0, offset)
  const line = before.split('\n').length
  return `line ${line}, column ${offset - before.lastIndexOf('\n')}`
}

/** ValueExpected → "value expected". */
const words = (code: string) => code.replace(/(?<=[a-z])([A-Z])/g, ' $1').toLowerCase()
