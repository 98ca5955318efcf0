import type { Workbook } from 'exceljs'
import type { AssessedTest } from '../../assessment/evaluate.js'
import type { TestRecord } from '../../contract/record/index.js'
import { planOfRecord } from '../../site/plan/request.js'
import { writeLeaksSheet } from './leaks-sheet.js'
import type { PlacedPicture } from './pictures/add-pictures.js'
import type { Pictures } from './pictures/picture.js'
import type { Places } from './places.js'
import { writePlanSheet } from './plan-sheet.js'
import { writePreparationSheet } from './preparation-sheet.js'
import { writeVolumeSheet } from './volume-sheet.js'

/** The sheets of what a record@2 holds beside the test; none for a record@1. Returns where photos of leaks lie. */
export function writeSiteSheets(
  workbook: Workbook,
  record: TestRecord,
  { takeOff, plan, leaks }: AssessedTest,
  places: Places,
  pictures?: Pictures,
): PlacedPicture[] {
  const request = planOfRecord(record)
  const photos = record.leaks && leaks ? writeLeaksSheet(workbook, record.leaks, leaks, places, pictures) : []
  if (record.takeOff && takeOff) writeVolumeSheet(workbook, record.takeOff, takeOff, places)
  if (record.preparation) writePreparationSheet(workbook, record)
  if (request && plan) writePlanSheet(workbook, request, plan, places)
  return photos
}
