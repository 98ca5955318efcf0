import type { CellValue, Workbook, Worksheet } from 'exceljs'
import { curveFigures, nameWithSymbol, numberFormat } from '../../catalogue/figures.js'
import { unitText } from '../../catalogue/shown-figure.js'
import { cited } from '../../catalogue/sources.js'
import { capital } from '../../catalogue/words.js'
import { fieldLabel } from '../../contract/record/field-labels.js'
import type { TestRecord } from '../../contract/record/index.js'
import type { Block } from '../../engine/index.js'
import type { WorkedRun } from '../../evaluation/work/worked-test.js'
import { reference } from './address.js'
import { dayFrom, live, logged, type Shown, writeLine, writeTable } from './live-cell.js'
import { setUpPage } from './page.js'
import type { PlacedPicture } from './pictures/add-pictures.js'
import { detailsNote, writePhotos } from './pictures/photo-rows.js'
import {
  byHand,
  instruments,
  ofInstruments,
  type ReportGroup,
  reportItems,
  shownIfLogged,
} from './report-items.js'
import { dress, fonts, headingRow, heightFor, underline } from './styles.js'
import type { SummaryInput } from './summary-input.js'

export const REPORT = 'Report'
const COLUMNS = 7
/** First and last columns of the places in a row of photos. */
const PHOTO_BLOCKS = [
  [1, 1],
  [2, 4],
  [5, 7],
] as const
const WIDE = { columns: COLUMNS, perRow: 118 }

/** The test report for the certifying body: what was tested, with what, how, every reading, photos, every finding. Returns where the photos lie. */
export function writeReportSheet(sheet: Worksheet, input: SummaryInput): PlacedPicture[] {
  sheet.columns = [34, 13, 16, 13, 13, 13, 13].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Test report'
  dress(sheet.getCell('A2'), {
    font: fonts.muted,
  }).value = `${input.method.title}. All figures come from sheets Readings and Working of the summary workbook.`
  let row = 4
  for (const { title, fields } of reportItems) row = writeFields(sheet, input, title, fields, row)
  row = writeInstruments(sheet, input, row)
  row = writeByHand(sheet, writeOpenings(sheet, input.record, row))
  // Readings and results begin a page of their own.
  sheet.getRow(row - 1).addPageBreak()
  for (const run of input.test.runs) row = writeRun(sheet, input, run, row)
  row = writeLeaks(sheet, input.record, row)
  const photos = writePhotos(sheet, row, photosInOrder(input), {
    blocks: PHOTO_BLOCKS,
    columns: COLUMNS,
    note: detailsNote(input.pictures?.detailsKept ?? false),
  })
  row = writeFindings(sheet, input, photos.row)
  row = writeSignatures(sheet, row)
  setUpPage(sheet, { landscape: false, title: REPORT, lastRow: row, lastColumn: COLUMNS })
  return photos.placed
}

/** The report comes after the summary in the workbook but is filled last, when every cell it refers to has its place. */
export const addReportSheet = (workbook: Workbook): Worksheet =>
  workbook.addWorksheet(REPORT, { views: [{ showGridLines: false }] })

/** Those of the set-up, then those of leaks. */
const photosInOrder = ({ pictures }: SummaryInput) =>
  (['set-up', 'leak'] as const).flatMap((what) => pictures?.list.filter(({ of }) => of === what) ?? [])

/** One field a line with its unit; what was not logged says so. */
function writeFields(
  sheet: Worksheet,
  input: SummaryInput,
  title: string | undefined,
  fields: ReportGroup['fields'],
  start: number,
): number {
  const { record } = input
  if (title !== undefined) headingRow(sheet, start, title, COLUMNS)
  const shown = fields.filter((path) => !shownIfLogged.has(path) || valueAt(record, path) !== undefined)
  shown.forEach((path, i) => {
    const row = start + 1 + i
    const { label, unit } = fieldLabel(path.split('.'))
    dress(sheet.getRow(row).getCell(1), { font: fonts.muted, alignment: { vertical: 'top' } }).value =
      capital(label)
    sheet.mergeCells(row, 2, row, COLUMNS)
    const value = valueAt(record, path)
    const cell = dress(sheet.getRow(row).getCell(2), {
      alignment: { horizontal: 'left', wrapText: true, vertical: 'top' },
    })
    if (value === undefined) {
      cell.value = 'not logged'
      cell.font = fonts.muted
      return
    }
    cell.value = shownField(input, path, value)
    if (/[Hh]umidity$/.test(path)) cell.numFmt = '0 %'
    else if (path === 'conditions.barometricPressure_Pa') cell.numFmt = '# ##0" Pa"'
    else if (unit) cell.numFmt = typeof value === 'number' ? `General" ${unit}"` : 'General'
    sheet.getRow(row).height = heightFor(String(value), 95)
  })
  return start + shown.length + 2
}

