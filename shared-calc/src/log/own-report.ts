import type { Grid } from './grid/grid.js'

/** Kinds of Draughtbook workbooks that hold no single test. */
export type ReportKind = 'register' | 're-run' | 'building' | 'stages' | 'plan' | 'take-off'

/** Sheets that only such a workbook has all of. */
const reports: readonly {
  readonly kind: ReportKind
  readonly sheets: readonly string[]
  /** With any other sheet beside these, a test may have been logged in it. */
  readonly alone?: true
  readonly why: string
}[] = [
  {
    kind: 'register',
    sheets: ['Register', 'Totals', 'Stages', 'To do', 'Left out'],
    why: 'this is a Draughtbook register, not a test',
  },
  {
    kind: 're-run',
    sheets: ['Sign-off', 'Files', 'Differences'],
    why: 'this is a Draughtbook re-run, not a test',
  },
  {
    kind: 'building',
    sheets: ['Building', 'Homes', 'Working'],
    why: 'this is a Draughtbook workbook on a building of several homes, not a test',
  },
  {
    kind: 'stages',
    sheets: ['Site', 'Allowance', 'Working'],
    why: 'this is a Draughtbook workbook on the stages of a site, not a test',
  },
  {
    kind: 'plan',
    sheets: ['Plan', 'Checklist', 'Inputs', 'Working'],
    alone: true,
    why: 'this is a Draughtbook test plan, not a test',
  },
  {
    kind: 'take-off',
    sheets: ['Volume', 'Inputs', 'Working'],
    alone: true,
    why: 'this is a Draughtbook take-off, not a test',
  },
]

const reportOf = ({ sheetNames }: Grid) =>
  reports.find(
    ({ sheets, alone }) =>
      sheets.every((name) => sheetNames.includes(name)) && !(alone && sheetNames.length > sheets.length),
  )

/** Sheets of a summary: those that every one has, and all that one may have. With others beside them it stands in a log. */
const SUMMARY = ['Summary', 'Readings', 'Working', 'Record']
const MAY_HAVE = new Set([
  ...SUMMARY,
  'Report',
  'Check',
  'Uncertainty',
  'Leaks',
  'Volume',
  'Preparation',
  'Plan',
])

const isSummaryAlone = ({ sheetNames }: Grid): boolean =>
  SUMMARY.every((name) => sheetNames.includes(name)) && sheetNames.every((name) => MAY_HAVE.has(name))

/** Why a workbook is no log, and what to do; undefined for any other. */
export function notALog(grid: Grid): string | undefined {
  if (isSummaryAlone(grid))
    return 'this is a Draughtbook summary, not a test log: give the log it was made from'
  const own = reportOf(grid)
  if (own?.kind === 'plan') return `${own.why}: type its readings into a test log or on the page`
  return own && `${own.why}: give the test log`
}

/** Which Draughtbook workbook without a test this is, in words; undefined for any other workbook. */
export const ownReport = (grid: Grid): string | undefined => reportOf(grid)?.why

/** The same, by its kind. */
export const reportKind = (grid: Grid): ReportKind | undefined => reportOf(grid)?.kind
