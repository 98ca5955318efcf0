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

/** What to read instead. */
export const insteadOf = (grid: Grid): string =>
  reportKind(grid) === 'plan'
    ? 'type its readings into a test log or on the page'
    : 'give the test log or the summary of one test'

/** Which Draughtbook workbook without a test this is, in words; undefined for any other workbook. */
export const ownReport = (grid: Grid): string | undefined => reportOf(grid)?.why

/** The same, by its kind. */
export const reportKind = (grid: Grid): ReportKind | undefined => reportOf(grid)?.kind
