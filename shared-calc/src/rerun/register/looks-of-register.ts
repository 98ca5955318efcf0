import { format } from 'numfmt'
import { addressOf, columnLetters, withSheet } from '../../log/grid/address.js'
import type { Grid } from '../../log/grid/grid.js'
import { TREND_SHEET } from '../../reports/register/trend.js'
import { BUILDINGS_SHEET } from '../../reports/register/workbook/buildings-sheet.js'
import { isChartSheet } from '../../reports/register/workbook/charts.js'
import { REGISTER_SHEET } from '../../reports/register/workbook/columns.js'
import { LEFT_OUT_SHEET } from '../../reports/register/workbook/left-out-sheet.js'
import { STAGES_SHEET } from '../../reports/register/workbook/stages-sheet.js'
import { TO_DO_SHEET } from '../../reports/register/workbook/to-do-sheet.js'
import { TOTALS_SHEET } from '../../reports/register/workbook/totals-sheet.js'
import { PROBABILITY_FORMAT } from '../../reports/workbook/live-cell.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import { contrast } from '../look/colours.js'
import { seen } from '../look/seen-difference.js'
import type { SheetLook } from '../look/sheet-look.js'
import type { CellLook } from '../look/styles.js'
import { readLook } from '../look/workbook-look.js'
import type { Difference } from '../report.js'

export interface RegisterLooks {
  readonly differences: readonly Difference[]
  /** What an office may well have done, and a reader should know. */
  readonly notes: readonly string[]
}

/**
 * What shows by itself, also where a register cannot be made again from its tests because some are not given: offices sort,
 * filter, correct and colour its rows. What no such work needs is reported: values that cannot be read, things that lie over the
 * sheets, and settings that make a program show something else than the cells hold.
 */
export function looksOfRegister(parts: Parts, grid: Grid): RegisterLooks {
  const look = readLook(parts)
  const hidden = look.sheets.filter(({ state }) => state !== 'visible').map(({ name }) => name)
  const added = look.sheets
    .map(({ name }) => name)
    .filter((name) => !SHEETS.includes(name) && !isChartSheet(name))
  const commented = look.sheets.filter(({ comments }) => comments.length > 0).map(({ name }) => name)
  return {
    differences: [
      ...changed('workbook: ', look.settings, settingsOfRegister, 'page'),
      ...look.sheets.flatMap((sheet) => [
        ...changed(`sheet ${sheet.name}: `, sheet.others, settingsOfSheet, 'sheet', sheet.name),
        ...overSheet(sheet),
        ...unreadable(sheet, grid),
      ]),
    ],
    notes: [
      ...(hidden.length > 0 ? [`Hidden: ${sheetsNamed(hidden)}`] : []),
      ...(added.length > 0 ? [`Added to the register: ${sheetsNamed(added)}`] : []),
      ...narrow(look.sheets),
      ...(commented.length > 0 ? [`Comments on ${sheetsNamed(commented)}`] : []),
    ],
  }
}

/** Sheets that a register is written with. */
const SHEETS: readonly string[] = [
  REGISTER_SHEET,
  TOTALS_SHEET,
  BUILDINGS_SHEET,
  TREND_SHEET,
  STAGES_SHEET,
  TO_DO_SHEET,
  LEFT_OUT_SHEET,
]

/** Columns of the sheet that hold values and show none of them. */
const narrow = (sheets: readonly SheetLook[]): string[] =>
  sheets.flatMap(({ name, cells, width }) => {
    const columns = [
      ...new Set([...cells.values()].filter(({ filled }) => filled).map(({ column }) => column)),
    ]
    const hidden = columns.filter((column) => width(column) < NARROWEST).sort((a, b) => a - b)
    return hidden.length === 0
      ? []
      : [
          `Sheet ${name}: ${hidden.length === 1 ? 'column' : 'columns'} ${hidden.map(columnLetters).join(', ')} hidden or too narrow to read`,
        ]
  })

/** Characters. */
const NARROWEST = 1

