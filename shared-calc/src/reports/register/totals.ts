import type { RegisterRow } from './arrange.js'
import { grouped } from './grouped.js'
import { asksForRetest, isBillable, isTest, type TestClass, testClasses } from './test-classes.js'

export const groupings = ['site', 'stage', 'tester', 'client'] as const
export type Grouping = (typeof groupings)[number]

/** What stands where the log did not say. */
export const NOT_LOGGED = '(not logged)'

/** What a group of tests comes to. Only tests that count are judged; medians and worst are of those too. */
export interface Totals {
  /** Name of the group, as first written. */
  readonly group: string
  readonly tests: number
  readonly counting: number
  readonly meets: number
  readonly misses: number
  readonly notValid: number
  readonly noTarget: number
  /** First tests that have a target, and those of them that met it. */
  readonly firstTests: number
  readonly firstMet: number
  /** Share of first tests that met; absent where there is none. */
  readonly firstPassRate?: number
  readonly medianN50?: number
  readonly worstN50?: number
  readonly medianQE50?: number
  readonly worstQE50?: number
  readonly withFindings: number
  /** Rows of each class. */
  readonly classes: { readonly [role in TestClass]: number }
  /** Tests that another took the place of. */
  readonly superseded: number
  /** Tests to bill: each once, without those that are not valid. */
  readonly billable: number
  /** Sum of the fees of tests to bill; absent where no test has one. */
  readonly fees?: number
  /** Tests to bill whose fee is not known; absent where no test has one. */
  readonly withoutFee?: number
  /** Tests of these rows after which the plot must still be retested. */
  readonly toRetest: number
}

export const groupName = (row: RegisterRow, grouping: Grouping): string => row[grouping] ?? NOT_LOGGED

/** Totals of each group, in alphabetical order. Spreadsheets compare texts without their case, so groups do too. */
export function totalsBy(rows: readonly RegisterRow[], grouping: Grouping): Totals[] {
  const groups = grouped(rows, (row) => groupName(row, grouping).toLocaleLowerCase('en'))
  return [...groups.values()]
    .map((group) => totalsOf(group[0] ? groupName(group[0], grouping) : NOT_LOGGED, group))
    .sort((a, b) => a.group.localeCompare(b.group, 'en'))
}

export function totalsOf(group: string, rows: readonly RegisterRow[]): Totals {
  const counting = rows.filter(({ counts }) => counts)
  const outcome = (wanted: RegisterRow['outcome']) => counting.filter((row) => row.outcome === wanted).length
  const first = rows.filter((row) => row.role === 'first test' && row.outcome !== 'no target')
  const met = first.filter((row) => row.outcome === 'meets').length
  const values = (name: 'n50' | 'qE50') =>
    counting.flatMap(({ results }) => (results[name] === undefined ? [] : [results[name]]))
  return {
    group,
    tests: rows.length,
    counting: counting.length,
    meets: outcome('meets'),
    misses: outcome('misses'),
    notValid: outcome('not valid'),
    noTarget: outcome('no target'),
    firstTests: first.length,
    firstMet: met,
    ...(first.length > 0 && { firstPassRate: met / first.length }),
    ...spread(values('n50'), 'medianN50', 'worstN50'),
    ...spread(values('qE50'), 'medianQE50', 'worstQE50'),
    withFindings: rows.filter(({ findings, role }) => role !== 'altered' && findings.length > 0).length,
    classes: Object.fromEntries(
      Object.keys(testClasses).map((name) => [name, rows.filter(({ role }) => role === name).length]),
    ) as Totals['classes'],
    superseded: rows.filter(({ role, counts }) => isTest(role) && !counts).length,
    billable: rows.filter(isBillable).length,
    ...feesOf(rows),
    toRetest: rows.filter((row) => row.latest && asksForRetest(row)).length,
  }
}

function feesOf(rows: readonly RegisterRow[]): Pick<Totals, 'fees' | 'withoutFee'> {
  if (!rows.some(({ fee }) => fee !== undefined)) return {}
  const billed = rows.filter(isBillable)
  // Added up in hundredths, so that no rest of binary fractions shows.
  const hundredths = billed.reduce((sum, { fee = 0 }) => sum + Math.round(100 * fee), 0)
  return { fees: hundredths / 100, withoutFee: billed.filter(({ fee }) => fee === undefined).length }
}

function spread<Median extends string, Worst extends string>(
  values: readonly number[],
  median: Median,
  worst: Worst,
): { readonly [key in Median | Worst]?: number } {
  if (values.length === 0) return {}
  return { [median]: medianOf(values), [worst]: values.reduce((a, b) => Math.max(a, b)) } as {
    [key in Median | Worst]: number
  }
}

/** Middle value, or the mean of the two middle ones, as spreadsheets' MEDIAN. @param values - at least one */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length / 2
  return ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2
}