/** Each instrument with its number, the end of its calibration and its accuracy; then what else is said about them. */
function writeInstruments(sheet: Worksheet, input: SummaryInput, start: number): number {
  const { record } = input
  headingRow(sheet, start, 'Instruments', COLUMNS)
  const field = (path: string, numFmt?: string): Shown => {
    const value = valueAt(record, path)
    if (value === undefined) return { value: 'not logged' }
    return { value: shownField(input, path, value), ...(numFmt && { numFmt }) }
  }
  const row = writeTable(
    sheet,
    start + 1,
    [
      { head: '', align: 'left' },
      { head: 'serial number' },
      { head: 'calibration due' },
      { head: 'accuracy' },
    ],
    instruments.map(({ name, part, accuracy }) => {
      const stated = accuracy.map((key) => `${part}.${key}`)
      const path = stated.find((one) => valueAt(record, one) !== undefined) ?? stated[0] ?? ''
      const { unit } = fieldLabel(path.split('.'))
      return [
        name,
        field(`${part}.serial`),
        field(`${part}.calibrationDue`),
        field(path, unit ? `"±"General" ${unit}"` : '"±"0.0 %'),
      ]
    }),
  )
  return writeFields(sheet, input, undefined, ofInstruments, row - 1)
}

/** A day and a place in words, the method by its title, all else as logged. */
function shownField(
  { places, method }: SummaryInput,
  path: string,
  value: string | number | boolean,
): CellValue {
  if (path === 'test.method') return method.title
  const cell = places.field(path)
  if (cell && typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value)) return dayFrom(cell, value)
  if (cell && path === 'conditions.windAt')
    return {
      formula: `IF(${reference(cell)}="ground","near the ground","at a weather station")`,
      result: value === 'ground' ? 'near the ground' : 'at a weather station',
    }
  return logged(places, path, value).value
}

function valueAt(record: TestRecord, path: string): string | number | boolean | undefined {
  const keys = path.split(/[.[\]]+/).filter(Boolean)
  const found = keys.reduce<unknown>(
    (part, key) => (part as Record<string, unknown> | undefined)?.[key],
    record,
  )
  return typeof found === 'object' ? undefined : (found as string | number | boolean | undefined)
}

/** Every opening with its state: what was sealed for the test is here. */
function writeOpenings(sheet: Worksheet, { test }: TestRecord, start: number): number {
  headingRow(sheet, start, 'Openings during the test', COLUMNS)
  const openings = test.openings ?? []
  if (openings.length === 0)
    return writeLine(sheet, start + 1, 'The state of the openings was not logged.', WIDE) + 1
  return (
    writeTable(
      sheet,
      start + 1,
      [
        { head: 'opening', align: 'left' },
        { head: 'state', align: 'left' },
        { head: 'note', align: 'left' },
      ],
      openings.map(({ opening, state, note }) => [opening, state, note]),
    ) + 1
  )
}

/** Lines for what is asked of a report and is not in the record. */
function writeByHand(sheet: Worksheet, start: number): number {
  headingRow(sheet, start, 'Required in a test report but not in the record: fill in by hand', COLUMNS)
  byHand.forEach((item, i) => {
    const row = start + 1 + i
    dress(sheet.getRow(row).getCell(1), { font: fonts.muted, alignment: { vertical: 'bottom' } }).value =
      capital(item)
    sheet.mergeCells(row, 2, row, COLUMNS)
    sheet.getRow(row).height = 18
    underline(sheet, row, COLUMNS)
  })
  return start + byHand.length + 2
}

const curveRows = [
  curveFigures.airFlowCoefficient,
  curveFigures.airLeakageCoefficient,
  curveFigures.airFlowExponent,
  curveFigures.rSquared,
  curveFigures.zeroFlowPressure_Pa,
] as const

