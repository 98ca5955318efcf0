import { questions } from '../../../catalogue/questions.js'
import type { Direction } from '../../../contract/record/index.js'
import { plainWord } from '../../cells/fields.js'
import type { FoundDevice, FoundRange } from '../tables/device-ranges.js'
import type { FoundRun } from '../tables/runs.js'
import { directionIn, readLabel } from '../words/label.js'
import type { Draft } from './draft.js'

/** A range of the flow device, and of which runs or fans it is where the log has a table for each. */
export interface OwnRange extends FoundRange {
  readonly direction?: Direction
  /** Number or letter of the fan. */
  readonly fan?: string
}

/** The tables that hold the ranges of a test, as one device. */
export interface Device extends Omit<FoundDevice, 'ranges' | 'view' | 'rows'> {
  readonly ranges: readonly OwnRange[]
}

const TABLE = 'device.table'

/**
 * Of several tables of coefficients those that the runs need: one for each direction or fan where their titles say so, tables of different
 * ranges together, else the one that has all ranges that were used. Asks where that leaves several.
 */
export function deviceOf(
  draft: Draft,
  found: readonly FoundDevice[],
  runs: readonly FoundRun[],
): Device | undefined {
  const tables = found.filter(
    (one, index) => isOfFan(one) && !found.slice(0, index).some((other) => isSame(one, other)),
  )
  const [first, ...more] = tables
  if (!first) return found[0]
  if (more.length === 0) return first
  const parted = byTitle(tables, ({ title = '' }) => directionIn(readLabel(title)))
  if (parted) return joined(tables, (table, range) => ({ ...range, direction: parted(table) as Direction }))
  const ofFans = runs.some(({ block }) => block.carriers.length > 1)
    ? byTitle(tables, ({ title = '' }) => fanIn(title))
    : undefined
  if (ofFans) return joined(tables, (table, range) => ({ ...range, fan: ofFans(table) as string }))
  const used = [
    ...new Set(
      runs.flatMap(({ readings }) =>
        readings.flatMap(({ ranges }) => ranges.flatMap((one) => (one ? plainWord(one.text) : []))),
      ),
    ),
  ]
  const whole = tables.filter(({ ranges }) =>
    used.every((one) => ranges.some(({ label }) => plainWord(label) === one)),
  )
  if (used.length > 0 && whole.length === 1) return whole[0]
  const labels = tables.flatMap(({ ranges }) => ranges.map(({ label }) => plainWord(label)))
  if (new Set(labels).size === labels.length && used.length > 0) return joined(tables, (_, range) => range)
  const answer = draft.answers[TABLE]
  const chosen = tables.find(({ cells }) => cells === answer)
  if (chosen) return chosen
  draft.ask({
    path: TABLE,
    cells: tables.map(({ cells }) => cells),
    ...questions.deviceTable({ tables: tables.map(({ cells, title = '' }) => ({ cells, title })) }),
  })
  return first
}

/** Coefficients of a building's own leakage stand among its results, by direction. */
const isOfFan = ({ ranges }: FoundDevice): boolean =>
  !ranges.every(
    ({ label }) => directionIn(readLabel(label)) !== undefined || /^(?:mean|mittel|ø)/i.test(label),
  )

const isSame = (one: FoundDevice, other: FoundDevice): boolean =>
  one.ranges.length === other.ranges.length &&
  one.ranges.every(({ label, coefficient, exponent }, index) => {
    const own = other.ranges[index]
    return own?.label === label && own.coefficient === coefficient && own.exponent === exponent
  })

/** What each table is of, where every title says so and each says something else. */
function byTitle<Of>(
  tables: readonly FoundDevice[],
  of: (table: FoundDevice) => Of | undefined,
): ((table: FoundDevice) => Of | undefined) | undefined {
  const said = tables.map(of)
  return said.includes(undefined) || new Set(said).size < tables.length ? undefined : of
}

/** "Fan 2", "Ventilator B": its number or letter. */
export const fanIn = (text: string): string | undefined =>
  readLabel(text)
    .tokens.map((token) => /^(?:#|fan|p|dp)?([1-9]|[ab])$/.exec(token)?.[1])
    .find((one) => one)

function joined(
  tables: readonly FoundDevice[],
  named: (table: FoundDevice, range: FoundRange) => OwnRange,
): Device {
  const [first] = tables as readonly [FoundDevice]
  return {
    ...first,
    cells: tables.map(({ cells }) => cells).join(', '),
    ranges: tables.flatMap((table) =>
      table.ranges.map((range) => {
        const own = named(table, range)
        const of = own.direction ?? (own.fan === undefined ? undefined : `fan ${own.fan}`)
        return of === undefined ? own : { ...own, label: `${own.label} (${of})` }
      }),
    ),
  }
}
