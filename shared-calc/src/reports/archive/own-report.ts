import type { Grid } from '../../log/grid/grid.js'

/** Kinds of reports that are made from tests. */
export type ReportKind = 'register' | 're-run' | 'building' | 'stages'

/** Sheets that only a Draughtbook report has all of. */
const reports: readonly {
  readonly kind: ReportKind
  readonly sheets: readonly string[]
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
]

const reportOf = ({ sheetNames }: Grid) =>
  reports.find(({ sheets }) => sheets.every((name) => sheetNames.includes(name)))

/** Which Draughtbook report a workbook is, in words; undefined for any other workbook. */
export const ownReport = (grid: Grid): string | undefined => reportOf(grid)?.why

/** The same, by its kind. */
export const reportKind = (grid: Grid): ReportKind | undefined => reportOf(grid)?.kind
