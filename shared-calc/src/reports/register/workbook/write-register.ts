import type { Workbook } from 'exceljs'
import { CALCULATION_VERSION } from '../../../catalogue/calculation-version.js'
import { addChartsTo } from '../../workbook/chart/add-charts.js'
import type { ChartDescription } from '../../workbook/chart/description.js'
import { holdTexts } from '../../workbook/held-texts.js'
import { newWorkbook } from '../../workbook/new-workbook.js'
import { writeParts } from '../../workbook/zip/parts.js'
import { workbookParts } from '../../workbook/zip/workbook-parts.js'
import type { Register } from '../register.js'
import { writeBuildingsSheet } from './buildings-sheet.js'
import { writeCharts } from './charts.js'
import { dateOf } from './columns.js'
import { writeLeftOutSheet } from './left-out-sheet.js'
import { titleOf, writeRegisterSheet } from './register-sheet.js'
import { writeStagesSheet } from './stages-sheet.js'
import { writeToDoSheet } from './to-do-sheet.js'
import { writeTotalsSheet } from './totals-sheet.js'
import { writeTrendsSheet } from './trends-sheet.js'

/** A register's sheets before they are packed, and the charts that are added to the packed parts. */
export interface RegisterLaidOut {
  readonly workbook: Workbook
  readonly charts: readonly ChartDescription[]
}

/** The path of a test's file as seen from the folder that the register is written to. */
export type SeenFrom = (file: string) => string

/** @param version - calculation version that the register names; null where one made before 1.7.0, which names none, is made again */
export function layOutRegister(
  register: Register,
  seenFrom: SeenFrom,
  version: string | null = CALCULATION_VERSION,
): RegisterLaidOut {
  const workbook = newWorkbook(titleOf(register), dateOf(register.asOf))
  writeRegisterSheet(workbook, register, seenFrom)
  writeTotalsSheet(workbook, register)
  writeBuildingsSheet(workbook, register, seenFrom)
  const trends = writeTrendsSheet(workbook, register, seenFrom)
  writeStagesSheet(workbook, register)
  // Its lists go by number, in whatever order the rows stand.
  writeToDoSheet(workbook, { ...register, rows: [...register.rows].sort((a, b) => a.row - b.row) })
  const charts = writeCharts(workbook, register)
  writeLeftOutSheet(workbook, register, version)
  return { workbook, charts: [...trends, ...charts] }
}

/**
 * The register as a workbook: Register, Totals, Buildings where there are any, Trends, Stages, To do, Charts, Left out. The same register gives the same bytes.
 * @param seenFrom - path of a test's file as seen from the folder the register is written to; as given unless said
 */
export async function writeRegisterWorkbook(
  register: Register,
  { seenFrom = (file: string) => file }: { seenFrom?: SeenFrom } = {},
): Promise<Uint8Array> {
  const { workbook, charts } = layOutRegister(register, seenFrom)
  holdTexts(workbook)
  const parts = await workbookParts(workbook)
  addChartsTo(parts, charts)
  return writeParts(parts)
}
