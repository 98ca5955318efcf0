import ExcelJS from 'exceljs'
import type { TakeOff } from '../../contract/record/index.js'
import { Calculation } from '../../engine/index.js'
import { methodById } from '../../methods/index.js'
import type { PlanRequest } from '../../site/plan/request.js'
import { workPlan } from '../../site/plan/work-plan.js'
import { workTakeOff } from '../../site/take-off/work-take-off.js'
import { writeChecklistSheet } from './checklist-sheet.js'
import { setUpPage } from './page.js'
import { Places } from './places.js'
import { writePlanSheet } from './plan-sheet.js'
import { writeSection } from './readings-sheet.js'
import { dress, fonts } from './styles.js'
import { writeVolumeSheet } from './volume-sheet.js'
import { writeWorkingSheet } from './working-sheet.js'
import { workbookBytes } from './zip/workbook-parts.js'

export const INPUTS = 'Inputs'

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

/** A fixed date, so that the same input gives the same bytes. */
const UNDATED = new Date('2000-01-01T12:00:00Z')

async function write(
  title: string,
  parts: object,
  calculation: Calculation,
  front: (workbook: ExcelJS.Workbook, places: Places) => void,
): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  Object.assign(workbook, {
    creator: 'Draughtbook',
    lastModifiedBy: 'Draughtbook',
    created: UNDATED,
    modified: UNDATED,
    title,
  })
  const places = new Places()
  writeInputs(workbook, parts, places)
  writeWorkingSheet(workbook, calculation, places)
  front(workbook, places)
  inFront(workbook)
  return workbookBytes(workbook)
}

function writeInputs(workbook: ExcelJS.Workbook, parts: object, places: Places): void {
  const sheet = workbook.addWorksheet(INPUTS, { views: [{ showGridLines: false }] })
  sheet.columns = [44, 18, 12].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Inputs'
  let row = 3
  for (const [key, part] of Object.entries(parts))
    if (key !== 'format') row = writeSection(sheet, part, key, key, row, places)
  setUpPage(sheet, { landscape: false, title: INPUTS, lastRow: row, lastColumn: 3 })
}

/** The sheets to look at come first, though they are written last, when every cell they refer to has its place. */
function inFront(workbook: ExcelJS.Workbook): void {
  const behind = [INPUTS, 'Working']
  const order = [...workbook.worksheets].sort(
    (a, b) => Number(behind.includes(a.name)) - Number(behind.includes(b.name)),
  )
  order.forEach((sheet, i) => {
    Object.assign(sheet, { orderNo: i })
  })
}
