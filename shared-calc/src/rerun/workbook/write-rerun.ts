import { newWorkbook } from '../../reports/workbook/new-workbook.js'
import { workbookBytes } from '../../reports/workbook/zip/workbook-parts.js'
import type { RerunReport } from '../rerun-report.js'
import { writeDifferencesSheet } from './differences-sheet.js'
import { writeFilesSheet } from './files-sheet.js'
import { writeSignOffSheet } from './sign-off-sheet.js'

/** The re-run as a workbook for an auditor to sign: Sign-off, Files, Differences. The same report gives the same bytes. */
export async function writeRerunWorkbook(report: RerunReport): Promise<Uint8Array> {
  const workbook = newWorkbook('Re-run of archived workbooks', new Date(`${report.asOf}T00:00:00Z`))
  const signOff = workbook.addWorksheet('Sign-off', { views: [{ showGridLines: false }] })
  const places = writeFilesSheet(workbook, report)
  writeDifferencesSheet(workbook, report, places)
  writeSignOffSheet(signOff, report)
  return workbookBytes(workbook)
}
