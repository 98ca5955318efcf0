import { fieldKind } from '../cells/fields.js'
import { interpret } from '../cells/interpret.js'
import type { Grid, Sheet } from '../grid/grid.js'
import { readHeading } from '../layout/match.js'
import type { Layout, LayoutInput } from '../layout/schema.js'
import { guessField } from './dictionary.js'
import { cellText, type Label, nameOf, nthOf, placeKey } from './survey.js'

/** One thing found: which field, where, why, and how sure. */
export interface Guess {
  /** Path of the field, as in `building.volume_m3` or `runs[0].pressure`. */
  path: string
  cells: string[]
  reason: string
  /** 0 to 1; own scale, no source: below 0.6 look twice. */
  confidence: number
}

/** A layout found by looking at the log itself. Nothing of it is used before someone confirms it. */
export interface Proposal {
  layout?: Layout
  guesses: Guess[]
  /** Fields that a record needs, or that an evaluation misses, and that were not found. */
  notFound: string[]
  /** What to decide before use. */
  questions: string[]
  /** The least of the guesses. */
  confidence: number
}

export type FieldInput = LayoutInput['fields'][number]

export interface FoundField {
  field: FieldInput
  guess: Guess
}

/** Single values of a sheet by their labels: the value is the next filled cell to the right, or the cell below. */
export function findFields(
  grid: Grid,
  sheet: Sheet,
  labels: readonly Label[],
  taken: ReadonlySet<string>,
): FoundField[] {
  const guesses = new Map(
    labels.map(({ row, column, text }) => [placeKey(row, column), guessField(text)] as const),
  )
  const found = labels.flatMap((label): FoundField[] => {
    const guess = taken.has(cellText(sheet, label))
      ? undefined
      : guesses.get(placeKey(label.row, label.column))
    if (!guess) return []
    const isLabel = (row: number, column: number) => guesses.get(placeKey(row, column))?.fit === 0.95
    const value = valueBeside(grid, sheet, label, guess.what, isLabel)
    if (!value) return []
    const plausible = value.readable ? '' : '; but it cannot be read as one yet'
    return [
      {
        field: {
          path: guess.what,
          at: {
            label: nameOf(label),
            ...nthOf(labels, label),
            ...(value.side === 'below' ? { side: 'below' } : {}),
          },
        },
        guess: {
          path: guess.what,
          cells: [cellText(sheet, label), cellText(sheet, value)],
          reason: `the label ${JSON.stringify(label.text)} has the term "${guess.term}"; its value stands ${value.side === 'below' ? 'below it' : 'to its right'}${plausible}`,
          confidence:
            Math.round(
              100 *
                Math.max(0.05, guess.fit - (value.readable ? 0 : 0.3) - (value.side === 'below' ? 0.1 : 0)),
            ) / 100,
        },
      },
    ]
  })
  const best = new Map<string, FoundField>()
  for (const one of found)
    if (one.guess.confidence > (best.get(one.field.path)?.guess.confidence ?? 0))
      best.set(one.field.path, one)
  return [...best.values()]
}

function valueBeside(
  grid: Grid,
  sheet: Sheet,
  { row, column }: Label,
  path: string,
  isLabel: (row: number, column: number) => boolean,
) {
  const from = (sheet.mergeAt(row, column)?.right ?? column) + 1
  for (let at = from; at < from + 6; at++) {
    const cell = sheet.at(row, at)
    if (!cell || String(cell.value).trim() === ':') continue
    // Another label of the form ends the search: this one has no value beside it.
    if (isLabel(row, at)) break
    return {
      row,
      column: at,
      side: 'right' as const,
      readable: readable(grid, sheet, { row, column: at }, path),
    }
  }
  const below = { row: (sheet.mergeAt(row, column)?.bottom ?? row) + 1, column }
  if (
    sheet.at(below.row, below.column) &&
    readable(grid, sheet, below, path) &&
    fieldKind(path).kind !== 'text'
  )
    return { ...below, side: 'below' as const, readable: true }
  return undefined
}

function readable(grid: Grid, sheet: Sheet, place: { row: number; column: number }, path: string): boolean {
  const cell = sheet.at(place.row, place.column)
  if (!cell) return false
  const beside = sheet.at(place.row, place.column + 1)
  const unit = beside?.kind === 'text' ? readHeading(`x (${String(beside.value)})`).unit : undefined
  const result = interpret(cell, fieldKind(path), {
    date1904: grid.date1904,
    ...(grid.decimal ? { decimal: grid.decimal } : {}),
    ...(unit && fieldKind(path).kind === 'quantity' ? { unit } : {}),
  })
  return !('refused' in result)
}
