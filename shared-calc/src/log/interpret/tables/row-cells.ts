import type { Direction } from '../../../contract/record/index.js'
import { toRecordUnit } from '../../cells/units.js'
import type { Written } from '../../cells/written.js'
import type { Content } from '../grid/cell-content.js'
import type { View } from '../grid/view.js'
import { type Label, says } from '../words/label.js'
import { directionWord, type KnownColumn } from './columns.js'
import { withBracketDoubts } from './row-doubts.js'
import type { TableRow } from './table-row.js'

/** With the fan off no house is at more than this, Pa; a reading without flow above it lacks its flow. */
export const ZERO_FLOW_MOST = 12

/** Readings of which some are written in brackets. */
export function withBrackets(rows: readonly TableRow[]): TableRow[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  if (
    !readings.some(({ pressure, carriers }) => pressure.bracketed || carriers.some((one) => one?.bracketed))
  )
    return [...rows]
  const judged = withBracketDoubts(readings)
  return rows.map((row) => judged[readings.indexOf(row)] ?? row)
}

/** A pressure in Pa where its unit is stated, else as it stands. */
export function inPa({ value, unit }: Written, column: KnownColumn): number {
  const own = unit ?? column.unit
  return own?.kind === 'pressure' ? toRecordUnit(value, own) : value
}

export const carriedOf = ({
  direction,
  test,
}: {
  direction?: Direction | undefined
  test?: string | undefined
}) => ({
  ...(direction ? { direction } : {}),
  ...(test ? { test } : {}),
})

/** A row is hidden as a whole, or with all the columns that are read; one hidden column of several hides nothing. */
export const isHidden = (view: View, row: number, used: readonly KnownColumn[]): boolean =>
  used.every(({ at }) => view.hidden(row, at))

/** "Depressurisation before | −1.4": it stands for zero flow, as its title far above may say. */
export const isOfMoment = (said: Label): boolean => says(said, 'before') !== says(said, 'after')

export const isSmall = (content: Content | undefined, pressure: KnownColumn): boolean =>
  content?.kind === 'number' && Math.abs(inPa(content.written, pressure)) <= ZERO_FLOW_MOST

export function directionOf(view: View, row: number, column: KnownColumn) {
  const text = view.text(row, column.at)
  return text === undefined ? undefined : directionWord(text, column.label)
}

export function textAt(view: View, row: number, column: number): string | undefined {
  const content = view.at(row, column)
  if (content?.kind === 'text') return content.text
  return content?.kind === 'number' ? String(content.written.value) : undefined
}
