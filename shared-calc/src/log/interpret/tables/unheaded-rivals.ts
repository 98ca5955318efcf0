import type { Doubt, KnownColumn, Segment } from './columns.js'
import { physicsScore, powerLaw } from './physics.js'
import type { TableRow } from './table-row.js'
import { PLAIN_CURVE } from './unnamed-columns.js'

/** No house is tested beyond these pressures, Pa. */
const USUAL = { lowest: 3, highest: 150 }

/**
 * Columns without a heading that follow the leakage curve with the chosen flow or pressure as well as the column chosen: their heading
 * may have been lost.
 */
export function unheadedRivals(
  { view, columns }: Segment,
  pressure: KnownColumn,
  carriers: readonly KnownColumn[],
  rows: readonly TableRow[],
): Doubt[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const pressures = readings.map((row) => row.pressure.value)
  const flows = readings.map((row) => Math.abs(row.carriers[0]?.value ?? 0))
  const fits = (one: readonly number[], other: readonly number[]) =>
    physicsScore(powerLaw(one, other)) > PLAIN_CURVE
  return columns
    .filter(({ label, role }) => label.text === '' && role === 'other')
    .flatMap((column): Doubt[] => {
      const values = readings.flatMap(({ row }) => view.number(row, column.at) ?? [])
      // 1, 2, 3 … numbers the rows.
      if (
        values.length < readings.length ||
        values.every((value, index) => value === (values[0] ?? 0) + index)
      )
        return []
      const isPressure = values.every(
        (value) => Math.abs(value) >= USUAL.lowest && Math.abs(value) <= USUAL.highest,
      )
      if (isPressure && fits(values, flows)) return [{ about: 'pressure', columns: [pressure, column] }]
      return fits(pressures, values) ? [{ about: 'flow', columns: [...carriers, column] }] : []
    })
    .slice(0, 1)
}
