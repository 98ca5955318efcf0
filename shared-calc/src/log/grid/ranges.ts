import { z } from 'zod'
import { LIMITS } from '../limits.js'
import { refuse } from '../problem.js'
import { parseBlock } from './address.js'
import { CellStore } from './cell-store.js'
import type { Cell, Grid } from './grid.js'

const matrix = <T extends z.ZodType>(cell: T) => z.array(z.array(cell)).max(LIMITS.rows)

/** Cells as a spreadsheet program hands them over: values with, where known, formats, formulas and marks, of one shape. */
export const CellRange = z.strictObject({
  sheet: z.string().min(1).max(100),
  /** Where the range lies, as in B4:F20; its first cell is enough. */
  address: z.string().max(40),
  /** Numbers, texts and booleans; empty text for an empty cell. */
  values: matrix(z.union([z.number(), z.string(), z.boolean(), z.null()])),
  /** Error for cells that hold an error value, as Excel's valueTypes. */
  valueTypes: matrix(z.string()).optional(),
  numberFormats: matrix(z.string()).optional(),
  /** Text beginning with = where the cell holds a formula. */
  formulas: matrix(z.union([z.number(), z.string(), z.boolean(), z.null()])).optional(),
  struck: matrix(z.boolean()).optional(),
  /** Numbers of hidden rows and letters-as-numbers of hidden columns, counted from 1 as the sheet shows them. */
  hiddenRows: z.array(z.int().min(1)).optional(),
  hiddenColumns: z.array(z.int().min(1)).optional(),
  /** Merged blocks by address. */
  merged: z.array(z.string().max(40)).optional(),
})
export type CellRange = z.infer<typeof CellRange>

/** Ranges of one workbook as a grid. Ranges of the same sheet are laid together. Throws LogError for a wrong address. */
export function gridFromRanges(
  ranges: readonly CellRange[],
  { fileName = 'open workbook', date1904 = false }: { fileName?: string; date1904?: boolean } = {},
): Grid {
  const stores = new Map<string, CellStore>()
  for (const range of ranges) {
    const key = range.sheet.toLowerCase()
    const store = stores.get(key) ?? new CellStore(range.sheet)
    stores.set(key, store)
    lay(range, store)
  }
  return {
    kind: 'ranges',
    fileName,
    sheetNames: [...stores.values()].map(({ name }) => name),
    sheet: (name) => stores.get(name.toLowerCase()),
    names: [],
    date1904,
    findings: [],
  }
}

function lay(range: CellRange, store: CellStore): void {
  const start = parseBlock(range.address.replace(/^.*!/, ''))
  if (!start) refuse('layout-invalid', `${range.address} is not a range of cells`, { path: 'ranges' })
  for (const [r, values] of range.values.entries())
    for (const [c, value] of values.entries()) {
      const cell = cellAt(range, r, c, value)
      if (cell) store.set(start.top + r, start.left + c, cell)
    }
  if (store.size > LIMITS.cells) refuse('too-many-cells', `the ranges hold more than ${LIMITS.cells} cells`)
  for (const row of range.hiddenRows ?? []) store.hideRow(row - 1)
  for (const column of range.hiddenColumns ?? []) store.hideColumns(column - 1, column - 1)
  for (const merged of range.merged ?? []) {
    const block = parseBlock(merged)
    if (block) store.merge(block)
  }
}

function cellAt(
  range: CellRange,
  r: number,
  c: number,
  value: number | string | boolean | null,
): Cell | undefined {
  if (value === null || value === '') return undefined
  const format = range.numberFormats?.[r]?.[c]
  const formula = range.formulas?.[r]?.[c]
  const isError =
    range.valueTypes?.[r]?.[c] === 'Error' || (typeof value === 'string' && ERROR_VALUE.test(value))
  return {
    kind: isError ? 'error' : kindOf(value),
    value,
    ...(format && format !== 'General' ? { format } : {}),
    ...(typeof formula === 'string' && formula.startsWith('=') ? { formula: formula.slice(1) } : {}),
    ...(range.struck?.[r]?.[c] ? { struck: 'whole' as const } : {}),
  }
}

const ERROR_VALUE = /^#(DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!|SPILL!|CALC!|GETTING_DATA)$/

function kindOf(value: number | string | boolean): 'number' | 'text' | 'boolean' {
  if (typeof value === 'number') return 'number'
  return typeof value === 'string' ? 'text' : 'boolean'
}
