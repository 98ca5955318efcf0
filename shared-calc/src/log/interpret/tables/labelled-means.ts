import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { LeftOut, TableRow } from './table-row.js'

/** A row with pressure and flow that its label calls a mean. */
export interface LabelledMean {
  readonly row: TableRow
  /** Cell of its label, under which it was left out. */
  readonly labelCell: string
}

/** Fewer steps are no table of readings. */
const FEWEST = 3
/** Values taken at one step differ from their mean by so much of the pressure at most, or by so many Pa. */
const SPREAD = { share: 0.08, pa: 4 }

/**
 * "1.1 | −61.4 | 984", "1.2 | −62.6 | 988", "mean | −62.0 | 986" and so on for every step: the rows called mean are the readings, and what
 * they were worked out from is none. A single mean of all readings stays left out.
 */
export function withLabelledMeans(
  rows: readonly TableRow[],
  means: readonly LabelledMean[],
  leftOut: LeftOut[],
): TableRow[] {
  if (means.length < FEWEST) return [...rows]
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const places = means.map(({ row }) => row.row)
  const first = readings[0]?.row ?? 0
  const isAhead = (places[0] ?? 0) < first
  const steps = means.map(({ row: mean }, index) => {
    const [from, to] = isAhead
      ? [mean.row, places[index + 1] ?? Number.POSITIVE_INFINITY]
      : [places[index - 1] ?? -1, mean.row]
    return readings.filter(({ row }) => row > from && row < to)
  })
  const sampled = new Set(steps.flat())
  // One reading or two may have been taken once only.
  const single = readings.filter((reading) => !sampled.has(reading))
  if (single.length >= means.length / 2 || !steps.every((step, index) => isStep(step, means[index]?.row)))
    return [...rows]
  const labels = new Set(means.map(({ labelCell }) => labelCell))
  leftOut.splice(0, leftOut.length, ...leftOut.filter(({ cell }) => !labels.has(cell)))
  const own = means.map(({ row }, index) => ({ ...row, ranges: steps[index]?.[0]?.ranges ?? [] }))
  for (const [index, step] of steps.entries())
    for (const { pressure } of step)
      leftOut.push({ cell: pressure.cell, why: rowReasons.sampleOf(own[index]?.pressure.cell ?? '') })
  return [...rows.filter(({ kind }) => kind !== 'reading'), ...single, ...own].sort((a, b) => a.row - b.row)
}

function isStep(step: readonly TableRow[], mean: TableRow | undefined): boolean {
  const middle = mean?.pressure.value ?? 0
  const most = Math.max(SPREAD.pa, SPREAD.share * Math.abs(middle))
  return step.length >= 2 && step.every(({ pressure }) => Math.abs(pressure.value - middle) <= most)
}
