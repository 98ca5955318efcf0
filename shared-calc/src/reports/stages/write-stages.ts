import ExcelJS from 'exceljs'
import { type StagesRequest, workStages } from '../../assessment/stages/work-stages.js'
import { Places } from '../workbook/places.js'
import { WORKING, writeWorkingSheet } from '../workbook/working-sheet.js'
import { workbookBytes } from '../workbook/zip/workbook-parts.js'
import { ALLOWANCE, placeAllowance, writeAllowanceSheet } from './allowance-sheet.js'
import { SITE, writeSiteSheet } from './site-sheet.js'

/** A fixed date, so that the same tests give the same bytes. */
const UNDATED = new Date('2000-01-01T12:00:00Z')

/**
 * The stages of a site as a workbook: Site, a picture of plots and stages; Allowance, test by test; Working, with live formulas.
 * @throws InputError as `workStages` does
 */
export async function writeStagesWorkbook(request: StagesRequest): Promise<Uint8Array> {
  const worked = workStages(request)
  const workbook = new ExcelJS.Workbook()
  Object.assign(workbook, {
    creator: 'Draughtbook',
    lastModifiedBy: 'Draughtbook',
    created: UNDATED,
    modified: UNDATED,
    title: 'Leakage allowed and used, stage by stage',
  })
  const places = new Places()
  placeAllowance(worked, places)
  const site = workbook.addWorksheet(SITE, { views: [{ showGridLines: false }] })
  const allowance = workbook.addWorksheet(ALLOWANCE, {
    views: [{ showGridLines: false, state: 'frozen', ySplit: 7 }],
  })
  writeWorkingSheet(workbook, worked.calculation, places)
  writeAllowanceSheet(allowance, worked, places)
  writeSiteSheet(site, worked)
  const order = [SITE, ALLOWANCE, WORKING]
  for (const sheet of workbook.worksheets) Object.assign(sheet, { orderNo: order.indexOf(sheet.name) })
  return workbookBytes(workbook)
}
