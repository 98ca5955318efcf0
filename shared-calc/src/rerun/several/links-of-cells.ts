import { parseAddress } from '../../log/grid/address.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import { Package } from '../look/package.js'
import { attr, child, children } from '../look/xml-tree.js'

/** Where the cells of a sheet lead to, by row and column counted from 1, as `11|3`. */
export function linksOfCells(parts: Parts, sheet: string): ReadonlyMap<string, string> {
  const from = new Package(parts)
  const path = from.sheets.find(({ name }) => name === sheet)?.path
  if (path === undefined) return new Map()
  const links = from.links(path)
  return new Map(
    children(child(from.tree(path), 'hyperlinks'), 'hyperlink').flatMap((one): [string, string][] => {
      const place = parseAddress(attr(one, 'ref') ?? '')
      const target = links.get(attr(one, 'id') ?? '')?.target
      return place && target !== undefined ? [[`${place.row + 1}|${place.column + 1}`, target]] : []
    }),
  )
}
