import type { KnownColumn } from './columns.js'
import type { Head } from './heads.js'

/** Words over flows that were worked out of the readings. */
const FITTED =
  /^(?:curve|fit|fitted|calculated|computed|model|theoretical|kurve|ausgleichskurve|berechnet|errechnet|courbe|calcule|calculee|calcules|curva|calcolata|calcolato|calculado|calculada|berekend|kurva|beregnet|beraknat|krzywej|obliczony)$/

/** So many rows are compared at most. */
const ROWS = 30
/** A flow on the curve is not further than this from the one measured. */
const APART = 0.2

/**
 * "Flow (m³/h) | Flow from curve (m³/h)": the second is what the readings gave. Where it is the only flow it may be that of the calibration
 * curve of the flow device, and stays.
 */
export function withoutFitted(
  { view, first }: Head,
  columns: readonly KnownColumn[],
): readonly KnownColumn[] {
  const flows = columns.filter(({ role }) => role === 'flow')
  const fitted = flows.filter(({ label }) => label.tokens.some((token) => FITTED.test(token)))
  const plain = flows.filter((one) => !fitted.includes(one))
  const rows = Array.from({ length: ROWS }, (_, index) => first + index)
  const follows = (one: KnownColumn, other: KnownColumn) => {
    const ratios = rows.flatMap((row) => {
      const [mine, theirs] = [view.number(row, one.at), view.number(row, other.at)]
      return mine !== undefined && theirs ? mine / theirs : []
    })
    const near = ratios.filter((ratio) => Math.abs(ratio - 1) < APART)
    // Lines of zero flow may go on below the readings.
    return near.length >= FEWEST && near.length > ratios.length / 2
  }
  return columns.map((column) =>
    fitted.includes(column) && plain.some((one) => follows(column, one))
      ? { ...column, role: 'derived' }
      : column,
  )
}

/** Fewer rows show nothing. */
const FEWEST = 3
