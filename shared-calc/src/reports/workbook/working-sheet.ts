import type { Workbook, Worksheet } from 'exceljs'
import {
  type Block,
  type Calculation,
  type Column,
  type Constant,
  type Given,
  type Input,
  type Step,
  sourceText,
  symbolText,
  toSheet,
  toText,
} from '../../engine/index.js'
import { type Address, rangeReference, reference } from './address.js'
import { setUpPage } from './page.js'
import type { Places } from './places.js'
import { dress, fills, fonts, formatFor, headingRow, heightFor, underline } from './styles.js'

export const WORKING = 'Working'
const VALUE = 3
const EXPRESSION = 5
const SOURCE = 9
const COLUMNS = 12
/** Characters that fit the column of names, and four columns in the small font. */
const NAME_LINE = 54
const LINE = 70
/** The last line stands level with the value. */
const severalLines = { wrapText: true, vertical: 'bottom' } as const

/** Every step of the calculation as a live formula, with its name, unit, expression and source. */
export function writeWorkingSheet(workbook: Workbook, calculation: Calculation, places: Places): Worksheet {
  const sheet = workbook.addWorksheet(WORKING, {
    views: [{ showGridLines: false, state: 'frozen', ySplit: 3 }],
  })
  sheet.columns = [9, 46, 13, 13, 12, 12, 12, 12, 12, 12, 12, 12].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Working'
  writeHeads(sheet, 3)
  const constants = writeConstants(sheet, calculation, 5)
  let row = constants.next
  for (const block of calculation.blocks)
    row = new BlockWriter(sheet, block, places, constants.cells).write(row)
  setUpPage(sheet, { landscape: true, title: WORKING, lastRow: row, lastColumn: COLUMNS, repeat: '3:3' })
  return sheet
}

function writeHeads(sheet: Worksheet, row: number): void {
  const heads: [number, string][] = [
    [1, 'symbol'],
    [2, 'quantity'],
    [VALUE, 'value'],
    [4, 'unit'],
    [EXPRESSION, 'formula'],
    [SOURCE, 'source'],
  ]
  for (const [column, text] of heads)
    dress(sheet.getRow(row).getCell(column), {
      font: fonts.bold,
      alignment: { horizontal: column === VALUE ? 'right' : 'left', indent: column === VALUE + 1 ? 1 : 0 },
    }).value = text
  underline(sheet, row, COLUMNS)
}

function writeConstants(
  sheet: Worksheet,
  calculation: Calculation,
  start: number,
): { cells: Map<string, Address>; next: number } {
  const used = new Map<string, Constant>()
  for (const { chapter } of calculation.blocks)
    for (const constant of chapter.constants) used.set(constant.symbol, constant)
  headingRow(sheet, start, 'Constants', COLUMNS)
  const cells = new Map<string, Address>()
  let row = start + 1
  for (const constant of used.values()) {
    writeLine(sheet, row, constant, sourceText(constant.source))
    dress(sheet.getRow(row).getCell(VALUE), { numFmt: 'General' }).value = constant.value
    cells.set(constant.symbol, { sheet: WORKING, column: VALUE, row })
    row += 1
  }
  return { cells, next: row + 1 }
}

/** Symbol, name, unit and source of one line. */
function writeLine(
  sheet: Worksheet,
  row: number,
  { symbol, name, unit }: Input,
  source: string,
  expression = '',
): void {
  dress(sheet.getRow(row).getCell(1), { font: fonts.bold }).value = symbolText(symbol)
  dress(sheet.getRow(row).getCell(2), name.length > NAME_LINE ? { alignment: severalLines } : {}).value = name
  dress(sheet.getRow(row).getCell(4), {
    font: fonts.muted,
    alignment: { horizontal: 'left', indent: 1 },
  }).value = unit === '1' ? '' : unit
  if (expression) across(sheet, row, EXPRESSION, expression)
  if (source) across(sheet, row, SOURCE, source)
  const lines = Math.max(
    heightFor(name, NAME_LINE),
    ...[expression, source].map((text) => heightFor(text, LINE)),
  )
  if (lines > heightFor('', 1)) sheet.getRow(row).height = lines
}

/** A text in four columns; on more than one line where it does not fit them. */
function across(sheet: Worksheet, row: number, column: number, text: string): void {
  const long = text.length > LINE
  if (long) sheet.mergeCells(row, column, row, column + 3)
  dress(sheet.getRow(row).getCell(column), {
    font: fonts.muted,
    ...(long && { alignment: severalLines }),
  }).value = text
}

/** Writes one block: first it gives every symbol a cell, then it writes cells that refer to each other. */
class BlockWriter {
  private readonly cells = new Map<string, Address>()
  private readonly tableColumns: (Input | Step)[] = []
  private readonly lines: (Input | Step)[] = []

  constructor(
    private readonly sheet: Worksheet,
    private readonly block: Block<string>,
    private readonly places: Places,
    constants: ReadonlyMap<string, Address>,
  ) {
    for (const { symbol } of block.chapter.constants) {
      const cell = constants.get(symbol)
      if (cell) this.cells.set(symbol, cell)
    }
    const showsRows = block.chapter.steps.some(({ rows }) => rows)
    for (const input of block.chapter.inputs) this.sortInput(input, showsRows)
    for (const step of block.chapter.steps) (step.rows ? this.tableColumns : this.lines).push(step)
  }

