import { figureOf } from '../../cells/number-text.js'
import { bareUnit } from '../../cells/stated-unit.js'
import { findUnit, type KnownUnit } from '../../cells/units.js'
import { blockBetween } from '../../grid/address.js'
import type { View } from '../grid/view.js'
import { type Label, readLabel, says, unitOf } from '../words/label.js'
import { writtenAt } from './columns.js'
import type { Figure } from './table-row.js'

/** A ring or plate with its calibration: q = coefficient · Δp^exponent, in the units stated. */
export interface FoundRange {
  readonly label: string
  readonly coefficient: number
  readonly exponent: number
  readonly minimum?: number
  readonly maximum?: number
  readonly cells: { readonly label: string; readonly coefficient: string; readonly exponent: string }
  /** The numbers as their cells hold them. */
  readonly figures?: readonly Figure[]
}

/** A table of a flow device's ranges. */
export interface FoundDevice {
  readonly view: View
  /** What stands over its coefficients, with the name of the sheet: "Fan 2", "Pressurisation". */
  readonly title?: string
  readonly ranges: readonly FoundRange[]
  readonly flowUnit?: KnownUnit
  readonly pressureUnit?: KnownUnit
  readonly density?: { value: number; cell: string }
  readonly cells: string
  readonly rows: { readonly first: number; readonly last: number }
}

/** Whether a column of a line is one of the device's limits and not of a reading: its table looks like a short run. */
export const isOfDevice = (
  devices: readonly FoundDevice[],
  view: View,
  rows: readonly number[],
  heading: Label,
): boolean =>
  devices.some(
    (device) =>
      device.view === view && rows.every((row) => row >= device.rows.first && row <= device.rows.last),
  ) &&
  (says(heading, 'lower') || says(heading, 'upper'))

/** A workbook has one table of coefficients, or one for each fan or direction. */
const MOST_TABLES = 8

/** Every table whose columns are coefficients and exponents; several of them may share the names of their rows. */
export function findDevices(views: readonly View[]): FoundDevice[] {
  const found: FoundDevice[] = []
  for (const view of views)
    for (let row = 0; row < view.rows - 1 && found.length < MOST_TABLES; row++) {
      const own = tablesAt(view, row)
      found.push(...own)
      const [table] = own
      if (table) row = table.rows.last
    }
  return found
}

function tablesAt(view: View, row: number): FoundDevice[] {
  const first = firstNumbers(view, row)
  if (first === undefined) return []
  const tables: FoundDevice[] = []
  let from = 0
  let names: number | undefined
  for (;;) {
    const made = tableAt(view, row, first, from, names)
    if (!made) return tables
    tables.push(made.table)
    from = made.right + 1
    names = made.names
  }
}

/**
 * @param from - column behind the table in front of it
 * @param names - column that names the rows of the table in front of it
 */
