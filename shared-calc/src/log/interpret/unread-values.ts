import { fileText } from '../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../catalogue/findings/remark.js'
import type { Finding } from '../../contract/record/index.js'
import { bareUnit } from '../cells/stated-unit.js'
import { parseAddress } from '../grid/address.js'
import { isCalibration } from './fields/classify.js'
import { placeInSheet } from './grid/lines.js'
import { formPlaces, leadOf, type View } from './grid/view.js'
import type { Use } from './interpretation.js'
import type { SheetTables } from './sheet-tables.js'
import { bareHeads } from './tables/bare-heads.js'
import { PLAIN_CURVE, physicsScore, powerLaw } from './tables/physics.js'
import { type Label, readLabel, says } from './words/label.js'
import { statesSmallPressure } from './zero-flow/mentioned.js'

/** So many labels are named. */
const MOST_NAMED = 6

interface Unread {
  readonly label: string
  readonly cell: string
}

/**
 * The last look at a log: values that are pressures, temperatures, volumes or envelope areas by their unit or label, and that went
 * into no field, no finding and no list of what was left out. They are named, so that none is lost in silence.
 */
export function unreadValues(
  tables: readonly SheetTables[],
  uses: readonly Use[],
  told: readonly (string | undefined)[],
): Finding[] {
  const known = new Set(told)
  const boxes = uses.flatMap(({ cells }) => cells.split(', ').flatMap((range) => boxOf(range) ?? []))
  const knownOn = (view: View) => {
    const own = boxes.filter(({ sheet }) => sheet === view.name)
    return (row: number, column: number): boolean => {
      const at = placeInSheet(view.lines, row, column)
      const isIn = ({ top, bottom, left, right }: (typeof own)[number]) =>
        at.row >= top && at.row <= bottom && at.column >= left && at.column <= right
      return own.some(isIn) || known.has(view.address(row, column))
    }
  }
  const looked = tables
    .filter(({ view, series }) => !view.sheet.hidden && series.length === 0)
    .map(({ view, isTaken }) => {
      const isKnown = knownOn(view)
      const isRead = (row: number, column: number) => isTaken(row, column) || isKnown(row, column)
      return { named: unreadOf(view, isRead), hidden: hiddenNumbers(view, isRead) }
    })
  const named = looked.flatMap((one) => one.named)
  const cells = named.map(({ cell }) => cell)
  const isNamed = new Set(cells)
  const hidden = looked.flatMap((one) => one.hidden).filter((cell) => !isNamed.has(cell))
  const labels = [...new Set(named.map(({ label }) => label))]
  const values = fileText('log-unread-values', {
    labels: labels.slice(0, MOST_NAMED),
    more: Math.max(0, labels.length - MOST_NAMED),
  })
  return [
    ...(cells.length > 0 ? [remarkFinding(values, cells)] : []),
    ...(hidden.length > 0 ? [remarkFinding(fileText('log-unread-values/hidden'), hidden)] : []),
  ]
}

/** Cells with numbers in hidden rows and columns that nothing was read from. */
const hiddenNumbers = (view: View, isRead: (row: number, column: number) => boolean): string[] =>
  [...formPlaces(view)]
    .filter(([row, column]) => view.hidden(row, column) && view.at(row, column)?.kind === 'number')
    .filter(([row, column]) => !isRead(row, column))
    .map(([row, column]) => view.address(row, column))

/** Columns side by side that follow a leakage curve and that nothing was read from: a run may be lost. */
function unreadTables(view: View, isKnown: (row: number, column: number) => boolean): Unread[] {
  return bareHeads(view).flatMap(({ first, columns }) => {
    const numbers = columns.map(({ at }) => {
      const values: number[] = []
      while (view.number(first + values.length, at) !== undefined)
        values.push(view.number(first + values.length, at) as number)
      return values
    })
    for (const [index, { at }] of columns.entries()) {
      const next = columns[index + 1]
      const [pressures, flows] = [numbers[index] ?? [], numbers[index + 1] ?? []]
      const size = pressures.map(Math.abs)
      if (!next || isKnown(first, at) || isKnown(first, next.at) || pressures.length !== flows.length)
        continue
      const isOfHouse =
        Math.max(...size) >= 15 && Math.max(...size) <= 160 && Math.min(...flows) > Math.max(...size)
      if (isOfHouse && physicsScore(powerLaw(pressures, flows)) >= PLAIN_CURVE)
        return [{ label: above(view, first, at) ?? view.address(first, at), cell: view.address(first, at) }]
    }
    return []
  })
}

