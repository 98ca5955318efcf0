import { says } from '../words/label.js'
import type { KnownColumn, Segment } from './columns.js'
import type { Figure, TableRow } from './table-row.js'

/** Fewer steps are no table of readings. */
const FEWEST = 3
/** Rows of one step differ by so much of their pressure at most, or by so many Pa. */
const SPREAD = { share: 0.06, pa: 3 }

/**
 * Means over some seconds, of which several rows belong to one step: "D1 | −66.1 | 612", "D1 | −66.4 | 614". Each reading is the mean of the
 * rows of its step. A table is taken so only where a column numbers or names its steps and every step has several rows.
 */
export function withStepMeans(segment: Segment, rows: readonly TableRow[]): TableRow[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  for (const column of segment.columns.filter(namesSteps)) {
    const groups = groupsOf(segment, column, readings)
    if (groups.length < FEWEST || !groups.every(isOneStep)) continue
    const means = new Map(groups.map((group) => [group[0] as TableRow, meanOf(group, column)]))
    return rows.flatMap((row) => (row.kind === 'zero' ? row : (means.get(row) ?? [])))
  }
  return [...rows]
}

const namesSteps = ({ label, role }: KnownColumn): boolean =>
  ['index', 'other', 'remark', 'direction'].includes(role) && says(label, 'index')

/** "3.1", "3.2", "3.3": the samples of step 3. */
const stepIn = (name: string | undefined): string | undefined =>
  /^(\d{1,2})[.,/-]\d$/.exec(name?.trim() ?? '')?.[1] ?? name

/** Rows below one another with the same name of a step. */
function groupsOf({ view }: Segment, { at }: KnownColumn, readings: readonly TableRow[]): TableRow[][] {
  const groups: { name: string | undefined; rows: TableRow[] }[] = []
  for (const row of readings) {
    const name = stepIn(view.text(row.row, at) ?? view.number(row.row, at)?.toString())
    const last = groups.at(-1)
    if (last && name !== undefined && last.name === name) last.rows.push(row)
    else groups.push({ name, rows: [row] })
  }
  return groups.map((group) => group.rows)
}

function isOneStep(rows: readonly TableRow[]): boolean {
  const [first] = rows
  if (!first || rows.length < 2) return false
  const sizes = rows.map(({ pressure }) => pressure.value)
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)]
  return (
    most - least <= Math.max(SPREAD.pa, SPREAD.share * Math.abs(first.pressure.value)) &&
    rows.every(
      ({ pressure, carriers, ranges, direction, test, hidden, doubt }) =>
        !hidden &&
        !doubt &&
        direction === first.direction &&
        test === first.test &&
        pressure.unit === first.pressure.unit &&
        carriers.every((one, index) => one && one.unit === first.carriers[index]?.unit) &&
        ranges.every((one, index) => one?.text === first.ranges[index]?.text),
    )
  )
}

function meanOf(rows: readonly TableRow[], steps: KnownColumn): TableRow {
  const first = rows[0] as TableRow
  const mean = (figures: readonly Figure[]): Figure => ({
    ...(figures[0] as Figure),
    value: Number((figures.reduce((sum, { value }) => sum + value, 0) / figures.length).toPrecision(12)),
  })
  return {
    ...first,
    pressure: mean(rows.map(({ pressure }) => pressure)),
    carriers: first.carriers.map((_, index) => mean(rows.map(({ carriers }) => carriers[index] as Figure))),
    meanOf: { cells: rows.map(({ pressure }) => pressure.cell), steps },
  }
}