function tableAt(
  view: View,
  row: number,
  first: number,
  from: number,
  names: number | undefined,
): { table: FoundDevice; right: number; names: number } | undefined {
  let coefficient = -1
  let exponent = -1
  let lowest = -1
  let highest = -1
  let unit: KnownUnit | undefined
  for (let column = from; column < view.columns; column++) {
    const text = view.text(row, column)
    if (text === undefined || text.length > 60) continue
    const label = readLabel(text)
    const value = view.number(first, column)
    if (value === undefined) continue
    if (exponent < 0 && value > 0.2 && value < 1.2 && isExponent(label.tokens)) exponent = column
    else if (coefficient < 0 && value > 0 && isCoefficient(label.tokens)) {
      coefficient = column
      unit = unitOf(label, 'flow') ?? flowPerPressure(text)
    } else if (lowest < 0 && says(label, 'lower') && label.unit?.kind !== 'flow') lowest = column
    else if (highest < 0 && says(label, 'upper') && label.unit?.kind !== 'flow') highest = column
    // A second coefficient begins the next table.
    else if (coefficient >= 0 && exponent >= 0 && isCoefficient(label.tokens)) break
  }
  if (coefficient < 0 || exponent < 0) return undefined
  const left = Math.min(coefficient, exponent)
  const own = labelLeft(view, first, left - 1, from)
  const name = own || names === undefined ? left - 1 : names
  const ranges: FoundRange[] = []
  let last = first
  for (let at = first; at < view.rows; at++) {
    const c = view.number(at, coefficient)
    const n = view.number(at, exponent)
    // One row may be left empty between two ranges.
    if (at === last + 1 && !view.at(at, coefficient) && !view.at(at, exponent)) continue
    if (c === undefined || n === undefined) break
    const label = labelLeft(view, at, name, own ? from : 0)
    if (label === undefined) break
    last = at
    const minimum = lowest < 0 ? undefined : view.number(at, lowest)
    const maximum = highest < 0 ? undefined : view.number(at, highest)
    ranges.push({
      label: label.text,
      coefficient: c,
      exponent: n,
      ...(minimum === undefined ? {} : { minimum }),
      ...(maximum === undefined ? {} : { maximum }),
      cells: {
        label: label.cell,
        coefficient: view.address(at, coefficient),
        exponent: view.address(at, exponent),
      },
      figures: [coefficient, exponent, lowest, highest].flatMap((column) => {
        const written = column < 0 ? undefined : writtenAt(view, at, column)
        return written ? [{ ...written, cell: view.address(at, column) }] : []
      }),
    })
  }
  if (ranges.length === 0) return undefined
  let right = Math.max(coefficient, exponent, highest)
  while (view.at(row, right + 1)) right++
  const said = saidNear(view, row, Math.max(0, name), right)
  const flowUnit = unit ?? said.flow
  const table: FoundDevice = {
    view,
    title: `${titleOver(view, row, left, from)} ${view.name}`.trim(),
    ranges,
    ...(flowUnit ? { flowUnit } : {}),
    ...(said.pressure ? { pressureUnit: said.pressure } : {}),
    ...(said.density ? { density: said.density } : {}),
    rows: { first, last },
    cells: blockBetween(
      view.address(row, Math.max(0, own ? left - 1 : left)),
      view.address(last, Math.max(coefficient, exponent)),
    ),
  }
  return { table, right: Math.max(coefficient, exponent, lowest, highest), names: name }
}

/** Lines over the headings in which a title stands. */
const TITLE_ROWS = 3

/** The texts over the first of its columns, or over the last in front of it. */
function titleOver(view: View, row: number, column: number, from: number): string {
  for (let at = row - 1; at >= Math.max(0, row - TITLE_ROWS); at--)
    for (let left = column; left >= Math.max(0, from - 1); left--) {
      const text = view.text(at, left)
      if (text !== undefined) return text
    }
  return ''
}

function firstNumbers(view: View, row: number): number | undefined {
  for (const at of [row + 1, row + 2]) {
    let count = 0
    for (let column = 0; column < view.columns; column++) if (view.number(at, column) !== undefined) count++
    if (count >= 2) return at
  }
  return undefined
}

export const isExponent = (tokens: readonly string[]): boolean =>
  tokens.length <= 3 &&
  [
    'n',
    'm',
    'b',
    'exponent',
    'exp',
    'exposant',
    'hochzahl',
    'wykladnik',
    'esponente',
    'exponente',
    'eksponent',
    'k2',
  ].includes(tokens[0] ?? '')
export const isCoefficient = (tokens: readonly string[]): boolean =>
  tokens.length <= 6 &&
  [
    'c',
    'k',
    'a',
    'coefficient',
    'coeff',
    'coef',
    'koeffizient',
    'cf',
    'factor',
    'faktor',
    'constant',
    'konstante',
    'wspolczynnik',
    'coefficiente',
    'coeficiente',
    'koefficient',
    'koeffisient',
    'k1',
  ].includes(tokens[0] ?? '')

function labelLeft(
  view: View,
  row: number,
  from: number,
  least: number,
): { text: string; cell: string } | undefined {
  for (let column = from; column >= least; column--) {
    const text = view.text(row, column) ?? view.number(row, column)?.toString()
    if (text !== undefined) return { text, cell: view.address(row, column) }
  }
  return undefined
}

