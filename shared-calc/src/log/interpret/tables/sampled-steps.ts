import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { LeftOut, TableRow } from './table-row.js'

/** Values taken at one step at most. */
const MOST_SAMPLES = 10
const FEWEST_STEPS = 3

/**
 * "1 | −62.0 | 986", "1.1 | −61.4 | 984", "1.2 | −62.6 | 988" and so on for every step: the first row of each, or the last, is the mean of
 * the others, which are no readings beside it.
 */
export function withoutSamples(rows: readonly TableRow[], leftOut: LeftOut[]): TableRow[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  for (let size = 3; size <= MOST_SAMPLES + 1 && size * FEWEST_STEPS <= readings.length; size++) {
    if (readings.length % size !== 0) continue
    const steps = Array.from({ length: readings.length / size }, (_, at) =>
      readings.slice(at * size, (at + 1) * size),
    )
    for (const place of [0, size - 1]) {
      const isMean = steps.every((step) => {
        const mean = step[place]
        return (
          mean !== undefined &&
          isMeanOf(
            mean,
            step.filter((row) => row !== mean),
          )
        )
      })
      if (!isMean) continue
      const means = steps.map((step) => step[place] as TableRow)
      for (const [index, step] of steps.entries())
        for (const row of step.filter((one) => !means.includes(one)))
          leftOut.push({
            cell: row.pressure.cell,
            why: rowReasons.sampleOf((means[index] as TableRow).pressure.cell),
          })
      return rows.filter((row) => row.kind !== 'reading' || means.includes(row))
    }
  }
  return [...rows]
}

/** Means are written with one decimal less than it takes, and samples are never all alike. */
function isMeanOf(row: TableRow, samples: readonly TableRow[]): boolean {
  const pairs = [row, ...samples].map(({ pressure, carriers }) => [
    pressure.value,
    carriers[0]?.value ?? Number.NaN,
  ])
  return [0, 1].every((at) => {
    const [mean = 0, ...others] = pairs.map((pair) => pair[at] ?? Number.NaN)
    const exact = others.reduce((sum, one) => sum + one, 0) / others.length
    return (
      Math.abs(mean - exact) <= 0.001 * Math.abs(exact) + 0.051 && others.some((one) => one !== others[0])
    )
  })
}
