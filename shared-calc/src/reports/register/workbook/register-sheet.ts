import type { Alignment, Workbook, Worksheet } from 'exceljs'
import { monthInWords } from '../../../catalogue/words.js'
import { columnLetters } from '../../workbook/address.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fills, fonts, heightFor, underline, wrap } from '../../workbook/styles.js'
import type { Register } from '../register.js'
import {
  type CellContent,
  columns,
  DATE_FORMAT,
  dateOf,
  FIRST_ROW,
  printedColumns,
  REGISTER_SHEET,
  type RegisterColumn,
} from './columns.js'
import { cellOf, lastRow, letterOf } from './places.js'
import { colourVerdicts } from './verdict-colours.js'

/** Characters of the body font in the width of one. */
const LINE = 1.1

/** One row per test; margins, verdicts and days are formulas, so that a corrected value carries through. */
export function writeRegisterSheet(
  workbook: Workbook,
  register: Register,
  seenFrom: (file: string) => string,
): Worksheet {
  const sheet = workbook.addWorksheet(REGISTER_SHEET, {
    views: [{ state: 'frozen', xSplit: 3, ySplit: FIRST_ROW - 1, showGridLines: false }],
  })
  sheet.columns = columns.map(({ width }) => ({ width }))
  writeHead(sheet, register)
  columns.forEach(({ head, align }, i) => {
    dress(sheet.getCell(FIRST_ROW - 1, i + 1), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: { ...alignmentOf(align), vertical: 'bottom', wrapText: true },
    }).value = head
  })
  sheet.getRow(FIRST_ROW - 1).height = 28
  register.rows.forEach((test, index) => {
    const row = FIRST_ROW + index
    let height = heightFor('', 1)
    columns.forEach(({ width, numFmt, align, content }, i) => {
      const shown = content(test, (key) => cellOf(key, row), { asOf: register.asOf, seenFrom })
      // Right of what is printed, a long text must not make the row higher.
      const wrapped = typeof shown === 'string' && i < printedColumns
      const cell = dress(sheet.getCell(row, i + 1), {
        ...(test.counts ? {} : { font: fonts.muted }),
        ...(numFmt && { numFmt: typeof numFmt === 'string' ? numFmt : numFmt(test) }),
        alignment: { ...alignmentOf(align), ...(wrapped ? wrap : { vertical: 'top' }) },
      })
      put(cell, shown)
      if (wrapped) height = Math.max(height, heightFor(shown, width * LINE))
    })
    sheet.getRow(row).height = height
    underline(sheet, row, columns.length)
  })
  const last = lastRow(register.rows.length)
  sheet.autoFilter = `A${FIRST_ROW - 1}:${columnLetters(columns.length)}${last}`
  colourVerdicts(sheet, `${letterOf('verdict')}${FIRST_ROW}:${letterOf('verdict')}${last}`)
  colourDays(sheet, last)
  setUpPage(sheet, {
    landscape: true,
    title: titleOf(register),
    lastRow: last,
    lastColumn: printedColumns,
    repeat: `${FIRST_ROW - 1}:${FIRST_ROW - 1}`,
  })
  return sheet
}

/** Texts keep clear of the number before them. */
const alignmentOf = (align: RegisterColumn['align'] = 'left'): Partial<Alignment> =>
  align === 'left' ? { horizontal: align, indent: 1 } : { horizontal: align }

export const titleOf = ({ month, client }: Register): string =>
  ['Register of airtightness tests', month && monthInWords(month), client]
    .filter((part) => part !== undefined)
    .join(', ')

export function put(cell: ReturnType<typeof dress>, content: CellContent): void {
  if (content === null) return
  cell.value = content
  if (typeof content === 'object' && 'hyperlink' in content)
    cell.font = { ...fonts.body, underline: true, color: { argb: 'FF1F4E5F' } }
}

