import type { Workbook, Worksheet } from 'exceljs'
import type { BuildingResult } from '../../assessment/building/building-result.js'
import { homesTargetText } from '../../assessment/building/home.js'
import { ruleWords, type WorkedBuilding, type WorkedWay } from '../../assessment/building/work-building.js'
import { CALCULATION_VERSION } from '../../catalogue/calculation-version.js'
import { capital, counted, dayInWords, outcomeWords } from '../../catalogue/words.js'
import { reference } from '../workbook/address.js'
import { live, PROBABILITY_FORMAT, writeLine, writeTable } from '../workbook/live-cell.js'
import { madeUnder } from '../workbook/new-workbook.js'
import { setUpPage } from '../workbook/page.js'
import type { Places } from '../workbook/places.js'
import { dress, fills, fonts, headingRow } from '../workbook/styles.js'
import { FIRST_HOME, HOMES } from './homes-sheet.js'

export const BUILDING = 'Building'
const COLUMNS = 8
/** Where the sheet says what the building is called and how its homes are combined. */
export const statedIn = { name: { row: 3, column: 2 }, rule: { row: 5, column: 2 } } as const
const WIDE = { columns: COLUMNS, perRow: 118 }

/** The summary page: verdict, the ways to combine the homes, the homes, and the findings. */
export function writeBuildingSheet(
  workbook: Workbook,
  worked: WorkedBuilding,
  result: BuildingResult,
  places: Places,
): void {
  const sheet = workbook.addWorksheet(BUILDING, { views: [{ showGridLines: false }] })
  sheet.columns = [47, 10, 10, 10, 12, 15, 13, 12].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Building of several homes'
  sheet.getRow(1).height = 26
  const { target } = result
  const facts: [string, string][] = [
    ['Building', result.name],
    ['Target', homesTargetText(target)],
    ['Rule', ruleWords[result.rule]],
    ['Tests', `${result.homes.length} of ${counted(worked.homesInBuilding, 'home')}`],
  ]
  facts.forEach(([label, fact], i) => {
    const { row, column } = statedIn.name
    dress(sheet.getCell(row + i, column - 1), { font: fonts.muted }).value = label
    dress(sheet.getCell(row + i, column), {}).value = fact
  })
  writeVerdict(sheet, 8, worked, result, places)
  let row = 10
  if (result.findings.length > 0) {
    headingRow(sheet, row, 'Findings', COLUMNS)
    row += 1
    for (const { severity, message } of result.findings)
      row = writeLine(sheet, row, `${capital(severityWords[severity])}: ${message}`, WIDE)
    row += 1
  }
  row = ways(sheet, row, worked, result, places)
  row = homes(sheet, row + 1, worked, result, places)
  if (worked.sample) row = sample(sheet, row + 1, worked.sample, places)
  row = writeLine(
    sheet,
    row + 1,
    `${madeUnder(CALCULATION_VERSION)} Local codes and licensed practice decide how several homes are tested and compared with a limit.`,
    { ...WIDE, font: fonts.small },
  )
  setUpPage(sheet, {
    landscape: false,
    title: 'Building of several homes',
    lastRow: row,
    lastColumn: COLUMNS,
  })
}

const severityWords = { invalidates: 'not valid', caution: 'caution', note: 'note' } as const

function writeVerdict(
  sheet: Worksheet,
  row: number,
  { ways: all, rule }: WorkedBuilding,
  { outcome, homes: tested }: BuildingResult,
  places: Places,
): void {
  const words = outcomeWords[outcome].toUpperCase()
  const chosen = all.find((way) => way.rule === rule)
  const cell = dress(sheet.getCell(row, 1), { font: fonts.verdict })
  sheet.mergeCells(row, 1, row, COLUMNS)
  sheet.getRow(row).height = 30
  const verdicts = `${HOMES}!$J$${FIRST_HOME}:$J$${FIRST_HOME + tested.length - 1}`
  const meets = outcomeWords.meets
  const test = chosen
    ? `${reference(places.symbol(chosen.comparison.id, 'M'))}>=0`
    : `COUNTIF(${verdicts},"${meets}")=${tested.length}`
  cell.value =
    outcome === 'not valid'
      ? words
      : {
          formula: `IF(${test},"${outcomeWords.meets.toUpperCase()}","${outcomeWords.misses.toUpperCase()}")`,
          result: words,
        }
  Object.assign(cell, {
    alignment: { horizontal: 'center', vertical: 'middle' },
    fill: outcome === 'meets' ? fills.good : outcome === 'misses' ? fills.bad : fills.plain,
  })
}

