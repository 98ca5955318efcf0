import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { LeftOut, TableRow } from './table-row.js'

/**
 * "0 | 0" in lines of a form that were left over: no pressure and no flow is what nobody filled in, and no zero-flow pressure, unless one
 * stands before and one after the readings, as gauges that set themselves to zero write it.
 */
export function withoutEmpty(rows: readonly TableRow[], leftOut: LeftOut[]): TableRow[] {
  const zeros = rows.filter(({ kind }) => kind === 'zero')
  const isAlone = (row: TableRow) => !rows.some((other) => other.empty && Math.abs(other.row - row.row) === 1)
  const first = rows.find(({ kind }) => kind === 'reading')?.row ?? 0
  const isBefore = zeros.some(({ row }) => row < first)
  return rows.filter((row) => {
    if (!row.empty || (isAlone(row) && isBefore)) return true
    leftOut.push({ cell: row.pressure.cell, why: rowReasons.empty, hidden: true })
    return false
  })
}
