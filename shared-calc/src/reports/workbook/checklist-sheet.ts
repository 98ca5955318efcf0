import type { Workbook } from 'exceljs'
import type { PlanRequest } from '../../site/plan/request.js'
import { askedOf, preparationList } from '../../site/preparation/asks.js'
import { allCautions, CAUTIONS_DEFER, cautionName, cautionTexts } from '../../site/preparation/cautions.js'
import { writeLine, writeTable } from './live-cell.js'
import { setUpPage } from './page.js'
import { dress, fonts, headingRow } from './styles.js'

export const CHECKLIST = 'Checklist'
const COLUMNS = 4
const WIDE = { columns: COLUMNS, perRow: 124 }
const EMPTY_LEAKS = 14

/** The back of the plan: openings and cautions to tick, and lines for leaks. */
export function writeChecklistSheet(workbook: Workbook, { building, preparation }: PlanRequest): void {
  const sheet = workbook.addWorksheet(CHECKLIST, { views: [{ showGridLines: false }] })
  sheet.columns = [30, 36, 24, 18].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Preparation and leaks'
  dress(sheet.getCell('A2'), {
    font: fonts.muted,
  }).value = `${building.name}; prepared by ${preparation ?? 'a method not yet chosen'}`
  headingRow(sheet, 4, 'Openings', COLUMNS)
  let row = writeTable(
    sheet,
    5,
    [
      { head: 'opening', align: 'left' },
      { head: 'method requires', align: 'left' },
      { head: 'found, and action taken', align: 'left' },
      { head: 'not present', align: 'center' },
    ],
    preparationList.map((listed) => [
      listed.kind,
      askedOf(listed, preparation)?.words ?? 'choose a preparation method first',
      '',
      '☐',
    ]),
  )
  headingRow(sheet, row + 1, 'Cautions: check before you switch on the fan', COLUMNS)
  row += 2
  for (const caution of allCautions)
    row = writeLine(sheet, row, `☐  ${cautionName(caution)}: ${cautionTexts[caution]}`, WIDE)
  row = writeLine(sheet, row, CAUTIONS_DEFER, { ...WIDE, font: fonts.bold })
  headingRow(sheet, row + 1, 'Leaks', COLUMNS)
  const first = row + 3
  row = writeTable(
    sheet,
    row + 2,
    [
      { head: 'place', align: 'left' },
      { head: 'kind, how found, direction', align: 'left' },
      { head: 'size', align: 'left' },
      { head: 'photo', align: 'left' },
    ],
    Array.from({ length: EMPTY_LEAKS }, () => ['', '', '', '']),
  )
  for (let line = first; line < row; line += 1) sheet.getRow(line).height = 18
  setUpPage(sheet, {
    landscape: false,
    title: `Preparation: ${building.name}`,
    lastRow: row,
    lastColumn: COLUMNS,
    onePage: true,
  })
}