  /** Values that already have a cell elsewhere are referred to there; the others get a line or a column of their own. */
  private sortInput(input: Input, showsRows: boolean): void {
    const given = this.block.input(input.symbol)
    if (given === undefined) return
    if ('values' in given) {
      const elsewhere = this.places.run(given)
      const logged = given.values.length > 0 && given.origin(0).kind === 'record'
      if (elsewhere && !(logged && showsRows)) this.place(input.symbol, elsewhere)
      else this.tableColumns.push(input)
    } else if (given.origin.kind === 'block') {
      const cell = this.places.origin(given.origin)
      if (cell) this.place(input.symbol, cell)
    } else this.lines.push(input)
  }

  /** Returns the row after the block. */
  write(start: number): number {
    headingRow(this.sheet, start, this.block.title, COLUMNS)
    const table =
      start + 1 + this.lines.length + (this.tableColumns.length > 0 ? this.tableColumns.length + 1 : 0)
    this.lines.forEach(({ symbol }, i) => {
      this.place(symbol, { sheet: WORKING, column: VALUE, row: start + 1 + i })
    })
    this.tableColumns.forEach(({ symbol }, i) => {
      this.place(symbol, { sheet: WORKING, column: VALUE + i, row: table })
    })
    this.lines.forEach((line, i) => {
      this.writeScalar(start + 1 + i, line)
    })
    if (this.tableColumns.length === 0) return start + 2 + this.lines.length
    this.writeTable(start + 1 + this.lines.length, table)
    return table + this.block.rows + 1
  }

  private place(symbol: string, address: Address): void {
    this.cells.set(symbol, address)
    this.places.placeSymbol(this.block.id, symbol, address)
  }

  private writeScalar(row: number, line: Input | Step): void {
    const cell = this.sheet.getRow(row).getCell(VALUE)
    if (isStep(line)) {
      const value = this.block.value(line.symbol)
      writeLine(this.sheet, row, line, sourceText(line.source), toText(line.tree))
      dress(cell, { numFmt: formatFor(value) }).value = { formula: this.formula(line, 0), result: value }
      return
    }
    const given = this.block.input(line.symbol) as Given
    writeLine(this.sheet, row, line, originText(given))
    this.writeGiven(row, VALUE, given)
  }

  /** A value that was given: a link to where it was logged, or the number that a rule or an assumption sets. */
  private writeGiven(row: number, column: number, given: Given): void {
    const from = this.places.origin(given.origin)
    const cell = this.sheet.getRow(row).getCell(column)
    if (from)
      dress(cell, { numFmt: formatFor(given.value) }).value = {
        formula: reference(from, WORKING),
        result: given.value,
      }
    else dress(cell, { numFmt: givenFormat(given.value), fill: fills.plain }).value = given.value
  }

  /** Legend of the columns, then the table itself. */
  private writeTable(legend: number, table: number): void {
    this.tableColumns.forEach((column, i) => {
      const row = legend + i
      if (isStep(column)) writeLine(this.sheet, row, column, sourceText(column.source), toText(column.tree))
      else writeLine(this.sheet, row, column, 'as logged, or from the lines above')
      dress(this.sheet.getRow(row).getCell(VALUE), {
        font: fonts.muted,
        alignment: { horizontal: 'right' },
      }).value = 'table'
      dress(this.sheet.getRow(table - 1).getCell(VALUE + i), {
        font: fonts.bold,
        alignment: { horizontal: 'right' },
      }).value = symbolText(column.symbol)
    })
    dress(this.sheet.getRow(table - 1).getCell(2), { font: fonts.bold }).value = 'row'
    underline(this.sheet, table - 1, VALUE + this.tableColumns.length - 1)
    for (let i = 0; i < this.block.rows; i += 1) {
      dress(this.sheet.getRow(table + i).getCell(2), { font: fonts.muted }).value = i + 1
      this.tableColumns.forEach((column, k) => {
        this.writeTableCell(table + i, VALUE + k, column, i)
      })
    }
  }

  private writeTableCell(row: number, column: number, quantity: Input | Step, i: number): void {
    if (isStep(quantity)) {
      const value = this.block.column(quantity.symbol)[i] as number
      dress(this.sheet.getRow(row).getCell(column), { numFmt: formatFor(value) }).value = {
        formula: this.formula(quantity, i),
        result: value,
      }
      return
    }
    const { values, origin } = this.block.input(quantity.symbol) as Column
    this.writeGiven(row, column, { value: values[i] as number, origin: origin(i) })
  }

  private formula(step: Step, row: number): string {
    const at = (symbol: string): Address => {
      const cell = this.cells.get(symbol)
      if (!cell) throw new RangeError(`${symbol} of block ${this.block.id} has no cell`)
      return cell
    }
    const isColumn = (symbol: string) => this.block.chapter.slots.get(symbol)?.rows === true
    return toSheet(step.tree, {
      cell: (symbol) => {
        const first = at(symbol)
        return reference(isColumn(symbol) ? { ...first, row: first.row + row } : first, WORKING)
      },
      range: (symbol) =>
        isColumn(symbol) ? rangeReference(at(symbol), this.block.rows, WORKING) : undefined,
    })
  }
}

/** A number that was chosen is shown as it is; one that was calculated, with the digits it needs. */
const givenFormat = (value: number): string =>
  String(Math.abs(value)).length > MOST_CHARACTERS ? formatFor(value) : 'General'
const MOST_CHARACTERS = 8

const isStep = (line: Input | Step): line is Step => 'tree' in line

function originText({ origin }: Given): string {
  if (origin.kind === 'record') return 'as logged'
  if (origin.kind === 'assumed') return `assumed; see finding ${origin.reason}`
  return origin.kind === 'rule' ? origin.reason : ''
}