/** Units and air density that texts near the table state: "Q in m³/h, dP in Pa", "air of 1.204 kg/m³". */
function saidNear(
  view: View,
  row: number,
  left: number,
  right: number,
): { flow?: KnownUnit; pressure?: KnownUnit; density?: { value: number; cell: string } } {
  const said: { flow?: KnownUnit; pressure?: KnownUnit; density?: { value: number; cell: string } } = {}
  for (let at = Math.max(0, row - 8); at <= row + 14; at++)
    for (let column = 0; column < Math.min(view.columns, right + 12); column++) {
      const text = view.text(at, column)
      if (text === undefined || text.length > 160) continue
      // A label with its value, or the heading of another table, says nothing of the coefficients.
      const own = at === row && column >= left && column <= right
      if (view.number(at, column + 1) !== undefined || (!own && isHeading(view, at, column))) continue
      // "Barometer | 1004 | hPa": the unit of another value.
      if (view.number(at, column - 1) !== undefined && bareUnit(text)) continue
      for (const unit of unitsIn(text.replace(VALUE_WITH_UNIT, ' '))) {
        if (unit.kind === 'flow') said.flow ??= unit
        if (unit.kind === 'pressure') said.pressure ??= unit
      }
      const density = densityIn(text)
      if (density !== undefined) said.density ??= { value: density, cell: view.address(at, column) }
    }
  return said
}

/** "1004 hPa" of a remark near the table: a value, whose unit is no unit of the coefficients. */
const VALUE_WITH_UNIT = /(?<![\d.,^])\d+(?:[.,]\d+)?\s?(?:hPa|kPa|mbar|mb|bar)(?!\p{L})/giu

/** A text right above numbers that is no formula: it speaks of them. */
const isHeading = (view: View, at: number, column: number): boolean =>
  !/[=^]/.test(view.text(at, column) ?? '') &&
  (view.number(at + 1, column) !== undefined || view.number(at + 2, column) !== undefined)

/** Every unit of two letters or more that a text states, also spelt out: "litres per second". */
export function unitsIn(text: string): KnownUnit[] {
  const words = text.split(/[\s,;()[\]=]+/).map((word) => word.replace(/[.:]$/, ''))
  const found: KnownUnit[] = []
  for (let at = 0; at < words.length; at++) {
    const spelt = [4, 3, 2].find((count) => {
      const unit = findUnit(words.slice(at, at + count).join(''))
      // Of two words "1000 m³/h", and not "m³ /h".
      return unit?.kind === 'flow' && (count > 2 || /^\d/.test(unit.unit))
    })
    const word = spelt ? words.slice(at, at + spelt).join('') : (words[at] as string)
    const unit = word.length < 2 || /^(?:in|min)$/i.test(word) ? undefined : findUnit(word)
    if (unit) found.push(unit)
    if (spelt) at += spelt - 1
  }
  return found
}

/** m³/h of "C (m³/h·Pa^n)" or "C [m³/(h Paⁿ)]": the flow a coefficient gives for a pressure to some power. */
export function flowPerPressure(text: string): KnownUnit | undefined {
  const bare = text.replace(/[[\](){}]/g, ' ')
  const at = bare.search(/pa\b|pa[\^ⁿ⁻-]/i)
  if (at < 0) return undefined
  const words = bare
    .slice(0, at)
    .replace(/(?<![\s·⋅*/×.])[\s·⋅*/×.]+$/, '')
    .split(/\s+/)
  for (const count of [1, 2, 3]) {
    const unit = findUnit(words.slice(-count).join(''))
    if (unit?.kind === 'flow') return unit
  }
  return undefined
}

/** 1.204 of "valid for air of 1.204 kg/m³". */
function densityIn(text: string): number | undefined {
  const words = text.split(/[\s(),;]+/)
  for (const [index, word] of words.entries()) {
    if (findUnit(word)?.kind !== 'density') continue
    const value = figureOf(words[index - 1] ?? '')
    if (value > 0.8 && value < 1.6) return value
  }
  return undefined
}
