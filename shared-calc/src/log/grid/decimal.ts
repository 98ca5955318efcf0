import type { Grid } from './grid.js'
import { provenDecimal } from './text/dialect.js'

/** How much of a sheet is searched for a number as text that proves the decimal sign. */
const LOOKED_THROUGH = { sheets: 60, rows: 300, columns: 60 }

const known = new WeakMap<Grid, { sign: '.' | ',' | undefined }>()

/** The decimal sign that numbers stored as text prove, over all sheets; looked for once in a grid. */
export function decimalOf(grid: Grid): '.' | ',' | undefined {
  if (grid.decimal || grid.kind === 'text') return grid.decimal
  const before = known.get(grid)
  if (before) return before.sign
  const sign = provenIn(grid)
  known.set(grid, { sign })
  return sign
}

function provenIn(grid: Grid): '.' | ',' | undefined {
  for (const name of grid.sheetNames.slice(0, LOOKED_THROUGH.sheets)) {
    const sheet = grid.sheet(name)
    if (!sheet) continue
    const rows = Array.from({ length: Math.min(sheet.rows, LOOKED_THROUGH.rows) }, (_, row) =>
      Array.from({ length: Math.min(sheet.columns, LOOKED_THROUGH.columns) }, (_, column) => {
        const cell = sheet.at(row, column)
        return cell?.kind === 'text' ? String(cell.value) : ''
      }),
    )
    const proof = provenDecimal(rows, sheet.name)
    if (proof) return proof.sign
  }
  return undefined
}
