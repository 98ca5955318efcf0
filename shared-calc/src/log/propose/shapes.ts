import { addressOf, blockText } from '../grid/address.js'
import type { Sheet } from '../grid/grid.js'
import { cellText, isNumberLike, numberOf } from './survey.js'
import type { FoundTable } from './tables.js'

/** At least so many rows are needed to tell a curve from chance. */
const ROWS = 5
/** More rows than a table of readings has. */
const LONGEST = 200
/** So many numbers may stand right above a table without a blank: trying every row of a long column takes its square. */
const ABOVE = 5

/**
 * Tables without a heading anyone knows, by the shape of their numbers: one column of 5 to 120 Pa either way, and beside
 * it one that rises with it. A weak guess: people must look.
 */
export function findShapes(sheet: Sheet): FoundTable[] {
  for (let column = 0; column < Math.min(sheet.columns, 40); column++) {
    let above = 0
    for (let row = 0; row < Math.min(sheet.rows, 200); row++) {
      above = isNumberLike(sheet.at(row - 1, column)) ? above + 1 : 0
      if (above > ABOVE) continue
      const rows = runLength(sheet, row, column)
      if (rows < ROWS) continue
      const pressures = numbersOf(sheet, row, column, rows)
      if (!pressures.every((value) => Math.abs(value) >= 5 && Math.abs(value) <= 120)) continue
      for (const beside of [column + 1, column + 2, column - 1]) {
        if (beside < 0 || runLength(sheet, row, beside) < rows) continue
        const flows = numbersOf(sheet, row, beside, rows)
        if (!flows.every((value) => value > 0) || rising(pressures.map(Math.abs), flows) < 0.9) continue
        return [tableOf(sheet, row, rows, column, beside, pressures)]
      }
    }
  }
  return []
}

function tableOf(
  sheet: Sheet,
  row: number,
  rows: number,
  column: number,
  beside: number,
  pressures: readonly number[],
): FoundTable {
  const range = (at: number) => blockText({ top: row, bottom: row + rows - 1, left: at, right: at })
  const negative = pressures.every((value) => value < 0)
  const direction = negative
    ? 'depressurisation'
    : pressures.some((value) => value < 0)
      ? 'by sign'
      : 'pressurisation'
  const reason = `no heading is known, but ${range(beside)} rises with ${range(column)}, whose numbers look like pressure differences`
  return {
    row,
    column,
    run: { direction, pressure: { at: { range: range(column) } }, flow: { at: { range: range(beside) } } },
    guesses: [
      { path: 'pressure', cells: [cellText(sheet, { row, column })], reason, confidence: 0.3 },
      { path: 'flow', cells: [cellText(sheet, { row, column: beside })], reason, confidence: 0.3 },
      {
        path: 'direction',
        cells: [cellText(sheet, { row, column })],
        reason: 'by the sign of the pressures',
        confidence: 0.3,
      },
    ],
    questions: [
      `are ${range(column)} pressures in Pa and ${range(beside)} flows in m³/h? ${addressOf(row, column)} has no heading`,
    ],
  }
}

function runLength(sheet: Sheet, row: number, column: number): number {
  let length = 0
  while (length < LONGEST && isNumberLike(sheet.at(row + length, column))) length++
  return length
}

function numbersOf(sheet: Sheet, row: number, column: number, rows: number): number[] {
  return Array.from({ length: rows }, (_, index) => numberOf(sheet.at(row + index, column)) ?? Number.NaN)
}

/** Share of pairs that are in the same order in both lists (Kendall's tau, from −1 to 1). */
function rising(first: readonly number[], second: readonly number[]): number {
  let sum = 0
  let pairs = 0
  for (let i = 0; i < first.length; i++)
    for (let j = i + 1; j < first.length; j++) {
      sum += Math.sign(
        ((first[j] as number) - (first[i] as number)) * ((second[j] as number) - (second[i] as number)),
      )
      pairs++
    }
  return pairs === 0 ? 0 : sum / pairs
}
