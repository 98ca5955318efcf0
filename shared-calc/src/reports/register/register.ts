import { arrange, grouped, houseOf, type RegisterRow } from './arrange.js'
import { type ExpiringCalibration, expiringCalibrations } from './calibrations.js'
import { type HouseChange, houseChanges } from './houses.js'
import type { LeftOut } from './read-lines.js'
import type { TestLine } from './test-line.js'
import { type Grouping, type Totals, totalsBy, totalsOf } from './totals.js'

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
  /** Rows of houses whose latest test missed its target or is not valid. */
  readonly toRetest: readonly number[]
  readonly calibrations: readonly ExpiringCalibration[]
  readonly changes: readonly HouseChange[]
  /** Files and tests that are not in the register, each with the reason. */
  readonly leftOut: readonly LeftOut[]
}

export interface RegisterOptions {
  /** Only tests of this month, as 2026-10. */
  readonly month?: string
  readonly asOf: string
}

/** The register of some tests. Tests of other months are left out, and listed. */
export function makeRegister(
  lines: readonly TestLine[],
  unread: readonly LeftOut[],
  { month, asOf }: RegisterOptions,
): Register {
  const inMonth = (line: TestLine) => month === undefined || line.date.startsWith(`${month}-`)
  // Earlier tests are known too: a retest of this month may repeat one of the last.
  const known = month === undefined ? lines : lines.filter(({ date }) => date.slice(0, 7) <= month)
  const rows = onlyThose(arrange(known), inMonth)
  const others = lines
    .filter((line) => !inMonth(line))
    .map(({ file, part, date }) => ({
      file,
      ...(part !== undefined && { part }),
      why: `tested on ${date}, not in ${month ?? ''}`,
      expected: true as const,
    }))
  return {
    format: REGISTER_FORMAT,
    ...(month !== undefined && { month }),
    asOf,
    rows,
    overall: totalsOf('all', rows),
    totals: {
      site: totalsBy(rows, 'site'),
      stage: totalsBy(rows, 'stage'),
      tester: totalsBy(rows, 'tester'),
      client: totalsBy(rows, 'client'),
    },
    toRetest: [
      ...grouped(
        rows.filter(({ role }) => role !== 'duplicate'),
        houseOf,
      ).values(),
    ]
      .flatMap((tests) => tests.slice(-1))
      .filter(({ outcome }) => outcome === 'misses' || outcome === 'not valid')
      .map(({ row }) => row),
    calibrations: expiringCalibrations(rows, asOf),
    changes: houseChanges(rows),
    leftOut: [...[...unread].sort((a, b) => (a.file < b.file ? -1 : 1)), ...others],
  }
}

/** Rows that pass, numbered anew; what refers to a row that does not is said in words. */
function onlyThose(rows: readonly RegisterRow[], passes: (row: RegisterRow) => boolean): RegisterRow[] {
  const kept = rows.filter(passes)
  if (kept.length === rows.length) return kept
  const number = new Map(kept.map(({ row }, i) => [row, i + 1]))
  return kept.map(({ of, supersededBy, remark, ...row }) => {
    const repeats = of === undefined ? undefined : number.get(of)
    const successor = supersededBy === undefined ? undefined : number.get(supersededBy)
    const outside = of !== undefined && repeats === undefined ? rows[of - 1] : undefined
    const remarks = [
      remark,
      outside && `${row.role === 'repeat' ? 'repeats' : 'is'} the test of ${outside.date} in ${outside.file}`,
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
