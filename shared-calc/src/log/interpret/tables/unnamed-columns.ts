import { toRecordUnit } from '../../cells/units.js'
import type { View } from '../grid/view.js'
import { directionIn } from '../words/label.js'
import type { Doubt, KnownColumn, Segment } from './columns.js'
import { PLAIN_CURVE, PRESSURES, physicsScore, powerLaw } from './physics.js'
import type { TableRow } from './table-row.js'

/** Every two of them are tried; a table of readings that nobody headed is not wider. */
const MOST_UNNAMED = 12

/**
 * Gives columns without a heading the role that the leakage curve through them proves, where the headings leave out the
 * pressure or the flow. Turned round, pressure and flow have an exponent beyond 1, so that the two cannot be confused.
 */
export function withUnnamed(segment: Segment): { segment: Segment; unnamed: readonly KnownColumn[] } {
  const none = { segment, unnamed: [] }
  const { columns } = segment
  const has = (...roles: readonly string[]) =>
    columns.some(({ role, numbers }) => roles.includes(role) && numbers > 0)
  const [pressure, flow, device] = [has('pressure', 'induced'), has('flow', 'corrected'), has('device')]
  if (pressure && (flow || device)) return { segment, unnamed: columns.filter(({ byCurve }) => byCurve) }
  // Among headings that speak of other things a pair of unnamed columns is somebody else's.
  if (!pressure && !flow && columns.some(({ label }) => label.text !== '')) return none
  const free = columns
    .filter((column) => (device ? isNameless(column) : column.role === 'other' || isNameless(column)))
    .filter(({ numbers, at }) => numbers >= 3 && !isHiddenAmong(segment, at))
    .slice(0, MOST_UNNAMED)
  const pressures = pressure ? columns.filter(({ role }) => role === 'pressure' || role === 'induced') : free
  const flows = flow ? columns.filter(({ role }) => role === 'flow' || role === 'corrected') : free
  let best: { pressure: KnownColumn; flow: KnownColumn; score: number } | undefined
  for (const one of pressures)
    for (const other of flows) {
      if (one === other) continue
      const score = scoreOf(segment.view, segment.head.first, one, other)
      if (score >= PLAIN_CURVE && score > (best?.score ?? 0)) best = { pressure: one, flow: other, score }
    }
  if (!best) return none
  const named = columns.map((column): KnownColumn => {
    if (column === best.pressure && !pressure) return { ...column, role: 'pressure', byCurve: true }
    return column === best.flow && !flow ? { ...column, role: 'flow', byCurve: true } : column
  })
  return {
    segment: { ...segment, columns: named },
    unnamed: named.filter((column, index) => column !== columns[index]),
  }
}

/** A hidden column without a heading among others that are shown is somebody's working, and no reading. */
const isHiddenAmong = ({ view, head, columns }: Segment, at: number): boolean =>
  view.hidden(head.first, at) && columns.some((one) => !view.hidden(head.first, one.at))

const NAMELESS: readonly string[] = ['other', 'test']

/** Nothing over a column but perhaps the name of a direction. */
const isNameless = ({ role, label, numbers }: KnownColumn): boolean =>
  numbers >= 4 &&
  ((role === 'other' && label.text === '') || (NAMELESS.includes(role) && directionIn(label) !== undefined))

/**
 * Beside a block that has both headings, a flow or a pressure whose neighbour has none: of the second block one heading was lost. The
 * curve through the two says what the neighbour is.
 */
export function withLostHeadings(
  view: View,
  first: number,
  columns: readonly KnownColumn[],
): readonly KnownColumn[] {
  if (!columns.some(isNameless)) return columns
  return columns.map((column, index): KnownColumn => {
    if (!isNameless(column)) return column
    const [before, after] = [columns[index - 1], columns[index + 1]]
    const earlier = columns.slice(0, index)
    const isSecond = (role: 'pressure' | 'flow') => earlier.filter((one) => one.role === role).length > 0
    // "Depress | −60 | −55" over "Flow | …": only the name of the run stands over its pressures.
    const isOfRun = directionIn(column.label) !== undefined
    if (after?.role === 'flow' && after.at === column.at + 1 && (isOfRun || isSecond('flow')))
      if (scoreOf(view, first, column, after) >= PLAIN_CURVE)
        return { ...column, role: 'pressure', byCurve: true }
    if (before?.role !== 'pressure' || before.at !== column.at - 1 || !isSecond('flow')) return column
    return scoreOf(view, first, before, column) >= PLAIN_CURVE
      ? { ...column, role: 'flow', byCurve: true }
      : column
  })
}

const inPa = (value: number, { unit }: KnownColumn): number =>
  unit?.kind === 'pressure' ? toRecordUnit(value, unit) : value

function scoreOf(view: View, first: number, pressure: KnownColumn, flow: KnownColumn): number {
  const pairs: [number, number][] = []
  for (let row = first; row < Math.min(view.rows, first + 40); row++) {
    const [p, q] = [view.number(row, pressure.at), view.number(row, flow.at)]
    if (p === undefined && q === undefined && pairs.length > 0) break
    if (p !== undefined && q !== undefined && q !== 0) pairs.push([inPa(p, pressure), Math.abs(q)])
  }
  const sizes = pairs.map(([p]) => Math.abs(p))
  if (Math.max(...sizes) < PRESSURES.reached || Math.max(...sizes) > PRESSURES.most)
    return Number.NEGATIVE_INFINITY
  return physicsScore(
    powerLaw(
      pairs.map(([p]) => p),
      pairs.map(([, q]) => q),
    ),
  )
}

/** No reading is taken below this, Pa. */
const LEAST = 3

/**
 * Columns without a heading that follow the leakage curve with the chosen flow or pressure as well as the column chosen: their heading
 * may have been lost.
 */
export function unheadedRivals(
  { view, columns }: Segment,
  pressure: KnownColumn,
  carriers: readonly KnownColumn[],
  rows: readonly TableRow[],
): Doubt[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const pressures = readings.map((row) => row.pressure.value)
  const flows = readings.map((row) => Math.abs(row.carriers[0]?.value ?? 0))
  const fits = (one: readonly number[], other: readonly number[]) =>
    physicsScore(powerLaw(one, other)) > PLAIN_CURVE
  return columns
    .filter(({ label, role }) => label.text === '' && role === 'other')
    .flatMap((column): Doubt[] => {
      const values = readings.flatMap(({ row }) => view.number(row, column.at) ?? [])
      // 1, 2, 3 … numbers the rows.
      if (
        values.length < readings.length ||
        values.every((value, index) => value === (values[0] ?? 0) + index)
      )
        return []
      const isPressure = values.every(
        (value) => Math.abs(value) >= LEAST && Math.abs(value) <= PRESSURES.most,
      )
      if (isPressure && fits(values, flows)) return [{ about: 'pressure', columns: [pressure, column] }]
      return fits(pressures, values) ? [{ about: 'flow', columns: [...carriers, column] }] : []
    })
    .slice(0, 1)
}
