import { findNodeAtLocation, type JSONPath, parseTree } from 'jsonc-parser'

/**
 * The line, from 1, on which a field stands in a JSON text; for a missing field, that of what should hold it.
 * @param path - as in `ranges[0].exponent`
 */
export function lineOf(text: string, path: string): number {
  const root = parseTree(text)
  const keys = keysOf(path)
  for (let length = keys.length; root && length > 0; length--) {
    const node = findNodeAtLocation(root, keys.slice(0, length))
    // The key stands in the node's parent; a long value may begin on a later line.
    if (node) return lineAt(text, node.parent?.type === 'property' ? node.parent.offset : node.offset)
  }
  return 1
}

const keysOf = (path: string): JSONPath =>
  [...path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map(([, key, index]) =>
    index === undefined ? (key ?? '') : Number(index),
  )

const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length