/** One direction: zero-flow pressures, the curve, then every reading with its fitted flow and deviation. */
function writeRun(sheet: Worksheet, { places, record }: SummaryInput, run: WorkedRun, start: number): number {
  const { curve, scatter, standard, deviation, direction, index } = run
  const blocks = { curve, scatter, standard }
  headingRow(sheet, start, capital(direction), COLUMNS)
  let row = writeTable(
    sheet,
    start + 1,
    [
      { head: 'zero-flow pressure, Pa', align: 'left' },
      { head: 'mean' },
      { head: 'of positive' },
      { head: 'of negative' },
      { head: 'values' },
    ],
    (
      [
        ['before', run.before, record.runs[index]?.zeroFlowBefore_Pa],
        ['after', run.after, record.runs[index]?.zeroFlowAfter_Pa],
      ] as const
    ).map(([when, block, values]) =>
      block
        ? [
            when,
            live(places, block, 'dp_m0', '0.00'),
            live(places, block, 'dp_plus', '0.00'),
            live(places, block, 'dp_minus', '0.00'),
            values?.length ?? 0,
          ]
        : [when, 'not logged'],
    ),
  )
  row = writeTable(
    sheet,
    row + 1,
    [
      { head: 'leakage curve', align: 'left' },
      { head: 'value' },
      { head: 'fit scatter only,\n95 % from' },
      { head: 'fit scatter only,\n95 % to' },
      { head: 'unit', align: 'left' },
    ],
    curveRows.flatMap((figure) => {
      const block: Block<string> | undefined = blocks[figure.block]
      if (!block?.has(figure.symbol)) return []
      const ends = 'ends' in figure ? figure.ends : undefined
      const from: Block<string> | undefined = ends && blocks[ends.block]
      const end = (which: 'lo' | 'hi'): Shown | undefined =>
        ends && from?.has(ends[which]) ? live(places, from, ends[which], numberFormat(figure)) : undefined
      return [
        [
          capital(nameWithSymbol(figure)),
          live(places, block, figure.symbol, numberFormat(figure)),
          end('lo'),
          end('hi'),
          unitText(figure.unit),
        ],
      ]
    }),
  )
  row = writeTable(
    sheet,
    row + 1,
    [
      { head: 'reading', align: 'left' },
      { head: 'pressure\nmeasured, Pa' },
      { head: 'induced\npressure, Pa' },
      { head: 'flow through\nenvelope, m³/h' },
      { head: 'flow on the\ncurve, m³/h' },
      { head: 'deviation' },
    ],
    curve
      .column('dp')
      .map((_, i) => [
        i + 1,
        logged(
          places,
          `runs[${index}].readings[${i}].pressure_Pa`,
          record.runs[index]?.readings[i]?.pressure_Pa,
        ),
        live(places, curve, 'dp', '0.0', i),
        live(places, curve, 'q_env', '0.0', i),
        live(places, curve, 'q_fit', '0.0', i),
        live(places, deviation, 'd_fit', '+0.0 %;-0.0 %;0.0 %', i),
      ]),
  )
  return row + 1
}

function writeLeaks(sheet: Worksheet, { leaks }: TestRecord, start: number): number {
  if (!leaks || leaks.list.length === 0) return start
  headingRow(sheet, start, 'Leaks found', COLUMNS)
  return (
    writeTable(
      sheet,
      start + 1,
      [
        { head: 'place', align: 'left' },
        { head: 'kind', align: 'left' },
        { head: 'found by', align: 'left' },
        { head: 'sealed', align: 'left' },
      ],
      leaks.list.map(({ place, kind, foundBy, fixed }) => [place, kind, foundBy, fixed ? 'yes' : 'no']),
    ) + 1
  )
}

/** Every finding with its clause and what to do: the summary shows the first of them only. */
function writeFindings(sheet: Worksheet, { evaluation }: SummaryInput, start: number): number {
  headingRow(sheet, start, 'Findings', COLUMNS)
  let row = start + 1
  if (evaluation.findings.length === 0) row = writeLine(sheet, row, 'No problems found.', WIDE)
  for (const finding of evaluation.findings) {
    const { severity, message, remedy } = finding
    const source = cited(finding) && ` [${cited(finding)}]`
    row = writeLine(
      sheet,
      row,
      `${capital(severity)}: ${message}${source}${remedy ? ` ${remedy}` : ''}`,
      WIDE,
    )
  }
  return row + 1
}

function writeSignatures(sheet: Worksheet, row: number): number {
  sheet.getRow(row + 1).height = 24
  for (const [from, to, label] of [
    [1, 1, 'Tester'],
    [2, 4, 'Signature'],
    [5, 7, 'Date'],
  ] as const) {
    for (let column = from; column <= to; column += 1)
      sheet.getRow(row + 1).getCell(column).border = {
        bottom: { style: 'thin', color: { argb: 'FF52606D' } },
      }
    dress(sheet.getRow(row + 2).getCell(from), { font: fonts.small }).value = label
  }
  return row + 2
}
