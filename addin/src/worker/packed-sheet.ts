import type { Block, Cell, Sheet } from '@draughtbook/shared-calc/log'

/** A column of plain numbers; NaN where the cell is blank or stands among the others. */
interface PackedColumn {
  numbers: Float64Array
  /** Number format of each cell, as a place in the sheet's list; 0: General. */
  formats: Uint16Array
}

/** A part of a sheet as flat data: a hundred thousand cells cross to a worker at once, and none is built as an object. Places count from 0. */
export interface PackedSheet {
  name: string
  hidden: boolean
  top: number
  left: number
  columns: PackedColumn[]
  formats: string[]
  /** Cells that are no plain numbers: headings, marks, text, formulas, struck-through numbers. */
  others: [row: number, column: number, cell: Cell][]
  hiddenRows: number[]
  hiddenColumns: number[]
  merges: Block[]
}

/** Packs a part of a sheet, ends included. */
export function packSheet(sheet: Sheet, { top, left, bottom, right }: Block): PackedSheet {
  const rows = Math.max(0, bottom - top + 1)
  const formats = ['General']
  const placeOf = new Map([['General', 0]])
  const others: PackedSheet['others'] = []
  const merges = new Map<string, Block>()
  const columns = Array.from({ length: Math.max(0, right - left + 1) }, (_, x): PackedColumn => {
    const numbers = new Float64Array(rows).fill(Number.NaN)
    const own = new Uint16Array(rows)
    for (let y = 0; y < rows; y++) {
      const cell = sheet.at(top + y, left + x)
      if (!cell) continue
      const format = cell.format ?? 'General'
      let place = placeOf.get(format)
      if (place === undefined && formats.length < 65_535) {
        place = formats.push(format) - 1
        placeOf.set(format, place)
      }
      if (isPlain(cell) && place !== undefined) {
        numbers[y] = Number(cell.value)
        own[y] = place
        continue
      }
      others.push([top + y, left + x, cell])
      const merge = sheet.mergeAt(top + y, left + x)
      if (merge) merges.set(`${merge.top}:${merge.left}`, merge)
    }
    return { numbers, formats: own }
  })
  const from = (first: number, count: number): number[] =>
    Array.from({ length: count }, (_, index) => first + index)
  return {
    name: sheet.name,
    hidden: sheet.hidden,
    top,
    left,
    columns,
    formats,
    others,
    hiddenRows: from(top, rows).filter((row) => sheet.isRowHidden(row)),
    hiddenColumns: from(left, columns.length).filter((column) => sheet.isColumnHidden(column)),
    merges: [...merges.values()],
  }
}

const isPlain = ({ kind, formula, struck, value }: Cell): boolean =>
  kind === 'number' && formula === undefined && struck === undefined && Number.isFinite(value)

/** The packed part as the log reader takes it; cells stay in their places. */
export function unpackSheet(packed: PackedSheet): Sheet {
  const { top, left, columns, formats, merges } = packed
  const others = new Map(packed.others.map(([row, column, cell]) => [`${row}:${column}`, cell]))
  const hiddenRows = new Set(packed.hiddenRows)
  const hiddenColumns = new Set(packed.hiddenColumns)
  const rows = top + (columns[0]?.numbers.length ?? 0)
  return {
    name: packed.name,
    hidden: packed.hidden,
    rows,
    columns: left + columns.length,
    at: (row, column) => {
      const own = columns[column - left]
      const value = own?.numbers[row - top]
      if (own === undefined || value === undefined) return undefined
      if (Number.isNaN(value)) return others.get(`${row}:${column}`)
      const format = own.formats[row - top] ?? 0
      return format === 0
        ? { kind: 'number', value }
        : { kind: 'number', value, format: formats[format] ?? 'General' }
    },
    isRowHidden: (row) => hiddenRows.has(row),
    isColumnHidden: (column) => hiddenColumns.has(column),
    mergeAt: (row, column) =>
      merges.find(
        (block) => row >= block.top && row <= block.bottom && column >= block.left && column <= block.right,
      ),
  }
}
