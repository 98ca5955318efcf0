import { arrange, type RegisterRow } from './arrange.js'
import { type ExpiringCalibration, expiringCalibrations } from './calibrations.js'
import { grouped } from './grouped.js'
import { type HouseChange, houseChanges } from './houses.js'
import type { LeftOut } from './read-lines.js'
import { asksForRetest } from './test-classes.js'
import type { TestLine } from './test-line.js'
import { type Grouping, NOT_LOGGED, type Totals, totalsBy, totalsOf } from './totals.js'
import { type MonthFigures, mergedTrend, monthFigures } from './trend.js'

export const REGISTER_FORMAT = 'draughtbook/register@1'

/** A month's tests, or all tests given. */
export interface Register {
  readonly format: typeof REGISTER_FORMAT
  /** As 2026-10; absent: every test given. */
  readonly month?: string
  /** Date on which calibrations are judged. */
  readonly asOf: string
  readonly rows: readonly RegisterRow[]
  readonly overall: Totals
  readonly totals: { readonly [grouping in Grouping]: readonly Totals[] }
  /** The only client whose tests it holds; absent: all. */
  readonly client?: string
  /** Rows after which a plot must still be retested: its last test, in all files given, misses or is not valid. */
  readonly toRetest: readonly number[]
  /** Tests of other months after which a plot must still be retested. */
  readonly toRetestElsewhere: readonly RetestElsewhere[]
  readonly calibrations: readonly ExpiringCalibration[]
  readonly changes: readonly HouseChange[]
  /** Month by month up to this one, the earliest first; of all files given, and of an earlier register. */
  readonly trend: readonly MonthFigures[]
  /** Files and tests that are not in the register, each with the reason. */
  readonly leftOut: readonly LeftOut[]
}

/** A test that is not in the register, after which its plot must still be retested. */
export type RetestElsewhere = Pick<
  RegisterRow,
  'file' | 'site' | 'building' | 'stage' | 'date' | 'outcome' | 'judged'
>

export interface RegisterOptions {
  /** Only tests of this client, in whatever case it is written; {@link NOT_LOGGED} for tests without one. */
  readonly client?: string
  /** Only tests of this month, as 2026-10. */
  readonly month?: string
  readonly asOf: string
  /** Months of an earlier register, for those whose tests are not given. */
  readonly previous?: readonly MonthFigures[]
}

/** The register of some tests. Tests of other months are left out, and listed. */
export function makeRegister(
  lines: readonly TestLine[],
  unread: readonly LeftOut[],
  { month, asOf, client, previous = [] }: RegisterOptions,
): Register {
  const inMonth = (line: TestLine) => month === undefined || line.date.startsWith(`${month}-`)
  // Earlier tests are known too: a retest of this month may repeat one of the last.
  const known = month === undefined ? lines : lines.filter(({ date }) => date.slice(0, 7) <= month)
  const ofClient = (line: TestLine) => client === undefined || clientKey(line.client) === clientKey(client)
  const open = arrange(lines).filter(({ latest }) => latest)
  const lastOfPlot = new Set(open.map(keyOf))
  const rows = onlyThose(arrange(known), (line) => inMonth(line) && ofClient(line), client !== undefined).map(
    (row) => ({
      ...row,
      latest: lastOfPlot.has(keyOf(row)),
    }),
  )
  const toRetest = open.filter((row) => ofClient(row) && asksForRetest(row))
  const others = lines
    .filter((line) => !inMonth(line) && ofClient(line))
    .map(({ file, part, date }) => ({
      file,
      ...(part !== undefined && { part }),
      why: `tested on ${date}, not in ${month ?? ''}`,
      expected: true as const,
      kind: 'other month' as const,
    }))
  return {
    format: REGISTER_FORMAT,
    ...(month !== undefined && { month }),
    ...(client !== undefined && { client }),
    asOf,
    rows,
    overall: totalsOf('all', rows),
    totals: {
      site: totalsBy(rows, 'site'),
      stage: totalsBy(rows, 'stage'),
      tester: totalsBy(rows, 'tester'),
      client: totalsBy(rows, 'client'),
    },
    toRetest: rows.filter((row) => row.latest && asksForRetest(row)).map(({ row }) => row),
    toRetestElsewhere: toRetest
      .filter((row) => !inMonth(row))
      .map(({ file, site, building, stage, date, outcome, judged }) => ({
        file,
        ...(site !== undefined && { site }),
        building,
        ...(stage !== undefined && { stage }),
        date,
        outcome,
        ...(judged && { judged }),
      })),
    calibrations: expiringCalibrations(rows, asOf),
    changes: houseChanges(rows),
    trend: mergedTrend(
      month === undefined ? trendOfRows(rows) : trendOf(known, ofClient, client !== undefined),
      previous,
      month,
    ),
    leftOut: [...[...unread].sort((a, b) => (a.file < b.file ? -1 : 1)), ...others],
  }
}

