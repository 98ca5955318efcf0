import { LIMITS } from '../../limits.js'
import { columnIndex, columnLetters } from '../address.js'

/** Characters of expanded formulas kept of one sheet: a file may name one long formula in a million cells. */
const MOST_CHARACTERS = 8_000_000

interface First {
  readonly formula: string
  readonly row: number
  readonly column: number
}

/**
 * Formulas that a file stores once for many cells (ECMA-376 part 1, 18.3.1.40: `t="shared"`): the first cell holds the
 * text, the others only its number, and their references move with them.
 */
export class SharedFormulas {
  readonly #firsts = new Map<string, First>()
  #characters = 0

  /** The formula of a cell that belongs to a group. @param text - as stored; empty in all cells but the first */
  formulaAt(group: string, text: string, row: number, column: number): string {
    if (text !== '') {
      this.#firsts.set(group, { formula: text, row, column })
      return text
    }
    const first = this.#firsts.get(group)
    if (!first || this.#characters > MOST_CHARACTERS) return text
    const moved = moveFormula(first.formula, row - first.row, column - first.column)
    this.#characters += moved.length
    return moved
  }
}

/** Texts and the names of sheets in quotes hold no references. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/
/** A reference to a cell: no part of a name, no function, no sheet. */
const REFERENCE = /(?<![\p{L}\p{N}_.$])(\$?)([A-Z]{1,3})(\$?)([1-9]\d{0,6})(?![\p{L}\p{N}_.(!])/giu

/** A formula as it reads some rows and columns further on; references marked with $ stay. */
export function moveFormula(formula: string, rows: number, columns: number): string {
  return formula
    .split(QUOTED)
    .map((piece, i) =>
      i % 2 === 1
        ? piece
        : piece.replace(
            REFERENCE,
            (whole, fixedColumn: string, letters: string, fixedRow: string, digits: string) => {
              const from = columnIndex(letters.toUpperCase())
              if (from === undefined) return whole
              const column = fixedColumn ? from : from + columns
              const row = fixedRow ? Number(digits) : Number(digits) + rows
              if (column < 0 || column >= LIMITS.columns || row < 1 || row > LIMITS.rows) return '#REF!'
              return `${fixedColumn}${columnLetters(column)}${fixedRow}${row}`
            },
          ),
    )
    .join('')
}
