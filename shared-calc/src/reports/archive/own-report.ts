import type { Grid } from '../../log/grid/grid.js'

/** Kinds of reports that are made from tests, and of sheets for the site that hold no test. */
export type ReportKind = 'register' | 're-run' | 'building' | 'stages' | 'plan' | 'take-off'

/** Sheets that only a Draughtbook report has all of. */
const reports: readonly {
  readonly kind: ReportKind
  readonly sheets: readonly string[]
  /** What the first cell of the first of them says, where other people's workbooks may have sheets of such names. */
  readonly title?: string
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
    title: 'Test plan',
    why: 'this is a Draughtbook plan for a test, not a test',
  },
  {
    kind: 'take-off',
    sheets: ['Volume', 'Inputs', 'Working'],
    title: 'Volume and areas',
    why: 'this is a Draughtbook take-off of volume and areas, not a test',
  },
]

const reportOf = (grid: Grid) =>
  reports.find(
    ({ sheets: [first = '', ...others], title }) =>
      [first, ...others].every((name) => grid.sheetNames.includes(name)) &&
      (title === undefined || grid.sheet(first)?.at(0, 0)?.value === title),
  )

/** Which Draughtbook report a workbook is, in words; undefined for any other workbook. */
export const ownReport = (grid: Grid): string | undefined => reportOf(grid)?.why

/** The same, by its kind. */
export const reportKind = (grid: Grid): ReportKind | undefined => reportOf(grid)?.kind
