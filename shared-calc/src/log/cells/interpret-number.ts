import { cellText } from '../../catalogue/findings/log/cells.js'
import { runText } from '../../catalogue/findings/log/runs.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { quoted } from '../../catalogue/words.js'
import type { Cell } from '../grid/grid.js'
import { isDateFormat, isTimeFormat } from './dates.js'
import { type Interpreted, notNumber, type Reading, type Refused, refusedUnless } from './interpreted.js'
import { type NumberInCell, numberInCell } from './number-in-cell.js'
import { readNumberText } from './number-text.js'
import {
  conversionText,
  type KnownUnit,
  type QuantityKind,
  RECORD_UNITS,
  shown,
  toRecordUnit,
} from './units.js'
import { APPROXIMATE, type Written } from './written.js'

/** A physical quantity, in the unit records use for it. */
export function quantity(cell: Cell, kind: keyof typeof RECORD_UNITS, reading: Reading): Interpreted {
  const base: KnownUnit = { kind, unit: RECORD_UNITS[kind] }
  if (cell.kind === 'number') {
    if (kind === 'time' && isTimeFormat(cell.format))
      return { value: Number(cell.value) * DAY_SECONDS, remarks: [cellText('log-unit/clock')] }
    if (isDateFormat(cell.format) || (kind !== 'time' && isTimeFormat(cell.format)))
      return {
        refused: 'not-a-number',
        message: `the cell is formatted as a date or time (${cell.format}); a ${kind} is expected`,
      }
  }
  const read = numberIn(cell, reading, kind)
  if ('refused' in read) return read
  if (read.percent) {
    if (kind !== 'fraction')
      return {
        refused: 'unknown-unit',
        message: `the cell is formatted as a percentage; a ${kind} is expected`,
      }
    return { value: read.value, remarks: [], ownUnit: true }
  }
  return inRecordUnit(read, reading.unit ?? base, kind)
}

/**
 * A number as it is in the log in the unit records use, with everything that has to be said about it.
 * @param expected - unit stated elsewhere; the cell's own unit takes precedence
 */
export function inRecordUnit(written: Written, expected: KnownUnit, kind = expected.kind): Interpreted {
  const { value, unit = expected, note, unitBy, remarks = [] } = written
  if (unit.kind !== kind)
    return {
      refused: 'unknown-unit',
      message: `${shown(unit.unit)} is a unit of ${unit.kind}; a ${kind} is expected`,
    }
  const told = [...remarks]
  if (written.bracketed && kind === 'pressure' && value < 0) told.push(runText('log-brackets'))
  if (unit.unit !== expected.unit && unitBy !== 'heading')
    told.push(
      unitBy === 'format'
        ? cellText('log-unit-in-format', { unit: shown(unit.unit), expected: shown(expected.unit) })
        : cellText('log-unit-in-cell', { unit: shown(unit.unit) }),
    )
  told.push(...remarkOnNote(note))
  // A percentage is the same number written in another way.
  if (unit.unit !== RECORD_UNITS[unit.kind] && unit.unit !== 'percent')
    told.push(cellText('log-unit', { unit: shown(unit.unit), conversion: conversionText(unit) }))
  return {
    value: toRecordUnit(value, unit),
    remarks: told,
    ...(written.unit ? { ownUnit: true } : {}),
  }
}

/** What is said about the words next to a number. */
export function remarkOnNote(note: string | undefined): Remark[] {
  if (note === undefined) return []
  return [
    note === APPROXIMATE ? cellText('log-remark/approximate') : cellText('log-remark', { remark: note }),
  ]
}

const DAY_SECONDS = 86_400

/** A number without a unit. */
export function plainNumber(cell: Cell, reading: Reading): Interpreted {
  if (cell.kind === 'number') return { value: Number(cell.value), remarks: [] }
  const read = numberIn(cell, reading)
  if ('refused' in read) return read
  return read.unit || read.note !== undefined
    ? notNumber(cell)
    : { value: read.value, remarks: [...(read.remarks ?? [])] }
}

/** "9O.3", "4l2.7": a letter that looks like a figure, among figures. */
const TAKEN_FOR_DIGIT = /^[-−+\d.,]*\d([OoQlISBZ])(?=[\d.,])/

function numberIn(cell: Cell, { decimal }: Reading, kind?: QuantityKind): NumberInCell | Refused {
  const read = numberInCell(cell, decimal)
  if (!read) {
    const shownText = String(cell.value).trim()
    const digits = kind && readNumberText(shownText, decimal)
    const letter = TAKEN_FOR_DIGIT.exec(shownText)?.[1]
    if (letter)
      return {
        refused: 'not-a-number',
        message: `${quoted(shownText)} has the letter ${letter} in its number`,
      }
    return digits && 'rest' in digits
      ? {
          refused: 'unknown-unit',
          message: `${quoted(shownText)}: ${quoted(digits.rest)} is not a known unit of ${kind}`,
        }
      : notNumber(cell)
  }
  // Brackets mean negative to a book-keeper; beside anything but a pressure they are a remark.
  if (read.bracketed && kind !== 'pressure') return notNumber(cell)
  if (read.other !== undefined) {
    return refusedUnless(
      'ambiguous-number',
      `${quoted(String(cell.value).trim())} may be ${read.value} or ${read.other}`,
      'state "decimal" in the layout, or type the number again',
    )
  }
  return read
}
