import ExcelJS from 'exceljs'
import { buildingResult } from '../../assessment/building/building-result.js'
import { type BuildingRequest, workBuilding } from '../../assessment/building/work-building.js'
import { Places } from '../workbook/places.js'
import { WORKING, writeWorkingSheet } from '../workbook/working-sheet.js'
import { workbookBytes } from '../workbook/zip/workbook-parts.js'
import { writeBuildingSheet } from './building-sheet.js'
import { HOMES, writeHomesSheet } from './homes-sheet.js'

/** A fixed date, so that the same tests give the same bytes. */
const UNDATED = new Date('2000-01-01T12:00:00Z')

/**
 * A building of several homes as a workbook: Building, Homes, Working, with live formulas.
 * @throws InputError as `workBuilding` does
 */
export async function writeBuildingWorkbook(request: BuildingRequest): Promise<Uint8Array> {
  const worked = workBuilding(request)
  const result = buildingResult(request.name, worked)
  const workbook = new ExcelJS.Workbook()
  Object.assign(workbook, {
    creator: 'Draughtbook',
    lastModifiedBy: 'Draughtbook',
    created: UNDATED,
    modified: UNDATED,
    title: `Building of several homes: ${request.name}`,
  })
  const places = new Places()
  writeHomesSheet(workbook, worked, result, places)
  writeWorkingSheet(workbook, worked.calculation, places)
  writeBuildingSheet(workbook, worked, result, places)
  // Written last, when every cell it refers to has its place; looked at first.
  const order = ['Building', HOMES, WORKING]
  for (const sheet of workbook.worksheets) Object.assign(sheet, { orderNo: order.indexOf(sheet.name) })
  return workbookBytes(workbook)
}
