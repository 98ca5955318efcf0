import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { LeftOut, TableRow } from './table-row.js'

/**
 * Zero-flow rows without the means of one sign only ("Δp₀₁+", "Δp₀₁−"), which a standard asks for beside the mean of all. Without that
 * mean, one of them stands for it where the other is nought; of two nobody knows how many values each was taken of.
 */
export function withoutSigned(rows: readonly TableRow[], leftOut: LeftOut[]): TableRow[] {
  const signed = rows.filter(({ ofOneSign }) => ofOneSign)
  return rows.filter((row) => {
    if (!row.ofOneSign) return true
    const isOfSame = (other: TableRow) =>
      other.kind === 'zero' && other.which === row.which && other.direction === row.direction
    const whole = rows.find((other) => !other.ofOneSign && isOfSame(other))
    const values = signed.filter((other) => isOfSame(other) && other.pressure.value !== 0)
    if (!whole && (values.length === 0 || (values.length === 1 && values[0] === row))) return true
    leftOut.push({
      cell: row.pressure.cell,
      why: rowReasons.ofOneSign(whole?.pressure.cell),
      hidden: true,
    })
    return false
  })
}
