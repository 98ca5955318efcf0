import type { Workbook } from 'exceljs'
import { newWorkbook } from '../../reports/workbook/new-workbook.js'
import { type RerunReport, withoutReruns } from '../report-of-all.js'
import { writeDifferencesSheet } from './differences-sheet.js'
import { writeFilesSheet } from './files-sheet.js'
import { SIGN_OFF_SHEET, writeSignOffSheet } from './sign-off-sheet.js'

/** The sheets of a re-run report: Sign-off, Files, Differences. */
export function layOutRerun(whole: RerunReport): Workbook {
  const report = withoutReruns(whole)
  const workbook = newWorkbook('Re-run of archived workbooks', new Date(`${report.asOf}T00:00:00Z`))
  const signOff = workbook.addWorksheet(SIGN_OFF_SHEET, { views: [{ showGridLines: false }] })
  const places = writeFilesSheet(workbook, report)
  writeDifferencesSheet(workbook, report, places)
  writeSignOffSheet(signOff, report)
  return workbook
}
