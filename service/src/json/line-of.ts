import { findNodeAtLocation, type JSONPath, parseTree } from 'jsonc-parser'
import { LineTable } from './line-table.js'

/**
 * Finds the line, from 1, on which a field of a JSON text stands; for a missing field, that of what should hold it. The text is
 * read once for all the fields that are asked for, whose paths are as in `ranges[0].exponent`.
 */
export function lineFinder(text: string): (path: string) => number {
  const root = parseTree(text)
  const lines = new LineTable(text)
  return (path) => {
    const keys = keysOf(path)
    for (let length = keys.length; root && length > 0; length--) {
      const node = findNodeAtLocation(root, keys.slice(0, length))
      // The key is in the node's parent; a long value may begin on a later line.
      if (node) return lines.place(node.parent?.type === 'property' ? node.parent.offset : node.offset).line
    }
    return 1
  }
}

const keysOf = (path: string): JSONPath =>
  [...path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map(([, key, index]) =>
    index === undefined ? (key ?? '') : Number(index),
  )