/** Each month's figures among the rows of a register: together they come to its totals. */
const trendOfRows = (rows: readonly RegisterRow[]): MonthFigures[] =>
  [...grouped(rows, ({ date }) => date.slice(0, 7))]
    .map(([month, ofMonth]) => monthFigures(month, totalsOf(month, ofMonth)))
    .sort((a, b) => (a.month < b.month ? -1 : 1))

/** Each month's figures, as its own register had them. */
function trendOf(
  lines: readonly TestLine[],
  ofClient: (line: TestLine) => boolean,
  forOneClient: boolean,
): MonthFigures[] {
  const months = [...new Set(lines.filter(ofClient).map(({ date }) => date.slice(0, 7)))].sort()
  return months.map((month) => {
    const known = arrange(lines.filter(({ date }) => date.slice(0, 7) <= month))
    const rows = onlyThose(known, (line) => line.date.startsWith(month) && ofClient(line), forOneClient)
    return monthFigures(month, totalsOf(month, rows))
  })
}

const clientKey = (client = NOT_LOGGED): string => client.toLocaleLowerCase('en')
const keyOf = ({ file, part }: Pick<TestLine, 'file' | 'part'>): string => JSON.stringify([file, part])

/** Clients of the tests, as first written, in alphabetical order. */
export function clientsOf(lines: readonly TestLine[]): string[] {
  const names = new Map<string, string>()
  for (const { client = NOT_LOGGED } of lines)
    if (!names.has(clientKey(client))) names.set(clientKey(client), client)
  return [...names.values()].sort((a, b) => a.localeCompare(b, 'en'))
}

/** In a client's register another client's files are not named. */
const elsewhere = (row: TestLine, { date, file, client }: TestLine, forOneClient: boolean): string =>
  !forOneClient || clientKey(row.client) === clientKey(client)
    ? `the test of ${date} in ${file}`
    : `a test of ${date} for another client`

/** Rows that pass, renumbered; what refers to a row that does not is said in words. */
function onlyThose(
  rows: readonly RegisterRow[],
  passes: (row: RegisterRow) => boolean,
  forOneClient: boolean,
): RegisterRow[] {
  const kept = rows.filter(passes)
  if (kept.length === rows.length) return kept
  const number = new Map(kept.map(({ row }, i) => [row, i + 1]))
  return kept.map(({ of, supersededBy, remark, ...row }) => {
    const repeats = of === undefined ? undefined : number.get(of)
    const successor = supersededBy === undefined ? undefined : number.get(supersededBy)
    const outside = of !== undefined && repeats === undefined ? rows[of - 1] : undefined
    const remarks = [
      remark,
      outside &&
        `${row.role === 'repeat' ? 'repeats' : 'is a copy of'} ${elsewhere(row, outside, forOneClient)}`,
    ].filter((text) => text !== undefined)
    return {
      ...row,
      row: number.get(row.row) ?? 0,
      ...(repeats !== undefined && { of: repeats }),
      ...(successor !== undefined && { supersededBy: successor }),
      ...(remarks.length > 0 && { remark: remarks.join('; ') }),
    }
  })
}
