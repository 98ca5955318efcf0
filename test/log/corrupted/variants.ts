import type ExcelJS from 'exceljs'

/** A fault put into the English form, and the one finding or problem it must give. Cells are those of sheet Air test. */
export interface Variant {
  name: string
  change(sheet: ExcelJS.Worksheet, workbook: ExcelJS.Workbook): void
  /** Told of, and the test is still read. */
  finding?: { rule: string; severity: 'caution' | 'note'; cells: string[] }
  /** Refused. */
  problem?: { code: string; cell?: string }
}

const at = (...cells: string[]) => cells.map((cell) => `'Air test'!${cell}`)
const caution = (rule: string, ...cells: string[]) => ({
  finding: { rule, severity: 'caution' as const, cells: at(...cells) },
})
const note = (rule: string, ...cells: string[]) => ({
  finding: { rule, severity: 'note' as const, cells: at(...cells) },
})
const refused = (code: string, cell?: string) => ({
  problem: cell ? { code, cell: `'Air test'!${cell}` } : { code },
})

const put = (address: string, value: ExcelJS.CellValue) => (sheet: ExcelJS.Worksheet) => {
  sheet.getCell(address).value = value
}
const strike = (address: string) => (sheet: ExcelJS.Worksheet) => {
  sheet.getCell(address).font = { strike: true }
}
const format = (address: string, numFmt: string) => (sheet: ExcelJS.Worksheet) => {
  sheet.getCell(address).numFmt = numFmt
}

/** Numbers in the wrong dress. */
const numbers: Variant[] = [
  { name: 'a number as text', change: put('B10', '512.4'), ...note('log-text-number', 'B10') },
  { name: 'a decimal comma', change: put('B10', '512,4'), ...note('log-text-number', 'B10') },
  {
    name: 'a minus sign from typography',
    change: put('A10', '\u221271.2'),
    ...note('log-text-number', 'A10'),
  },
  {
    name: 'thousands parted by a hard blank',
    change: put('B10', '1\u00a0512,4'),
    ...note('log-text-number', 'B10'),
  },
  {
    name: 'thousands parted by an apostrophe',
    change: put('B10', '1’512.4'),
    ...note('log-text-number', 'B10'),
  },
  {
    name: 'a comma that may part thousands',
    change: put('B10', '1,234'),
    ...refused('ambiguous-number', 'B10'),
  },
  {
    name: 'a point that may part thousands',
    change: put('B4', '1.234'),
    ...refused('ambiguous-number', 'B4'),
  },
  { name: 'two numbers in a cell', change: put('A11', '-61.0 / -60.2'), ...refused('unknown-unit', 'A11') },
  {
    name: 'a range instead of a number',
    change: put('A11', '-60 to -62'),
    ...refused('unknown-unit', 'A11'),
  },
  {
    name: 'an unknown unit with a figure in it',
    change: put('B12', '409.7m3x'),
    ...refused('unknown-unit', 'B12'),
  },
  { name: 'a letter in a number', change: put('B12', '4O9.7'), ...refused('not-a-number', 'B12') },
  { name: 'an approximate number', change: put('B12', '~410'), ...caution('log-remark', 'B12') },
  {
    name: 'a number formatted as a date',
    change: format('B12', 'dd.mm.yyyy'),
    ...refused('not-a-number', 'B12'),
  },
]

const units: Variant[] = [
  { name: 'a unit in the cell', change: put('B10', '512.4 m³/h'), ...note('log-text-number', 'B10') },
  { name: 'another unit in the cell', change: put('B10', '301.6 cfm'), ...note('log-unit-in-cell', 'B10') },
  {
    name: 'another unit in the number format',
    change: format('B10', '0.0" cfm"'),
    ...caution('log-unit-in-format', 'B10'),
  },
  { name: 'a unit of the wrong kind', change: put('B10', '512.4 Pa'), ...refused('unknown-unit', 'B10') },
  { name: 'a unit nobody knows', change: put('B10', '512.4 furlongs'), ...refused('unknown-unit', 'B10') },
  { name: 'per cent where none can be', change: format('B10', '0%'), ...refused('unknown-unit', 'B10') },
  {
    name: 'a heading that changed its unit against the unit beside',
    change: (sheet) => {
      put('A4', 'Volume (ft3)')(sheet)
    },
    ...refused('unknown-unit', 'B4'),
  },
  { name: 'a unit beside that was changed', change: put('C4', 'ft³'), ...note('log-unit', 'B4') },
  { name: 'a unit beside that was cleared', change: put('C4', null), ...refused('unknown-unit', 'B4') },
  {
    name: 'a remark after the number',
    change: put('A12', '-50.4 Pa (gust)'),
    ...caution('log-remark', 'A12'),
  },
]

