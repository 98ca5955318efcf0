import { parseAddress } from './address.js'
import type { Cell, Grid, Sheet } from './grid.js'

/** A chain of references is followed so far; a circle of them ends there too. */
const MOST_STEPS = 8

/** "Cover!B4", "'Site data'!$B$4", "B4": a formula that does nothing but show another cell. */
const REFERENCE = /^=?(?:(?:'((?:[^']|''){1,31})'|([\p{L}\p{N}_.]{1,31}))!)?(\$?[A-Z]{1,3}\$?[0-9]{1,7})$/u

/**
 * A workbook in which a formula without a stored result that does nothing but show another cell has what stands there. Programs that
 * write workbooks without working them out leave such cells on every sheet that repeats a cover.
 */
export function withReferences(grid: Grid): Grid {
  const sheets = new Map<string, Sheet | undefined>()
  const sheet = (name: string): Sheet | undefined => {
    const key = name.toLowerCase()
    if (!sheets.has(key)) sheets.set(key, wrapped(grid.sheet(name)))
    return sheets.get(key)
  }
  const shown = (own: Sheet, cell: Cell | undefined): Cell | undefined => {
    let [at, found] = [own, cell]
    for (let step = 0; found?.kind === 'unstored' && step < MOST_STEPS; step++) {
      const [, quoted, plain, address] = REFERENCE.exec(found.formula ?? '') ?? []
      const place = address === undefined ? undefined : parseAddress(address)
      const name = quoted?.replaceAll("''", "'") ?? plain
      const next = name === undefined ? at : grid.sheet(name)
      if (!place || !next) return cell
      at = next
      found = next.at(place.row, place.column)
    }
    if (!cell || !found || found === cell || found.kind === 'unstored' || found.kind === 'error') return cell
    const { formula = '', format, ...look } = cell
    return {
      ...look,
      ...found,
      ...(format === undefined ? {} : { format }),
      formula,
      refersTo: formula.replace(/^=/, '').replaceAll('$', ''),
    }
  }
  const wrapped = (own: Sheet | undefined): Sheet | undefined => {
    if (!own) return undefined
    const at = (row: number, column: number): Cell | undefined => {
      const cell = own.at(row, column)
      return cell?.kind === 'unstored' ? shown(own, cell) : cell
    }
    function* cells(): Iterable<[row: number, column: number, cell: Cell]> {
      for (const [row, column, cell] of own?.cells?.() ?? [])
        yield [row, column, cell.kind === 'unstored' && own ? (shown(own, cell) ?? cell) : cell]
    }
    // Each is asked of the sheet itself: one of the page has fields that only it may read.
    return {
      name: own.name,
      hidden: own.hidden,
      rows: own.rows,
      columns: own.columns,
      at,
      ...(own.cells && { cells }),
      isRowHidden: (row) => own.isRowHidden(row),
      isColumnHidden: (column) => own.isColumnHidden(column),
      mergeAt: (row, column) => own.mergeAt(row, column),
      ...(own.commentAt && { commentAt: (row: number, column: number) => own.commentAt?.(row, column) }),
    }
  }
  const { kind, fileName, sheetNames, names, date1904, decimal, findings } = grid
  return { kind, fileName, sheetNames, sheet, names, date1904, ...(decimal && { decimal }), findings }
}
