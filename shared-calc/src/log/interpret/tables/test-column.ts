import type { View } from '../grid/view.js'
import { directionWord, type KnownColumn } from './columns.js'

/** Fewer rows are no test. */
const FEWEST = 3
/** Two tests reach their highest pressures within this share of each other; ranges of one test do not. */
const ALIKE = 0.25

interface Part {
  readonly name: string
  /** Sizes of the pressures of each direction. */
  readonly sizes: Map<string, number[]>
  rows: number
}

/**
 * A column under a heading of its own, as "Lot", whose entries part the rows into tests: each entry stands in rows below one another, and
 * the pressures of a direction begin again with the next. Where no heading names the tests, it does.
 */
export function withTestColumn(
  view: View,
  first: number,
  last: number,
  columns: readonly KnownColumn[],
): readonly KnownColumn[] {
  const pressure = columns.find(({ role }) => role === 'pressure' || role === 'induced')
  if (!pressure || columns.some(({ role }) => role === 'test')) return columns
  const direction = columns.find(({ role }) => role === 'direction')
  const found = columns.find(
    (column) =>
      column.role === 'other' &&
      column.label.text !== '' &&
      column.texts >= 2 * FEWEST &&
      partsTests(partsOf(view, first, last, column, pressure, direction)),
  )
  return found ? columns.map((column) => (column === found ? { ...column, role: 'test' } : column)) : columns
}

function partsOf(
  view: View,
  first: number,
  last: number,
  column: KnownColumn,
  pressure: KnownColumn,
  direction: KnownColumn | undefined,
): Part[] {
  const parts: Part[] = []
  for (let row = first; row <= last; row++) {
    const name = view.text(row, column.at)
    const value = view.number(row, pressure.at)
    if (name === undefined || value === undefined) continue
    let part = parts.at(-1)
    if (part?.name !== name) {
      part = { name, sizes: new Map(), rows: 0 }
      parts.push(part)
    }
    const word = direction && view.text(row, direction.at)
    const way = (word && directionWord(word, direction.label)) ?? (value < 0 ? 'below' : 'above')
    part.rows++
    part.sizes.set(way, [...(part.sizes.get(way) ?? []), Math.abs(value)])
  }
  return parts
}

/** Readings of a run go down from its highest pressure; those of one step stay there. */
const isRun = (sizes: readonly number[]): boolean =>
  sizes.length >= FEWEST && Math.min(...sizes) < 0.7 * Math.max(...sizes)

function partsTests(parts: readonly Part[]): boolean {
  if (parts.length < 2 || new Set(parts.map(({ name }) => name)).size < parts.length) return false
  return (
    parts.every(({ rows }) => rows >= FEWEST) &&
    parts.slice(1).every((part, index) => {
      const before = parts[index] as Part
      return [...part.sizes].some(([way, sizes]) => {
        const others = before.sizes.get(way) ?? []
        return (
          isRun(sizes) && isRun(others) && Math.abs(Math.max(...others) / Math.max(...sizes) - 1) <= ALIKE
        )
      })
    })
  )
}
