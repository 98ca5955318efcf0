import type { Grid } from '../../log/grid/grid.js'

/** Sheets that only a report of ours has all of. */
const reports = [
  {
    sheets: ['Register', 'Totals', 'Stages', 'To do', 'Left out'],
    why: 'this is a Draughtbook register, not a test',
  },
  { sheets: ['Sign-off', 'Files', 'Differences'], why: 'this is a Draughtbook re-run, not a test' },
]

/** What a workbook is, if it is a register or a re-run that we wrote; undefined for any other. */
export const ownReport = ({ sheetNames }: Grid): string | undefined =>
  reports.find(({ sheets }) => sheets.every((name) => sheetNames.includes(name)))?.why