function unreadOf(view: View, isKnown: (row: number, column: number) => boolean): Unread[] {
  const found: Unread[] = unreadTables(view, isKnown)
  for (const [row, column] of formPlaces(view)) {
    const content = view.at(row, column)
    if (!content || isKnown(row, column)) continue
    if (content.kind === 'text' && content.text.length <= 160 && statesSmallPressure(content.text))
      found.push({ label: content.text, cell: view.address(row, column) })
    if (content.kind === 'date') {
      const label = leadOf(view, row, column) ?? above(view, row, column)
      if (label !== undefined && isDayOfTest(readLabel(label)))
        found.push({ label, cell: view.address(row, column) })
    }
    if (content.kind === 'text' && BEGINS_WITH_NUMBER.test(content.text)) {
      const label = leadOf(view, row, column)
      if (label !== undefined && label.length <= 60 && isSizeOrWeather(readLabel(label)))
        found.push({ label, cell: view.address(row, column) })
    }
    if (content.kind !== 'number') continue
    const lead = leadOf(view, row, column)
    const text = lead && !bareUnit(lead) ? lead : above(view, row, column)
    if (text === undefined) continue
    const label = readLabel(text)
    const beside = bareUnit(view.text(row, column + 1) ?? '')
    const kind = (content.written.unit ?? beside ?? label.unit)?.kind
    if (isOfTest(label, kind)) found.push({ label: text, cell: view.address(row, column) })
  }
  return found
}

/** The nearest text above a value, past a line of units and other values. */
function above(view: View, row: number, column: number): string | undefined {
  for (let at = row - 1; at >= Math.max(0, row - 4); at--) {
    const text = view.text(at, column)
    if (text !== undefined && !bareUnit(text)) return text
  }
  return undefined
}

/** "512 m² and 40 m² of the annexe": more than one number, so that none was read. */
const BEGINS_WITH_NUMBER = /^[~≈(+−-]?\s*\d/

const isSizeOrWeather = (label: Label): boolean =>
  !bareUnit(label.text) && (isOfTest(label, undefined) || isOfTest(label, 'area'))

/** Values of instruments and of plans, which are of no test. */
const OTHERS = ['uncertainty', 'target', 'device', 'example', 'wind', 'flow'] as const

function isOfTest(label: Label, kind: string | undefined): boolean {
  if (OTHERS.some((one) => says(label, one))) return false
  if (label.tokens.some((token) => /^(?:cal|calib|kalib|due|limit|resolution|serial|sn)/.test(token)))
    return false
  if (kind === 'area') return says(label, 'envelope')
  if (kind !== undefined) return kind === 'pressure' || kind === 'temperature' || kind === 'volume'
  return (['zero', 'temperature', 'volume', 'barometer'] as const).some((one) => says(label, one))
}

/** A day that may be that of a test, and not that of an order, a report or a calibration. */
const isDayOfTest = (label: Label): boolean =>
  !isCalibration(label) && says(label, 'test') && !says(label, 'former') && !says(label, 'target')

function boxOf(range: string) {
  const cut = range.lastIndexOf('!')
  if (cut < 0) return undefined
  const [first = '', last = first] = range.slice(cut + 1).split(':')
  const [from, to] = [parseAddress(first), parseAddress(last)]
  if (!from || !to) return undefined
  const sheet = range.slice(0, cut).replace(/^'|'$/g, '').replace(/''/g, "'")
  return { sheet, top: from.row, left: from.column, bottom: to.row, right: to.column }
}
