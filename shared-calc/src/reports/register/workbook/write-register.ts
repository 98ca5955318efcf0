import { addChartsTo } from '../../workbook/chart/add-charts.js'
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

/**
 * The register as a workbook: Register, Totals, Buildings where there are any, Trends, Stages, To do, Charts, Left out. The same register gives the same bytes.
 * @param seenFrom - path of a test's file as seen from the folder the register is written to; as given unless said
 */
export async function writeRegisterWorkbook(
  register: Register,
  { seenFrom = (file: string) => file }: { seenFrom?: (file: string) => string } = {},
): Promise<Uint8Array> {
  const workbook = newWorkbook(titleOf(register), dateOf(register.asOf))
  writeRegisterSheet(workbook, register, seenFrom)
  writeTotalsSheet(workbook, register)
  writeBuildingsSheet(workbook, register, seenFrom)
  const trends = writeTrendsSheet(workbook, register, seenFrom)
  writeStagesSheet(workbook, register)
  writeToDoSheet(workbook, register)
  const charts = writeCharts(workbook, register)
  writeLeftOutSheet(workbook, register)
  holdTexts(workbook)
  const parts = await workbookParts(workbook)
  addChartsTo(parts, [...trends, ...charts])
  return writeParts(parts)
}
