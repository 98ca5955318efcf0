import type { Workbook } from 'exceljs'
import { type StagesRequest, workStages } from '../../assessment/stages/work-stages.js'
import { newWorkbook, orderSheets } from '../workbook/new-workbook.js'
import { Places } from '../workbook/places.js'
import { WORKING, writeWorkingSheet } from '../workbook/working-sheet.js'
import { workbookBytes } from '../workbook/zip/workbook-parts.js'
import { ALLOWANCE, placeAllowance, writeAllowanceSheet } from './allowance-sheet.js'
import { SITE, writeSiteSheet } from './site-sheet.js'

/**
 * The stages of a site as a workbook: Site, a picture of plots and stages; Allowance, test by test; Working, with live formulas.
 * @throws InputError as `workStages` does
 */
export async function writeStagesWorkbook(request: StagesRequest): Promise<Uint8Array> {
  return workbookBytes(layOutStages(request))
}

/** The same, before it is packed. */
export function layOutStages(request: StagesRequest): Workbook {
  const worked = workStages(request)
  const workbook = newWorkbook('Leakage allowed and used, stage by stage')
  const places = new Places()
  placeAllowance(worked, places)
  const site = workbook.addWorksheet(SITE, { views: [{ showGridLines: false }] })
  const allowance = workbook.addWorksheet(ALLOWANCE, {
    views: [{ showGridLines: false, state: 'frozen', ySplit: 7 }],
  })
  writeWorkingSheet(workbook, worked.calculation, places)
  writeAllowanceSheet(allowance, worked, places)
  writeSiteSheet(site, worked)
  orderSheets(workbook, [SITE, ALLOWANCE, WORKING])
  return workbook
}
