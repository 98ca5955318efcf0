import type { Workbook } from 'exceljs'
import { planOfRecord } from '../plan/request.js'
import type { TestRecord } from '../record/index.js'
import type { WorkedTest } from '../work/worked-test.js'
import { writeLeaksSheet } from './leaks-sheet.js'
import type { Places } from './places.js'
import { writePlanSheet } from './plan-sheet.js'
import { writePreparationSheet } from './preparation-sheet.js'
import { writeVolumeSheet } from './volume-sheet.js'

/** The sheets of what a record@2 holds beside the test; none for a record@1. */
export function writeSiteSheets(
  workbook: Workbook,
  record: TestRecord,
  { takeOff, plan, leaks }: WorkedTest,
  places: Places,
): void {
  const request = planOfRecord(record)
  if (record.leaks && leaks) writeLeaksSheet(workbook, record.leaks, leaks, places)
  if (record.takeOff && takeOff) writeVolumeSheet(workbook, record.takeOff, takeOff, places)
  if (record.preparation) writePreparationSheet(workbook, record)
  if (request && plan) writePlanSheet(workbook, request, plan, places)
}
