import type { Attributes } from '../../container/xml.js'
import { parseBlock } from '../address.js'
import type { DefinedName } from '../grid.js'

/** A name for cells, written as `$'Test log'.$B$4:.$C$9`; undefined where it stands for anything else. */
export function namedBlock(attributes: Attributes): DefinedName | undefined {
  const text = attributes['table:cell-range-address'] ?? ''
  const match =
    /^\$?(?:'((?:[^']|'')+)'|([^'.]+))\.(\$?[A-Z]+\$?\d+)(?::(?:[^:]*\.)?(\$?[A-Z]+\$?\d+))?$/.exec(text)
  if (!match) return undefined
  const [, quoted, plain = '', first, last] = match
  const block = parseBlock(last === undefined ? `${first}` : `${first}:${last}`)
  const sheet = quoted?.replaceAll("''", "'") ?? plain
  return block && { name: attributes['table:name'] ?? '', sheet, block }
}
