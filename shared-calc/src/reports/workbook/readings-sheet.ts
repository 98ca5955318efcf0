import type { CellValue, Workbook, Worksheet } from 'exceljs'
import { capital } from '../../catalogue/words.js'
import { fieldLabel } from '../../contract/record/field-labels.js'
import { pathText, type Run, type TestRecord } from '../../contract/record/index.js'
import { type Address, reference } from './address.js'
import { leavesOf } from './leaves.js'
import { dayFrom } from './live-cell.js'
import { setUpPage } from './page.js'
import type { Places } from './places.js'
import { dress, fills, fonts, headingRow, underline } from './styles.js'

export const READINGS = 'Readings'
const COLUMNS = 7

const sections: readonly { key: keyof TestRecord; title: string }[] = [
  { key: 'test', title: 'Test' },
  { key: 'building', title: 'Building' },
  { key: 'conditions', title: 'Conditions' },
  { key: 'pressureGauge', title: 'Pressure gauge' },
  { key: 'flowDevice', title: 'Flow device' },
  { key: 'target', title: 'Target' },
]

/** Everything that was logged, as it was logged: each field of the record in one cell, placed for the formulas to refer to. */
export function writeReadingsSheet(workbook: Workbook, record: TestRecord, places: Places): Worksheet {
  const sheet = workbook.addWorksheet(READINGS, { views: [{ showGridLines: false }] })
  sheet.columns = [40, 13, 13, 13, 13, 18, 18].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Readings and conditions as logged'
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'The working uses the shaded cells. A change here changes the results, and sheet Check shows what differs from the issued record.'
  let row = 4
  record.runs.forEach((run, index) => {
    row = writeRun(sheet, run, index, row, places)
  })
  const known = new Set<string>(sections.map(({ key }) => key))
  const further = Object.keys(record).filter((key) => !known.has(key) && key !== 'format' && key !== 'runs')
  for (const { key, title } of [
    ...sections,
    ...further.map((key) => ({ key: key as keyof TestRecord, title: capital(fieldLabel([key]).label) })),
  ])
    if (record[key] !== undefined) row = writeSection(sheet, record[key], key, title, row, places)
  setUpPage(sheet, { landscape: false, title: 'Readings', lastRow: row, lastColumn: COLUMNS })
  return sheet
}

/** Writes every field of one part of a record or request, each in a cell of its own. Returns the row after it. */
export function writeSection(
  sheet: Worksheet,
  part: unknown,
  key: string,
  title: string,
  start: number,
  places: Places,
): number {
  headingRow(sheet, start, title, COLUMNS)
  let row = start + 1
  for (const { keys, value } of leavesOf(part, [key])) {
    const { label, unit } = fieldLabel(keys)
    const numbers = keys.filter((k): k is number => typeof k === 'number').map((k) => k + 1)
    dress(sheet.getRow(row).getCell(1), { alignment: { vertical: 'top' } }).value =
      numbers.length > 0 ? `${label} (${numbers.join('.')})` : label
    writeValue(sheet, row, 2, value, pathText(keys), places)
    dress(sheet.getRow(row).getCell(3), {
      font: fonts.muted,
      alignment: { horizontal: 'left', indent: 1, vertical: 'top' },
    }).value = besideValue(value, unit, { sheet: sheet.name, column: 2, row })
    underline(sheet, row, COLUMNS)
    row += 1
  }
  return row + 1
}

/** The unit of a number; of a day and of a truth value, what it says in words: the cell itself holds it as the record does. */
function besideValue(value: string | number | boolean, unit: string, cell: Address): CellValue {
  if (typeof value === 'boolean')
    return { formula: `IF(${reference(cell, cell.sheet)},"yes","no")`, result: value ? 'yes' : 'no' }
  if (typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value)) return dayFrom(cell, value)
  return unit
}

function writeRun(sheet: Worksheet, run: Run, index: number, start: number, places: Places): number {
  const path = `runs[${index}]`
  headingRow(sheet, start, `Run ${index + 1}: ${run.direction}`, COLUMNS)
  dress(sheet.getRow(start + 1).getCell(1), { alignment: { vertical: 'top' } }).value = 'direction'
  writeValue(sheet, start + 1, 2, run.direction, `${path}.direction`, places)
  let row = start + 2
  if (run.averagingTime_s !== undefined) {
    dress(sheet.getRow(row).getCell(1), { alignment: { vertical: 'top' } }).value = 'averaging time'
    writeValue(sheet, row, 2, run.averagingTime_s, `${path}.averagingTime_s`, places)
    dress(sheet.getRow(row).getCell(3), {
      font: fonts.muted,
      alignment: { horizontal: 'left', indent: 1, vertical: 'top' },
    }).value = 's'
    row += 1
  }
  const heads = [
    'reading',
    'pressure, Pa',
    'flow, m³/h',
    'device, Pa',
    'range',
    'zero-flow before, Pa',
    'zero-flow after, Pa',
  ]
  heads.forEach((head, i) => {
    dress(sheet.getRow(row).getCell(i + 1), {
      font: fonts.bold,
      alignment: { horizontal: i === 0 ? 'left' : 'right' },
    }).value = head
  })
  underline(sheet, row, COLUMNS)
  const first = row + 1
  const fields = ['pressure_Pa', 'flow_m3_h', 'devicePressure_Pa', 'range'] as const
  run.readings.forEach((reading, i) => {
    dress(sheet.getRow(first + i).getCell(1), { alignment: { vertical: 'top' } }).value = `${i + 1}`
    fields.forEach((field, k) => {
      const value = reading[field]
      if (value !== undefined)
        writeValue(sheet, first + i, k + 2, value, `${path}.readings[${i}].${field}`, places)
    })
  })
  const zeros = [run.zeroFlowBefore_Pa ?? [], run.zeroFlowAfter_Pa ?? []]
  zeros.forEach((values, k) => {
    const field = k === 0 ? 'zeroFlowBefore_Pa' : 'zeroFlowAfter_Pa'
    values.forEach((value, i) => {
      writeValue(sheet, first + i, 6 + k, value, `${path}.${field}[${i}]`, places)
    })
  })
  const next = first + Math.max(run.readings.length, ...zeros.map((values) => values.length)) + 1
  const further = [
    { fields: ['devices'], title: 'devices running together' },
    {
      fields: ['pressureUncertainty_Pa', 'flowUncertainty_m3_h', 'devicePressureUncertainty_Pa'],
      title: 'standard uncertainties of the averages',
    },
  ] as const
  return further.reduce((at, { fields: own, title }) => {
    const part = run.readings.map((reading) =>
      Object.fromEntries(
        own.flatMap((field) => (reading[field] === undefined ? [] : [[field, reading[field]]])),
      ),
    )
    if (part.every((held) => Object.keys(held).length === 0)) return at
    return writeSection(sheet, part, `${path}.readings`, `Run ${index + 1}: ${title}`, at, places)
  }, next)
}

/** Writes a field as a number or as text: never as a formula, whatever it begins with. */
function writeValue(
  sheet: Worksheet,
  row: number,
  column: number,
  value: string | number | boolean,
  path: string,
  places: Places,
): void {
  const number = typeof value === 'number'
  const cell = dress(sheet.getRow(row).getCell(column), {
    fill: fills.given,
    alignment: { horizontal: number || column > 2 ? 'right' : 'left', vertical: 'top' },
  })
  cell.value = value
  places.placeField(path, { sheet: sheet.name, column, row })
}
