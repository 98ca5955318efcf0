import type { ColumnRole, WordGuess } from './dictionary.js'
import type { Label } from './survey.js'

/** A heading or row label understood as a column of readings, with its numbers. */
export interface Line {
  label: Label
  guess: WordGuess<ColumnRole>
  across: boolean
  skip: number
  values: number[]
}

/** Rows a line across may be away from the pressures it belongs to. */
const NEAR = 4

/** The lines that can be mates: those down the sheet by the row of their heading, those across it by its column. */
export interface LinesByPlace {
  down: ReadonlyMap<number, readonly Line[]>
  across: ReadonlyMap<number, readonly Line[]>
  /** Rows that hold pressures across the sheet. */
  pressureRows: ReadonlySet<number>
}

/** Sorts the lines of a sheet, so that a pressure's mates are found without looking at all of them: a sheet may have thousands. */
export function linesByPlace(lines: readonly Line[]): LinesByPlace {
  const isPressure = ({ guess }: Line) => guess.what === 'pressure'
  const down = lines.filter((line) => !line.across)
  const across = lines.filter((line) => line.across)
  return {
    down: grouped(down, ({ label }) => label.row),
    across: grouped(across, ({ label }) => label.column),
    pressureRows: new Set(across.filter(isPressure).map(({ label }) => label.row)),
  }
}

/** Columns of one table stand in the same row, between this pressure and the next; lines across in neighbouring rows. */
export function matesOf(pressure: Line, { down, across, pressureRows }: LinesByPlace): Line[] {
  const { row, column } = pressure.label
  if (pressure.across)
    return (across.get(column) ?? []).filter(
      (line) =>
        line !== pressure &&
        Math.abs(line.label.row - row) <= NEAR &&
        !anyBetween(row, line.label.row, (at) => pressureRows.has(at)),
    )
  const inRow = down.get(row) ?? []
  const pressureColumns = new Set(
    inRow.filter(({ guess }) => guess.what === 'pressure').map(({ label }) => label.column),
  )
  return inRow.filter(
    (line) =>
      line !== pressure &&
      (line.guess.what === 'direction' ||
        line.guess.what === 'time' ||
        !anyBetween(column, line.label.column, (at) => pressureColumns.has(at))),
  )
}

function anyBetween(one: number, other: number, holds: (at: number) => boolean): boolean {
  for (let at = Math.min(one, other) + 1; at < Math.max(one, other); at++) if (holds(at)) return true
  return false
}

function grouped(lines: readonly Line[], key: (line: Line) => number): Map<number, Line[]> {
  const groups = new Map<number, Line[]>()
  for (const line of lines) {
    const group = groups.get(key(line))
    if (group) group.push(line)
    else groups.set(key(line), [line])
  }
  return groups
}
