import { type CellContent, escaped, splice } from './change-cell.js'
import type { SpreadsheetCell, SpreadsheetRow, SpreadsheetTable } from './spreadsheet-cells.js'

/** What an element says about a cell's value. */
const OF_VALUE = [
  'office:value-type',
  'office:value',
  'office:date-value',
  'office:time-value',
  'office:boolean-value',
  'office:string-value',
  'office:currency',
  'calcext:value-type',
]
const COLUMNS = 'table:number-columns-repeated'
const ROWS = 'table:number-rows-repeated'
const SPAN = /table:number-(?:rows|matrix-rows)-spanned="(?!1")/

/** Why a cell cannot be given another value here; undefined where it can. */
export function spreadsheetRefusal(
  { rows }: SpreadsheetTable,
  xml: string,
  row: number,
  column: number,
): string | undefined {
  const own = rows.find((one) => holdsRow(one, row))
  if (!own)
    return rows.at(-1)?.plain ? undefined : 'it is below a group of rows; change it in the spreadsheet'
  if (own.cells.find((one) => holdsColumn(one, column))?.covered)
    return 'it is inside a merged block; change the first cell of the block'
  for (const one of rows)
    for (const { attributes, column: left } of one.cells) {
      const [down, across] = ['rows', 'columns'].map((of) =>
        Number(attributes[`table:number-matrix-${of}-spanned`] ?? 0),
      )
      if (
        down &&
        across &&
        row < one.row + down &&
        row >= one.row &&
        column < left + across &&
        column >= left
      )
        return 'its formula fills several cells at once; change it in the spreadsheet'
    }
  // Written once for several rows: the element has to be divided, and what it names or spans cannot be doubled.
  if (own.repeat > 1 && (SPAN.test(textOf(xml, own)) || / (?:xml|draw):id=/.test(textOf(xml, own))))
    return `rows ${own.row} to ${own.row + own.repeat - 1} are stored as one; change it in the spreadsheet`
  return undefined
}

/** The content with one cell of a table changed. Elements that stand for several rows or cells are divided; all others stay. */
export function changeSpreadsheetCell(
  xml: string,
  table: SpreadsheetTable,
  row: number,
  column: number,
  content: CellContent,
): string {
  const own = table.rows.find((one) => holdsRow(one, row))
  if (own) {
    const made = rowXml(xml, own, column, content)
    return splice(xml, own.start, own.end, divided(textOf(xml, own), made, own, ROWS, row - own.row))
  }
  if (content === undefined) return xml
  const last = table.rows.at(-1)
  if (!last) throw new Error(`the sheet ${table.name} has no rows`)
  const gap = row - last.row - last.repeat
  const between =
    gap === 0
      ? ''
      : `<table:table-row${gap === 1 ? '' : ` ${ROWS}="${gap}"`}><table:table-cell/></table:table-row>`
  const made = `<table:table-row>${beside(column, content)}</table:table-row>`
  return splice(xml, last.end, last.end, between + made)
}

/** The row as it is for one of its rows only, with the cell changed. */
function rowXml(xml: string, own: SpreadsheetRow, column: number, content: CellContent): string {
  const whole = textOf(xml, own)
  const cell = own.cells.find((one) => holdsColumn(one, column))
  if (cell) {
    const made = cellXml(xml, cell, content)
    const parts = divided(textOf(xml, cell), made, cell, COLUMNS, column - cell.column)
    return splice(whole, cell.start - own.start, cell.end - own.start, parts)
  }
  if (content === undefined) return whole
  const last = own.cells.at(-1)
  const added = beside(column - (last ? last.column + last.repeat - 1 : 0), content)
  if (last) return splice(whole, last.end - own.start, last.end - own.start, added)
  const tag = whole.slice(0, own.opened - own.start)
  return tag.endsWith('/>')
    ? `${tag.slice(0, -2)}>${added}</table:table-row>`
    : splice(whole, tag.length, tag.length, added)
}

/** Empty cells up to a new one, counted from the last that is there. */
const beside = (column: number, content: CellContent): string =>
  `${column === 1 ? '' : `<table:table-cell${column === 2 ? '' : ` ${COLUMNS}="${column - 1}"`}/>`}<table:table-cell${valueAttributes(content)}>${paragraphsOf(content)}</table:table-cell>`

/** An element that stands for several, divided where one of them is another now. */
function divided(
  whole: string,
  made: string,
  { repeat }: { repeat: number },
  counter: string,
  before: number,
): string {
  const part = (count: number): string => (count < 1 ? '' : withCount(whole, counter, count))
  return part(before) + withCount(made, counter, 1) + part(repeat - before - 1)
}

/** The element with how often it counts, which is in its start tag. */
function withCount(element: string, counter: string, count: number): string {
  const end = element.indexOf('>')
  const tag = element.slice(0, end).replace(new RegExp(`\\s${counter}=(?:"[^"]*"|'[^']*')`), '')
  const name = /^<[^\s/>]+/.exec(tag)?.[0] ?? ''
  const counted = count === 1 ? tag : `${name} ${counter}="${count}"${tag.slice(name.length)}`
  return counted + element.slice(end)
}

/** A cell with a formula, without its result: programs work it out again. */
export const withoutResult = (xml: string, cell: SpreadsheetCell): string =>
  cellXml(xml, cell, undefined, OF_VALUE)

/** The cell keeps its style, its block and its comment. */
function cellXml(
  xml: string,
  cell: SpreadsheetCell,
  content: CellContent,
  replaced = [...OF_VALUE, 'table:formula'],
): string {
  const closed = xml.slice(cell.opened - 2, cell.opened) === '/>'
  const tag = xml.slice(cell.start, cell.opened - (closed ? 2 : 1)).trimEnd()
  const kept = replaced.reduce(
    (text, name) => text.replace(new RegExp(`\\s${name}=(?:"[^"]*"|'[^']*')`), ''),
    tag,
  )
  const inner = closed ? '' : xml.slice(cell.opened, xml.lastIndexOf('</', cell.end - 1))
  const others = cell.paragraphs
    .toReversed()
    .reduce((text, { start, end }) => splice(text, start - cell.opened, end - cell.opened, ''), inner)
  const children = others + paragraphsOf(content)
  return children === ''
    ? `${kept}/>`
    : `${kept}${valueAttributes(content)}>${children}</${/^<([^\s/>]+)/.exec(tag)?.[1]}>`
}

function valueAttributes(content: CellContent): string {
  if (content === undefined) return ''
  return typeof content === 'number'
    ? ` office:value-type="float" office:value="${content}"`
    : ' office:value-type="string"'
}

/** Blanks that XML would join, and tabs, are elements of their own (OpenDocument 1.3 part 3, 6.1.3 and 6.1.4). */
function paragraphsOf(content: CellContent): string {
  if (content === undefined) return ''
  return String(content)
    .split(/\r?\n/)
    .map((line) =>
      escaped(line)
        .replace(/^ +| {2,}/g, (blanks) => `<text:s text:c="${blanks.length}"/>`)
        .replaceAll('\t', '<text:tab/>'),
    )
    .map((line) => `<text:p>${line}</text:p>`)
    .join('')
}

const holdsRow = (one: SpreadsheetRow, row: number): boolean => row >= one.row && row < one.row + one.repeat
const holdsColumn = (one: SpreadsheetCell, column: number): boolean =>
  column >= one.column && column < one.column + one.repeat
const textOf = (xml: string, { start, end }: { start: number; end: number }): string => xml.slice(start, end)
