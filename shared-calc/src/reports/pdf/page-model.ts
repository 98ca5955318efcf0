import type { Cell, Worksheet } from 'exceljs'
import { format } from 'numfmt'
import { POINTS_PER_CHARACTER } from '../workbook/page-breaks.js'
import { fonts } from '../workbook/styles.js'
import { VERDICT_COLOURS } from '../workbook/summary-verdict.js'

const USUAL_HEIGHT = 13.5

/** What a row of a page is, for whoever hears it read aloud. */
export type RowRole = 'title' | 'heading' | 'table head' | 'table row' | 'text' | 'empty'

/** A cell as it is seen; columns count from 0. */
export interface PageCell {
  readonly text: string
  readonly column: number
  /** Columns that it covers. */
  readonly span: number
  /** Columns that its text may take, where those beside it are empty. */
  readonly reach: number
  readonly bold: boolean
  readonly size: number
  /** RRGGBB. */
  readonly colour: string
  readonly fill: string | undefined
  readonly align: 'left' | 'right' | 'center'
  readonly vertical: 'top' | 'middle' | 'bottom'
  readonly indent: number
  readonly wrap: boolean
  readonly underline: boolean
}

export interface PageRow {
  /** Counted from 1, as on the sheet. */
  readonly number: number
  readonly role: RowRole
  readonly height_pt: number
  readonly cells: readonly PageCell[]
  readonly breakAfter: boolean
}

/** A sheet as pages show it: what is where, and how it looks. Workbook and PDF are drawn from the same cells. */
export interface PageModel {
  readonly title: string
  readonly onePage: boolean
  readonly columns_pt: readonly number[]
  readonly rows: readonly PageRow[]
}

export function pageModel(sheet: Worksheet): PageModel {
  const [, lastColumn = 'A', lastRow = '1'] =
    /:\$?([A-Z]+)\$?(\d+)/.exec(sheet.pageSetup.printArea ?? '') ?? []
  const columns = sheet.getColumn(lastColumn).number
  const breaks = new Set(rowBreaks(sheet))
  const rows = Array.from({ length: Number(lastRow) }, (_, i) =>
    pageRow(sheet, i + 1, columns, breaks.has(i + 1)),
  )
  return {
    title: sheet.name,
    onePage: sheet.pageSetup.fitToHeight === 1,
    columns_pt: Array.from(
      { length: columns },
      (_, i) => (sheet.getColumn(i + 1).width ?? 9.14) * POINTS_PER_CHARACTER,
    ),
    rows,
  }
}

/** exceljs keeps them without a type. */
const rowBreaks = (sheet: Worksheet): number[] =>
  ((sheet as unknown as { rowBreaks?: { id: number }[] }).rowBreaks ?? []).map(({ id }) => id)

function pageRow(sheet: Worksheet, number: number, columns: number, breakAfter: boolean): PageRow {
  const row = sheet.getRow(number)
  const found = Array.from({ length: columns }, (_, i) => row.getCell(i + 1)).filter(
    (cell) => !cell.isMerged || cell.master === cell,
  )
  const texts = found.map(shownText)
  const cells = found.map((cell, i) => {
    const next = texts.findIndex((text, k) => k > i && text !== '')
    const end = next < 0 ? columns : columnOf(found[next])
    const span = spanOf(cell, columns)
    return pageCell(cell, texts[i] ?? '', span, Math.max(span, end - columnOf(cell)))
  })
  return { number, role: roleOf(found, texts), height_pt: row.height ?? USUAL_HEIGHT, cells, breakAfter }
}

const columnOf = (cell: Cell | undefined): number => Number(cell?.col ?? 1) - 1

/** Merged cells of our sheets lie in one row. */
function spanOf(cell: Cell, columns: number): number {
  if (!cell.isMerged) return 1
  let span = 1
  while (
    columnOf(cell) + span < columns &&
    cell.worksheet.getCell(Number(cell.row), Number(cell.col) + span).master === cell
  )
    span += 1
  return span
}

function pageCell(cell: Cell, text: string, span: number, reach: number): PageCell {
  const { font = {}, alignment = {}, fill, border } = cell
  const verdict = VERDICT_COLOURS.find(([word]) => font.size === VERDICT_SIZE && text.startsWith(word))?.[1]
  const solid = fill?.type === 'pattern' && fill.pattern === 'solid' ? fill.fgColor?.argb : undefined
  const number = typeof shownValue(cell) === 'number'
  const { horizontal = number ? 'right' : 'left', vertical = 'bottom' } = alignment
  return {
    text,
    column: columnOf(cell),
    span,
    reach,
    bold: font.bold === true,
    size: font.size ?? 10,
    colour: (font.color?.argb ?? 'FF000000').slice(2),
    fill: (verdict ?? solid)?.slice(2),
    align: horizontal === 'right' || horizontal === 'center' ? horizontal : 'left',
    vertical: vertical === 'top' || vertical === 'middle' ? vertical : 'bottom',
    indent: alignment.indent ?? 0,
    wrap: alignment.wrapText === true,
    underline: border?.bottom !== undefined,
  }
}

/** Size of the word in the verdict's box. */
const VERDICT_SIZE = 20

function roleOf(cells: readonly Cell[], texts: readonly string[]): RowRole {
  const filled = cells.filter((_, i) => texts[i] !== '')
  const [first] = filled
  if (!first) return 'empty'
  if (sameFont(first, fonts.title)) return 'title'
  if (sameFont(first, fonts.heading)) return 'heading'
  if (
    filled.length > 1 &&
    filled.every(({ fill, font }) => fill?.type === 'pattern' && font?.bold && font.size === 9)
  )
    return 'table head'
  if (filled.length === 1 || (first.font?.size ?? 0) >= (fonts.verdict.size ?? 14)) return 'text'
  return 'table row'
}

const sameFont = ({ font }: Cell, { size, bold, color }: (typeof fonts)['title']): boolean =>
  font?.size === size && font?.bold === bold && font?.color?.argb === color?.argb

type Value = string | number | boolean | undefined

function shownValue(cell: Cell): Value {
  // The value of a formula cell lacks a result of 0.
  const plain: unknown = cell.formula === undefined ? cell.value : cell.result
  return typeof plain === 'string' || typeof plain === 'number' || typeof plain === 'boolean'
    ? plain
    : undefined
}

/** What a spreadsheet shows in the cell, with the decimal point of English. */
function shownText(cell: Cell): string {
  const value = shownValue(cell)
  if (typeof value === 'number') return format(cell.numFmt || 'General', value, { locale: 'en-GB' })
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  return value ?? ''
}
