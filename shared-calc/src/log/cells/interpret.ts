import type { Cell } from '../grid/grid.js'
import type { FieldKind } from './fields.js'
import { plainNumber, quantity } from './interpret-number.js'
import { choice, date, text } from './interpret-words.js'
import type { Interpreted, Reading } from './interpreted.js'
import { remarksOn } from './number-in-cell.js'

export type { Interpreted, Reading }

/** What to do about a formula of which the file holds no result, as some programs write it. */
export const RECALCULATE =
  'the cell holds a formula without a stored result: open the log in a spreadsheet program, recalculate it and save it'

/** The record value a cell stands for, with everything that had to be converted or left out to get it. */
export function interpret(cell: Cell, field: FieldKind, reading: Reading): Interpreted {
  if (cell.kind === 'error')
    return { refused: 'error-value', message: `the cell shows the error ${String(cell.value)}` }
  if (cell.kind === 'unstored')
    return {
      refused: 'formula-without-result',
      message: RECALCULATE,
    }
  const remarks = remarksOn(cell)
  const live = cell.struck === 'part' ? { ...cell, value: cell.unstruck ?? '' } : cell
  const result = byKind(live, field, reading)
  if ('refused' in result || remarks.length === 0) return result
  return { ...result, remarks: [...remarks, ...result.remarks] }
}

function byKind(cell: Cell, field: FieldKind, reading: Reading): Interpreted {
  switch (field.kind) {
    case 'quantity':
      return quantity(cell, field.quantity, reading)
    case 'number':
    case 'whole':
      return plainNumber(cell, reading)
    case 'date':
      return date(cell, reading)
    case 'choice':
      return choice(cell, { ...field.words, ...reading.words }, field.open ?? false)
    case 'text':
      // A layout may give words for a text as well: a target's name for its id.
      return reading.words ? choice(cell, reading.words, true) : text(cell, reading)
  }
}