const dates: Variant[] = [
  { name: 'a date as text', change: put('E2', '11 March 2026'), ...note('log-text-date', 'E2') },
  {
    name: 'a date that may be read two ways',
    change: put('E2', '03/04/2026'),
    ...refused('ambiguous-date', 'E2'),
  },
  { name: 'a year of two figures', change: put('E2', '11.03.26'), ...caution('log-short-year', 'E2') },
  {
    name: 'a day as a bare number',
    change: (sheet) => {
      put('E2', 46_092)(sheet)
      format('E2', '0')(sheet)
    },
    ...caution('log-serial-date', 'E2'),
  },
  { name: 'a day that does not exist', change: put('E2', '31.02.2026'), ...refused('not-a-date', 'E2') },
  { name: 'no date', change: put('E2', null), ...refused('record-invalid', 'E2') },
]

const marks: Variant[] = [
  { name: 'a flow crossed out', change: strike('B12'), ...caution('log-struck-through', 'B12') },
  { name: 'a zero-flow value crossed out', change: strike('A19'), ...caution('log-struck-through', 'A19') },
  { name: 'a volume crossed out', change: strike('B4'), ...caution('log-struck-through', 'B4') },
  {
    name: 'a number partly crossed out',
    change: put('B12', { richText: [{ font: { strike: true }, text: '490' }, { text: ' 409.7' }] }),
    ...caution('log-struck-through', 'B12'),
  },
  {
    name: 'a hidden row',
    change: (sheet) => {
      sheet.getRow(12).hidden = true
    },
    ...caution('log-hidden', 'A12:B12', 'D12:E12'),
  },
  {
    name: 'a hidden column',
    change: (sheet) => {
      sheet.getColumn(2).hidden = true
    },
    ...caution('log-hidden', 'B2:B6', 'B10:B15', 'B18:B20'),
  },
  {
    name: 'a hidden sheet',
    change: (sheet) => {
      sheet.state = 'hidden'
    },
    ...caution('log-hidden', 'B2:B6', 'E2:E6', 'A10:B15', 'D10:E15', 'A18:B20', 'D18:E20'),
  },
]

const formulas: Variant[] = [
  {
    name: 'a formula with its result',
    change: put('B12', { formula: 'B11-54.2', result: 409.7 }),
    ...note('log-formula', 'B12'),
  },
  {
    name: 'a formula without a result',
    change: put('B12', { formula: 'B11-54.2' }),
    ...refused('formula-without-result', 'B12'),
  },
  {
    name: 'an error value among the readings',
    change: put('B12', { error: '#DIV/0!' }),
    ...caution('log-error-value', 'B12'),
  },
  {
    name: 'an error value for the volume',
    change: put('B4', { error: '#REF!' }),
    ...refused('error-value', 'B4'),
  },
  {
    name: 'a formula whose result is an error',
    change: put('B5', { formula: '1/0', result: { error: '#DIV/0!' } }),
    ...refused('error-value', 'B5'),
  },
  { name: 'a yes where a number belongs', change: put('B5', true), ...refused('not-a-number', 'B5') },
]

const shape: Variant[] = [
  { name: 'a pressure without its flow', change: put('B12', null), ...caution('log-incomplete', 'B12') },
  { name: 'a flow without its pressure', change: put('A12', null), ...caution('log-incomplete', 'A12') },
  { name: 'a dash for a flow', change: put('B12', '–'), ...caution('log-placeholder', 'B12') },
  {
    name: 'a blank row within the readings',
    change: (sheet) => {
      for (const cell of ['A13', 'B13']) put(cell, null)(sheet)
    },
    ...caution('log-gap', 'A14'),
  },
  {
    name: 'a row of means below the readings',
    change: (sheet) => {
      put('A15', 'Mean')(sheet)
      put('B15', 376.8)(sheet)
    },
    ...note('log-summary-row', 'A15'),
  },
  { name: 'a label renamed', change: put('A4', 'Contents'), ...refused('not-found') },
  { name: 'a label that stands there twice', change: put('A21', 'Building'), ...refused('ambiguous', 'A2') },
  { name: 'a heading gone', change: put('D9', null), ...refused('not-found') },
  { name: 'a value gone', change: put('E3', null), ...note('log-blank', 'E3') },
  { name: 'a pressure of the wrong sign', change: put('A12', 50.4), ...refused('ambiguous', 'A12') },
  { name: 'a pressure no building stands', change: put('A12', -5040), ...refused('record-invalid', 'A12') },
  { name: 'a name of blanks only', change: put('B2', ' '), ...refused('record-invalid', 'B2') },
]

export const variants: readonly Variant[] = [...numbers, ...units, ...dates, ...marks, ...formulas, ...shape]