/** Formulas of the line "shown", by their cell, over the rows from the first to this one. */
export function shownFormulas(last: number): Readonly<Record<'rows' | 'mean' | 'worst', ShownFormula>> {
  const range = (key: string) => `${letterOf(key)}${FIRST_ROW}:${letterOf(key)}${last}`
  const after = (key: string) =>
    `${columnLetters(columns.findIndex((column) => column.key === key) + 2)}${SHOWN_ROW}`
  return {
    rows: { cell: `C${SHOWN_ROW}`, formula: `SUBTOTAL(103,${range('plot')})` },
    mean: { cell: after('stage'), formula: `IFERROR(SUBTOTAL(101,${range('n50')}),"")` },
    worst: {
      cell: after('tester'),
      formula: `IF(SUBTOTAL(102,${range('n50')})=0,"",SUBTOTAL(104,${range('n50')}))`,
    },
  }
}

interface ShownFormula {
  readonly cell: string
  readonly formula: string
}

const SHOWN_ROW = 4

function writeHead(sheet: Worksheet, register: Register): void {
  dress(sheet.getCell('A1'), { font: fonts.title }).value = titleOf(register)
  sheet.getRow(1).height = 26
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'Figures as issued; those of altered summaries are left out. If you correct a value or limit, or sort the rows, verdicts, totals and lists update. The line "shown" follows the filters.'
  dress(sheet.getCell('A3'), { font: fonts.muted }).value = 'as at'
  dress(sheet.getCell('C3'), {
    fill: fills.given,
    numFmt: DATE_FORMAT,
    alignment: { horizontal: 'left', indent: 1 },
  }).value = dateOf(register.asOf)
  dress(sheet.getCell('A4'), { font: fonts.bold }).value = 'shown'
  const last = lastRow(register.rows.length)
  const formulas = shownFormulas(last)
  dress(sheet.getCell(formulas.rows.cell), {
    font: fonts.bold,
    numFmt: '0" rows"',
    alignment: { horizontal: 'left', indent: 1 },
  }).value = {
    formula: formulas.rows.formula,
    result: register.rows.length,
  }
  const values = register.rows.flatMap(({ results, role }) =>
    results.n50 === undefined || role === 'altered' ? [] : [results.n50],
  )
  const some = values.length > 0
  const shown = [
    { key: 'stage', label: 'mean n50', ...formulas.mean, result: some ? meanOf(values) : '' },
    {
      key: 'tester',
      label: 'worst n50',
      ...formulas.worst,
      result: some ? values.reduce((a, b) => Math.max(a, b)) : '',
    },
  ]
  for (const { key, label, cell, formula, result } of shown) {
    dress(sheet.getCell(`${letterOf(key)}${SHOWN_ROW}`), {
      font: fonts.bold,
      alignment: { horizontal: 'right' },
    }).value = label
    dress(sheet.getCell(cell), {
      font: fonts.bold,
      numFmt: '0.00',
      alignment: { horizontal: 'left', indent: 1 },
    }).value = { formula, result }
  }
}

const meanOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length

/** Calibrations that run out within 60 days in amber, those run out in red. */
function colourDays(sheet: Worksheet, last: number): void {
  const letter = letterOf('days')
  const fill = (argb: string) => ({
    type: 'pattern' as const,
    pattern: 'solid' as const,
    bgColor: { argb },
    fgColor: { argb },
  })
  sheet.addConditionalFormatting({
    ref: `${letter}${FIRST_ROW}:${letter}${last}`,
    rules: [
      {
        type: 'expression',
        formulae: [`AND(ISNUMBER(${letter}${FIRST_ROW}),${letter}${FIRST_ROW}<0)`],
        priority: 11,
        style: { fill: fill('FFF4A6A6'), font: { bold: true } },
      },
      {
        type: 'expression',
        formulae: [`AND(ISNUMBER(${letter}${FIRST_ROW}),${letter}${FIRST_ROW}<=60)`],
        priority: 12,
        style: { fill: fill('FFFCE8B2') },
      },
    ],
  })
}