function ways(
  sheet: Worksheet,
  start: number,
  { ways: all, rule }: WorkedBuilding,
  { target }: BuildingResult,
  places: Places,
): number {
  headingRow(sheet, start, 'The homes together', COLUMNS)
  const { unit } = target
  const row = (way: WorkedWay) => [
    `${ruleWords[way.rule]}${way.rule === rule ? ' (used for the verdict)' : ''}`,
    live(places, way.mean, 'v_u', '0.000'),
    live(places, way.uncertainty, 'v_lo', '0.000'),
    live(places, way.uncertainty, 'v_hi', '0.000'),
    live(places, way.uncertainty, 'u_c', '0.0 %'),
    way.sampled ? live(places, way.sampled, 'v', '0.000') : live(places, way.mean, 'v_u', '0.000'),
    live(places, way.comparison, 'M', '+0.000;-0.000;0.000'),
    live(places, way.probability, 'P_m', PROBABILITY_FORMAT),
  ]
  return writeTable(
    sheet,
    start + 1,
    [
      { head: 'way', align: 'left' },
      { head: `${target.quantity}\n${unit}` },
      { head: '95 % from' },
      { head: '95 % to' },
      { head: 'standard\nuncertainty' },
      { head: 'value\ncompared' },
      { head: 'margin' },
      { head: 'probability\nof meeting' },
    ],
    all.map(row),
  )
}

function homes(
  sheet: Worksheet,
  start: number,
  { ways: [way], homes: tested }: WorkedBuilding,
  { target, homes: results }: BuildingResult,
  places: Places,
): number {
  headingRow(sheet, start, 'Homes', COLUMNS)
  return writeTable(
    sheet,
    start + 1,
    [
      { head: 'home', align: 'left' },
      { head: `${target.quantity}\n${target.unit}` },
      { head: 'flow\nm³/h' },
      { head: 'share' },
      { head: 'probability\nof meeting' },
      { head: 'date', align: 'left' },
      { head: 'adjoining\nspaces', align: 'left' },
      { head: 'verdict', align: 'left' },
    ],
    tested.map((_, i) => {
      const home = results[i]
      const cell = (column: string) => `${HOMES}!$${column}$${FIRST_HOME + i}`
      return [
        { value: { formula: cell('A'), result: home?.name ?? '' } },
        { value: { formula: cell('D'), result: home?.value ?? 0 }, numFmt: '0.000' },
        way && live(places, way.mean, 'q_h', '0.0', i),
        way && live(places, way.mean, 'g_h', '0.0 %', i),
        { value: home?.probability ?? null, numFmt: PROBABILITY_FORMAT },
        home && dayInWords(home.date),
        { value: { formula: cell('I'), result: home?.adjoiningSpaces ?? 'not stated' } },
        { value: { formula: cell('J'), result: home ? outcomeWords[home.outcome] : '' } },
      ]
    }),
  )
}

function sample(
  sheet: Worksheet,
  start: number,
  block: NonNullable<WorkedBuilding['sample']>,
  places: Places,
): number {
  headingRow(sheet, start, 'Sample', COLUMNS)
  return writeTable(
    sheet,
    start + 1,
    [{ head: 'homes', align: 'left' }, { head: 'number' }],
    [
      ['required', live(places, block, 'N_n', '0')],
      ['still to be tested', live(places, block, 'N_m', '0')],
    ],
  )
}
