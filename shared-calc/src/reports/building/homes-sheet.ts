import type { Workbook, Worksheet } from 'exceljs'
import type { BuildingResult } from '../../assessment/building/building-result.js'
import type { WorkedBuilding } from '../../assessment/building/work-building.js'
import { shortNames } from '../../catalogue/short-names.js'
import { dayInWords, outcomeWords } from '../../catalogue/words.js'
import type { SymbolOf } from '../../engine/index.js'
import type { sampleOfHomes } from '../../formulas/building-of-homes.js'
import { linkTo } from '../workbook/file-link.js'
import { setUpPage } from '../workbook/page.js'
import type { Places } from '../workbook/places.js'
import { dress, fills, fonts, heightFor, underline, wrap } from '../workbook/styles.js'

export const HOMES = 'Homes'
const HEAD = 10
const NAME_WIDTH = 26
export const FIRST_HOME = HEAD + 1

/** Columns that say which test a row is copied from. */
export const homeColumns = { name: 1, date: 3, file: 11 } as const
/** What was entered for the building, by its label above the homes: labels in column A, values in column D. */
export const givenFacts = {
  homesInBuilding: 'homes in the building',
  sampleSize: 'size of the sample',
  morePerMiss: 'extra homes to test for each home that fails',
} as const
export const FACTS = { first: 3, label: 1, value: 4 } as const

/** Columns after the figure: what the homes can be weighted by. */
const weights = ['summed', 'volume', 'envelope', 'floor'] as const

/** Figures copied from the tests, one row for each home; the working refers to them. */
export function writeHomesSheet(
  workbook: Workbook,
  { homes, homesInBuilding, sample }: WorkedBuilding,
  { target, homes: results }: BuildingResult,
  places: Places,
): void {
  const sheet = workbook.addWorksheet(HOMES, {
    views: [{ showGridLines: false, state: 'frozen', ySplit: HEAD }],
  })
  sheet.columns = [NAME_WIDTH, 15, 18, 12, 13, 12, 12, 12, 12, 13, 34].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Homes'
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'Copied from the tests as issued. The working refers to these cells.'
  const facts: [string, number, string][] = [
    [`limit of ${target.quantity}, ${target.unit}`, target.limit, 'building.limit'],
    [givenFacts.homesInBuilding, homesInBuilding, 'building.homesInBuilding'],
    ['homes tested', homes.length, 'building.tested'],
    [
      'tested homes that do not meet the limit',
      homes.filter(({ outcome }) => outcome !== 'meets').length,
      'building.misses',
    ],
    ...(sample
      ? ([
          [givenFacts.sampleSize, givenOf(sample, 'z_s'), 'building.sampleSize'],
          [givenFacts.morePerMiss, givenOf(sample, 'z_f'), 'building.morePerMiss'],
        ] as [string, number, string][])
      : []),
  ]
  facts.forEach(([label, value, path], i) => {
    const row = FACTS.first + i
    dress(sheet.getCell(row, FACTS.label), { font: fonts.muted }).value = label
    dress(sheet.getCell(row, FACTS.value), { numFmt: 'General' }).value = value
    places.placeField(path, { sheet: HOMES, column: FACTS.value, row })
  })
  writeHeads(sheet, target)
  const names = shortNames(results.map(({ file }) => file))
  homes.forEach((home, i) => {
    const row = FIRST_HOME + i
    const { building } = home.record
    const result = results[i]
    if (!result) return
    const values = {
      summed: home.basis,
      volume: building.volume_m3,
      envelope: building.envelopeArea_m2,
      floor: building.floorArea_m2,
    }
    const texts = [result.name, result.testNumber ?? '', dayInWords(result.date)]
    texts.forEach((text, k) => {
      dress(sheet.getCell(row, 1 + k), { alignment: { ...wrap, horizontal: 'left' } }).value = text
    })
    sheet.getRow(row).height = heightFor(result.name, NAME_WIDTH)
    number(sheet, row, 4, result.value, '0.000')
    places.placeField(`homes[${i}].figure`, { sheet: HOMES, column: 4, row })
    weights.forEach((weight, k) => {
      const value = values[weight]
      if (value === undefined) return
      number(sheet, row, 5 + k, value, '0.0')
      places.placeField(`homes[${i}].${weight}`, { sheet: HOMES, column: 5 + k, row })
    })
    dress(sheet.getCell(row, 9), { alignment: { ...wrap, horizontal: 'left', indent: 1 } }).value =
      result.adjoiningSpaces ?? 'not stated'
    dress(sheet.getCell(row, 10), { alignment: wrap }).value = outcomeWords[result.outcome]
    linkTo(
      dress(sheet.getCell(row, homeColumns.file), { alignment: wrap }),
      names.get(result.file) ?? result.file,
      result.file,
    )
    underline(sheet, row, 11)
  })
  const last = HEAD + homes.length
  setUpPage(sheet, {
    landscape: true,
    title: 'Building of several homes',
    lastRow: last,
    lastColumn: 11,
    repeat: `${HEAD}:${HEAD}`,
  })
}

const givenOf = (
  block: NonNullable<WorkedBuilding['sample']>,
  symbol: SymbolOf<typeof sampleOfHomes>,
): number => {
  const given = block.input(symbol)
  return given && 'value' in given ? given.value : Number.NaN
}

function writeHeads(sheet: Worksheet, { quantity, unit }: BuildingResult['target']): void {
  const heads = [
    'Home',
    'Test number',
    'Date',
    `${quantity}\n${unit}`,
    'basis of limit\nm³, m² or 1',
    'Volume\nm³',
    'Envelope\nm²',
    'Floor\nm²',
    'Adjoining\nspaces',
    'Verdict',
    'File',
  ]
  sheet.getRow(HEAD).height = 28
  heads.forEach((head, i) => {
    dress(sheet.getCell(HEAD, i + 1), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: {
        wrapText: true,
        vertical: 'bottom',
        horizontal: i >= 3 && i <= 7 ? 'right' : 'left',
        indent: i === 8 ? 1 : 0,
      },
    }).value = head
  })
}

function number(sheet: Worksheet, row: number, column: number, value: number, numFmt: string): void {
  dress(sheet.getCell(row, column), { numFmt, alignment: { vertical: 'top' } }).value = value
}
