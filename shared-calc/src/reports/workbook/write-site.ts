import type { Workbook } from 'exceljs'
import { capital } from '../../catalogue/words.js'
import { fieldLabel } from '../../contract/record/field-labels.js'
import type { TakeOff } from '../../contract/record/index.js'
import { Calculation } from '../../engine/index.js'
import { methodById } from '../../methods/index.js'
import type { PlanRequest } from '../../site/plan/request.js'
import { workPlan } from '../../site/plan/work-plan.js'
import { workTakeOff } from '../../site/take-off/work-take-off.js'
import { writeChecklistSheet } from './checklist-sheet.js'
import { newWorkbook, orderSheets } from './new-workbook.js'
import { setUpPage } from './page.js'
import { Places } from './places.js'
import { writePlanSheet } from './plan-sheet.js'
import { writeSection } from './readings-sheet.js'
import { dress, fonts } from './styles.js'
import { writeVolumeSheet } from './volume-sheet.js'
import { WORKING, writeWorkingSheet } from './working-sheet.js'
import { workbookBytes } from './zip/workbook-parts.js'

export const INPUTS = 'Inputs'
/** Sheets behind those that are read. */
const BEHIND = [INPUTS, WORKING]

/**
 * A plan as a workbook for the site: Plan and Checklist, one A4 page each, then Inputs and Working with live formulas.
 * @throws InputError naming the field that stops the plan
 */
export async function writePlanWorkbook(request: PlanRequest): Promise<Uint8Array> {
  const worked = workPlan(request, methodById(request.method))
  const { calculation } = worked
  if (request.takeOff) workTakeOff(calculation, request.takeOff)
  return write(`Test plan: ${request.building.name}`, request, calculation, (workbook, places) => {
    writePlanSheet(workbook, request, worked, places)
    writeChecklistSheet(workbook, request)
  })
}

/** What a take-off workbook is made of. */
export interface TakeOffInput {
  readonly name: string
  readonly takeOff: TakeOff
}

/** A take-off as a workbook: Volume, then Inputs and Working with live formulas. */
export async function writeTakeOffWorkbook({ name, takeOff }: TakeOffInput): Promise<Uint8Array> {
  const calculation = new Calculation()
  const worked = workTakeOff(calculation, takeOff)
  return write(`Volume and areas: ${name}`, { takeOff }, calculation, (workbook, places) => {
    writeVolumeSheet(workbook, takeOff, worked, places)
  })
}

async function write(
  title: string,
  parts: object,
  calculation: Calculation,
  front: (workbook: Workbook, places: Places) => void,
): Promise<Uint8Array> {
  const workbook = newWorkbook(title)
  const places = new Places()
  writeInputs(workbook, parts, places)
  writeWorkingSheet(workbook, calculation, places)
  front(workbook, places)
  const forReaders = workbook.worksheets.map(({ name }) => name).filter((name) => !BEHIND.includes(name))
  orderSheets(workbook, [...forReaders, ...BEHIND])
  return workbookBytes(workbook)
}

function writeInputs(workbook: Workbook, parts: object, places: Places): void {
  const sheet = workbook.addWorksheet(INPUTS, { views: [{ showGridLines: false }] })
  sheet.columns = [44, 18, 12].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Inputs'
  let row = 3
  for (const [key, part] of Object.entries(parts))
    if (key !== 'format') row = writeSection(sheet, part, key, capital(fieldLabel([key]).label), row, places)
  setUpPage(sheet, { landscape: false, title: INPUTS, lastRow: row, lastColumn: 3 })
}