const sheetsNamed = (names: readonly string[]): string =>
  `${names.length === 1 ? 'sheet' : 'sheets'} ${names.join(', ')}`

/** As every register is written, and as spreadsheet programs keep it. */
const settingsOfRegister: Readonly<Record<string, string>> = {
  precision: 'full',
  'sheet tabs shown': 'yes',
  'other contents of the workbook': 'none',
  'charts and pictures shown': 'all',
  'dates count from': '1900',
  'links to other workbooks': '0',
  'connections to external data': '0',
  macros: 'no',
  'other contents of the file': 'none',
  'contents only some programs read': 'nothing',
}
const settingsOfSheet: Readonly<Record<string, string>> = {
  'formulas shown instead of results': 'no',
  'zeros shown': 'yes',
  'columns from right to left': 'no',
  'conditional formats in use': 'yes',
  'formulas calculated by older rules': 'no',
  'embedded objects': 'none',
  'columns whose width is stated twice': 'none',
  'background picture': 'no',
  'cells written in an unusual way': 'none',
}

const changed = (
  about: string,
  now: ReadonlyMap<string, string>,
  written: Readonly<Record<string, string>>,
  kind: Difference['kind'],
  cell?: string,
): Difference[] =>
  Object.entries(written).flatMap(([key, value]) => {
    const found = now.get(key) ?? value
    return found === value ? [] : [seen(kind, `${about}${key}`, cell, value, found)]
  })

/** A register has charts; pictures, text boxes and shapes lie over its cells. */
const overSheet = ({ name, objects }: SheetLook): Difference[] =>
  objects
    .filter(({ kind }) => kind !== 'chart')
    .map(({ kind, from, content }) =>
      seen(
        'drawing',
        `a ${kind} lies on the sheet`,
        withSheet(name, addressOf(Math.floor(from.row), Math.floor(from.column))),
        null,
        content || kind,
      ),
    )

/** Below this ratio letters can hardly be told from their ground; programs for reading ask for 4.5 (WCAG 2.2, 1.4.3). */
const LEAST_CONTRAST = 1.5
/** Points; smaller letters are dots. */
const SMALLEST = 5

function unreadable(sheet: SheetLook, grid: Grid): Difference[] {
  const read = grid.sheet(sheet.name)
  const faults = new Map<CellLook, string | undefined>()
  const differences: Difference[] = []
  for (const { row, column, look, filled } of sheet.cells.values()) {
    if (!filled) continue
    const value = read?.at(row, column)?.value
    if (value === null || value === undefined || value === '') continue
    if (!faults.has(look)) faults.set(look, faultOf(look))
    const fault =
      faults.get(look) ?? (typeof value === 'number' ? faultOfFormat(look.format, value) : undefined)
    if (fault !== undefined)
      differences.push(
        seen(
          'appearance',
          'the value cannot be read',
          withSheet(sheet.name, addressOf(row, column)),
          'readable',
          fault,
        ),
      )
  }
  return differences
}

function faultOf({ font, fill, rotation }: CellLook): string | undefined {
  const between = contrast(font.colour, fill)
  if (between !== undefined && between < LEAST_CONTRAST) return `text ${font.colour} on ${fill}`
  if (font.size !== undefined && font.size < SMALLEST) return `letters of ${font.size} points`
  if (font.symbols) return 'a font of symbols'
  if (font.struck) return 'struck out'
  return rotation === 0 ? undefined : 'turned text'
}

/** A format that shows nothing, the same for every number, or thousands for ones. */
function faultOfFormat(code: string, value: number): string | undefined {
  // Some programs write a blank of a format as a character shown as it is.
  if (code.replaceAll('\\ ', ' ') === PROBABILITY_FORMAT) return undefined
  const shown = (number: number) => format(code, number, { throws: false })
  const [one, other] = [shown(value), shown(value * 1.37 + Math.sign(value || 1) * 1.7)]
  if (one.trim() === '') return `number format ${code}`
  return one === other || /[0#?],+(?![0#?])/.test(code) ? `number format ${code}` : undefined
}
