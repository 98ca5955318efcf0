import { cellText } from '../../catalogue/findings/log/cells.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import type { Cell } from '../grid/grid.js'
import { readNumberText } from './number-text.js'
import { formatUnit } from './units.js'
import { type Written, writtenIn } from './written.js'

/** A number as its cell holds it, with the unit that the cell or its number format names. */
export interface NumberInCell extends Written {
  /** The number format shows per cent; the number is the share. */
  readonly percent?: true
}

/** The number in a cell of numbers or text, and how it had to be read; undefined where the cell holds more than a number. */
export function numberInCell(cell: Cell, decimal: '.' | ',' | undefined): NumberInCell | undefined {
  if (cell.kind === 'number') {
    const { unit, percent } = formatUnit(cell.format)
    return {
      value: Number(cell.value),
      ...(unit ? { unit, unitBy: 'format' as const } : {}),
      ...(percent ? { percent } : {}),
    }
  }
  return cell.kind === 'text' ? numberInText(String(cell.value).trim(), decimal) : undefined
}

/** The same of a text that is typed, or part of a cell. */
export function numberInText(text: string, decimal: '.' | ',' | undefined): Written | undefined {
  const written = writtenIn(text, decimal)
  if (!written) return undefined
  const digits = readNumberText(text, decimal)
  const { comma = false, grouped = false } = digits && 'rest' in digits ? digits : {}
  return { ...written, remarks: [cellText('log-text-number', { comma, grouped })] }
}

/** What is said about a cell before anything else: its number is a result, or part of it is struck through. */
export function remarksOn(cell: Cell): Remark[] {
  const remarks: Remark[] = []
  if (cell.refersTo !== undefined) remarks.push(cellText('log-formula/reference', { cell: cell.refersTo }))
  else if (cell.formula !== undefined) remarks.push(cellText('log-formula'))
  if (cell.struck === 'part') remarks.push(cellText('log-struck-through/part', { rest: cell.unstruck ?? '' }))
  return remarks
}
