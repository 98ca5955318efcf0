import type { Workbook } from 'exceljs'
import { buildingResult } from '../../assessment/building/building-result.js'
import { type BuildingRequest, workBuilding } from '../../assessment/building/work-building.js'
import { newWorkbook, orderSheets } from '../workbook/new-workbook.js'
import { Places } from '../workbook/places.js'
import { WORKING, writeWorkingSheet } from '../workbook/working-sheet.js'
import { workbookBytes } from '../workbook/zip/workbook-parts.js'
import { writeBuildingSheet } from './building-sheet.js'
import { HOMES, writeHomesSheet } from './homes-sheet.js'

/**
 * A building of several homes as a workbook: Building, Homes, Working, with live formulas.
 * @throws InputError as `workBuilding` does
 */
export async function writeBuildingWorkbook(request: BuildingRequest): Promise<Uint8Array> {
  return workbookBytes(layOutBuilding(request))
}

/** The same, before it is packed. */
export function layOutBuilding(request: BuildingRequest): Workbook {
  const worked = workBuilding(request)
  const result = buildingResult(request.name, worked)
  const workbook = newWorkbook(`Building of several homes: ${request.name}`)
  const places = new Places()
  writeHomesSheet(workbook, worked, result, places)
  writeWorkingSheet(workbook, worked.calculation, places)
  writeBuildingSheet(workbook, worked, result, places)
  orderSheets(workbook, ['Building', HOMES, WORKING])
  return workbook
}
