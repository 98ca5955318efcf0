import type { Sheet } from './write/sheet.js'

/** What somebody does to a table of readings: a word between or over them, the block once more, units in other words. */
export type TableChange = {
  readonly kind:
    | 'note row'
    | 'word for a reading'
    | 'target row'
    | 'repeated block'
    | 'merged heading'
    | 'units in words'
  readonly at: number
}

/** The table in the left half of a sheet: its two first columns of numbers below one another. */
interface Table {
  readonly first: number
  readonly last: number
  readonly pressure: number
  readonly flow: number
}

const NOTES = ['gust, waited', 'plate changed', 'door opened, repeated']
const WORDS = ['not read', 'gust', '?']
const TARGETS = ['Target', 'Soll', 'Zielwert']
const FEWEST = 5

const numberAt = (sheet: Sheet, row: number, column: number): boolean =>
  typeof sheet.at(row, column)?.value === 'number'

function tableOf(sheet: Sheet): Table | undefined {
  const { rows, columns } = sheet.size
  for (let row = 1; row <= rows; row++)
    for (let column = 1; column < columns; column++) {
      let last = row
      const goesOn = (at: number) => numberAt(sheet, at, column) && numberAt(sheet, at, column + 1)
      while (goesOn(last)) last++
      // A column that numbers the readings is none of them.
      const isCount = sheet.at(row, column)?.value === 1 && sheet.at(row + 1, column)?.value === 2
      if (last - row >= FEWEST && !isCount)
        return { first: row, last: last - 1, pressure: column, flow: column + 1 }
    }
  return undefined
}

const below = (sheet: Sheet, from: number, by = 1): Sheet =>
  sheet.moved((row, column) => [row >= from ? row + by : row, column])

/** The sheet after the change; undefined where it has no place for it. */
export function changedTable(sheet: Sheet, { kind, at }: TableChange): Sheet | undefined {
  const table = tableOf(sheet)
  if (!table) return undefined
  const { first, last, pressure, flow } = table
  const row = first + 1 + (at % (last - first))
  const pick = (words: readonly string[]) => words[at % words.length] as string
  switch (kind) {
    case 'note row': {
      const copy = below(sheet, row)
      copy.put(row, at % 2 === 0 ? pressure : flow, pick(NOTES))
      return copy
    }
    case 'word for a reading': {
      const copy = below(sheet, Number.POSITIVE_INFINITY)
      copy.put(row - 1, pressure, pick(WORDS))
      return copy
    }
    case 'target row': {
      if (pressure === 1 || sheet.at(first, pressure - 1)) return undefined
      const copy = below(sheet, first)
      copy.put(first, pressure - 1, pick(TARGETS))
      copy.put(first, pressure, 50)
      copy.put(first, flow, 300)
      return copy
    }
    case 'repeated block': {
      const copy = below(sheet, Number.POSITIVE_INFINITY)
      const start = sheet.size.rows + 3
      for (let from = first - 1; from <= last; from++)
        for (const column of [pressure, flow])
          copy.put(start + from - first, column, sheet.at(from, column)?.value)
      return copy
    }
    case 'merged heading': {
      const copy = below(sheet, first - 1)
      copy.wide(first - 1, pressure, 2, 'Readings, averages of 20 s')
      return copy
    }
    case 'units in words': {
      const copy = below(sheet, Number.POSITIVE_INFINITY)
      for (const [key, cell] of sheet.cells)
        if (typeof cell.value === 'string')
          copy.cells.set(key, {
            ...cell,
            value: cell.value.replace('m³/h', 'cubic metres per hour').replace(/\bPa\b/, 'pascals'),
          })
      return copy
    }
  }
}
