import { workbookBytes } from '../../reports/workbook/zip/workbook-parts.js'
import type { RerunReport } from '../report-of-all.js'
import { layOutRerun } from './lay-out-rerun.js'

/** The re-run as a workbook for an auditor to sign. The same report gives the same bytes. */
export const writeRerunWorkbook = async (report: RerunReport): Promise<Uint8Array> =>
  workbookBytes(layOutRerun(report))
