import type { Cell, DefinedName, Grid } from '@draughtbook/shared-calc/log'
import { type Area, areaAddress, bands, cellCount, intersection, parseArea } from '../address.js'
import { CellSheet } from '../cell-sheet.js'
import { HostError, MOST_CELLS } from '../host.js'
import type { OpenedSheet } from '../opened-book.js'
import { locate } from './read.js'

/** With formulas, types and fonts a cell takes some 130 bytes of the 5 MB an answer may have in Excel on the web. */
const CELLS_PER_ANSWER = 25_000

type ValueType = Excel.Range['valueTypes'][number][number]

/** The cells of the references, or all used cells, as the log reader takes them. */
export async function readGrid(context: Excel.RequestContext, references?: readonly string[]): Promise<Grid> {
  const { workbook } = context
  const { worksheets, names } = workbook
  workbook.load('name')
  worksheets.load('items/name,items/visibility')
  names.load('items/name,items/value,items/type')
  await context.sync()
  const wanted = references
    ? await areasOf(context, references)
    : worksheets.items.map(({ name }) => ({ sheet: name, area: undefined }))
  const opened = new Map<string, OpenedSheet>(
    worksheets.items.map(({ name, visibility }) => [
      name,
      { name, hidden: visibility !== 'Visible', cells: [], hiddenRows: [], hiddenColumns: [], merges: [] },
    ]),
  )
  for (const { sheet, area } of wanted) {
    const into = opened.get(sheet)
    if (into) await readInto(context, into, area)
  }
  const sheets = [...opened.values()].map((sheet) => new CellSheet(sheet))
  return {
    kind: 'ranges',
    fileName: workbook.name,
    sheetNames: sheets.map(({ name }) => name),
    sheet: (name) => sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase()),
    names: names.items.flatMap(({ name, value, type }) =>
      type === 'Range' ? definedName(name, String(value)) : [],
    ),
    date1904: false,
    findings: [],
  }
}

async function areasOf(context: Excel.RequestContext, references: readonly string[]) {
  const ranges: Excel.Range[] = []
  for (const reference of references) {
    const range = await locate(context, reference).catch(unlessMissing)
    if (!range) continue
    range.load('address,worksheet/name')
    ranges.push(range)
  }
  await context.sync()
  return ranges.map((range) => ({ sheet: range.worksheet.name, area: widened(parseArea(range.address)) }))
}

/** Headings above and units beside the cells asked for belong to how they are read. */
function widened(area: Area | undefined): Area | undefined {
  return (
    area && {
      ...area,
      top: Math.max(1, area.top - 4),
      left: Math.max(1, area.left - 1),
      right: area.right + 1,
    }
  )
}

/** A sheet or name that is gone is told of, cell by cell, by whoever looks for it in the grid. */
function unlessMissing(error: unknown): undefined {
  if (error instanceof HostError && error.code === 'not-found') return undefined
  throw error
}

function definedName(name: string, value: string): DefinedName[] {
  const area = parseArea(value.replace(/^=/, ''))
  if (area?.sheet === undefined) return []
  const block = { top: area.top - 1, left: area.left - 1, bottom: area.bottom - 1, right: area.right - 1 }
  return [{ name, sheet: area.sheet, block }]
}

async function readInto(
  context: Excel.RequestContext,
  into: OpenedSheet,
  asked: Area | undefined,
): Promise<void> {
  const worksheet = context.workbook.worksheets.getItem(into.name)
  const used = worksheet.getUsedRangeOrNullObject(true)
  used.load('address')
  await context.sync()
  const whole = used.isNullObject ? undefined : parseArea(used.address)
  const area = whole && (asked ? intersection(asked, whole) : whole)
  if (!area) return
  if (cellCount(area) > MOST_CELLS)
    throw new HostError(
      'too-large',
      `Sheet ${into.name} has ${cellCount(area)} used cells; at most ${MOST_CELLS} are read. Pick the ranges by hand.`,
    )
  for (const band of bands(area, CELLS_PER_ANSWER))
    await readBand(context, worksheet.getRange(areaAddress(band)), band, into)
  const columns = worksheet.getRange(areaAddress(area)).getColumnProperties({ columnHidden: true })
  await context.sync()
  columns.value.forEach((column, x) => {
    if (column.columnHidden) into.hiddenColumns.push(area.left - 1 + x)
  })
}

async function readBand(
  context: Excel.RequestContext,
  range: Excel.Range,
  band: Area,
  into: OpenedSheet,
): Promise<void> {
  range.load('values,numberFormat,formulas,valueTypes')
  const fonts = range.getCellProperties({ format: { font: { strikethrough: true } } })
  const rows = range.getRowProperties({ rowHidden: true })
  await context.sync()
  range.values.forEach((row, y) => {
    row.forEach((value: unknown, x: number) => {
      const format = String(range.numberFormat[y]?.[x] ?? 'General')
      const cell = cellOf(value, range.valueTypes[y]?.[x], format, range.formulas[y]?.[x])
      if (!cell) return
      const struck = fonts.value[y]?.[x]?.format?.font?.strikethrough
      into.cells.push([band.top - 1 + y, band.left - 1 + x, struck ? { ...cell, struck: 'whole' } : cell])
    })
  })
  rows.value.forEach((row, y) => {
    if (row.rowHidden) into.hiddenRows.push(band.top - 1 + y)
  })
}

function cellOf(
  value: unknown,
  type: ValueType | undefined,
  format: string,
  formula: unknown,
): Cell | undefined {
  const kind =
    type === 'Error'
      ? 'error'
      : typeof value === 'number'
        ? 'number'
        : typeof value === 'boolean'
          ? 'boolean'
          : 'text'
  const hasFormula = typeof formula === 'string' && formula.startsWith('=')
  if (value === '' && !hasFormula) return undefined
  return {
    kind,
    value: value as Cell['value'],
    ...(format === 'General' ? {} : { format }),
    ...(hasFormula ? { formula: formula.slice(1) } : {}),
  }
}
