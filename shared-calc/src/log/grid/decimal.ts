import { fileText } from '../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../catalogue/findings/remark.js'
import type { Finding } from '../../contract/record/index.js'
import type { Grid, Sheet } from './grid.js'
import {
  addProofs,
  type DecimalProofs,
  mixedDecimals,
  noProofs,
  provenDecimal,
} from './text/decimal-proofs.js'

/** How much of a sheet is searched for a number as text that proves the decimal sign. */
const LOOKED_THROUGH = { sheets: 60, rows: 300, columns: 60 }

const known = new WeakMap<Grid, DecimalProofs>()

/** The decimal sign that numbers stored as text prove, over all sheets; looked for once in a grid. */
export function decimalOf(grid: Grid): '.' | ',' | undefined {
  return grid.decimal || grid.kind === 'text' ? grid.decimal : provenDecimal(proofsOf(grid))?.sign
}

/** A finding where some numbers of a log have a decimal point and others a decimal comma. */
export function tellMixedDecimals(grid: Grid): Finding[] {
  if (grid.decimal) return []
  const mixed = mixedDecimals(proofsOf(grid))
  if (!mixed) return []
  const { point, comma } = mixed
  const texts = { point: point.text, pointCell: point.cell, comma: comma.text, commaCell: comma.cell }
  return [remarkFinding(fileText('log-decimal/mixed', texts), [point.cell, comma.cell])]
}

function proofsOf(grid: Grid): DecimalProofs {
  const before = known.get(grid)
  if (before) return before
  const proofs = noProofs()
  for (const name of grid.sheetNames.slice(0, LOOKED_THROUGH.sheets)) {
    const sheet = grid.sheet(name)
    for (let row = 0; sheet && row < Math.min(sheet.rows, LOOKED_THROUGH.rows); row++)
      addProofs(proofs, row, textsOf(sheet, row), sheet.name)
  }
  known.set(grid, proofs)
  return proofs
}

const textsOf = (sheet: Sheet, row: number): string[] =>
  Array.from({ length: Math.min(sheet.columns, LOOKED_THROUGH.columns) }, (_, column) => {
    const cell = sheet.at(row, column)
    return cell?.kind === 'text' ? String(cell.value) : ''
  })
