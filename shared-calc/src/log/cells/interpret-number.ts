import { cellText } from '../../catalogue/findings/log/cells.js'
import { runText } from '../../catalogue/findings/log/runs.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { quoted } from '../../catalogue/words.js'
import type { Cell } from '../grid/grid.js'
import type { LogProblemCode } from '../problem.js'
import { isDateFormat, isTimeFormat } from './dates.js'
import { type Interpreted, notNumber, type Reading } from './interpreted.js'
import { readNumberText } from './number-text.js'
import {
  conversionText,
  formatUnit,
  type KnownUnit,
  type QuantityKind,
  RECORD_UNITS,
  shown,
  toRecordUnit,
} from './units.js'
import { APPROXIMATE, type Written, writtenIn } from './written.js'

/** A physical quantity, in the unit records use for it. */
export function quantity(cell: Cell, kind: keyof typeof RECORD_UNITS, reading: Reading): Interpreted {
  const base: KnownUnit = { kind, unit: RECORD_UNITS[kind] }
  if (cell.kind === 'boolean') return notNumber(cell)
  if (cell.kind === 'number') {
    if (kind === 'time' && isTimeFormat(cell.format))
      return { value: Number(cell.value) * DAY_SECONDS, remarks: [cellText('log-unit/clock')] }
    if (isDateFormat(cell.format) || (kind !== 'time' && isTimeFormat(cell.format)))
      return {
        refused: 'not-a-number',
        message: `the cell is formatted as a date or time (${cell.format}); a ${kind} is expected`,
      }
    const { unit, percent } = formatUnit(cell.format)
    if (percent) {
      if (kind !== 'fraction')
        return {
          refused: 'unknown-unit',
          message: `the cell is formatted as per cent; a ${kind} is expected`,
        }
      return { value: Number(cell.value), remarks: [], ownUnit: true }
    }
    return owning(
      unit,
      converted(
        Number(cell.value),
        unit ?? reading.unit ?? base,
        kind,
        remarkOnFormat(unit, reading.unit ?? base),
      ),
    )
  }
  const read = numberIn(cell, reading, kind)
  if ('refused' in read) return read
  const { unit, note } = read
  const remarks = [...read.remarks]
  if (unit && unit.unit !== (reading.unit ?? base).unit)
    remarks.push(cellText('log-unit-in-cell', { unit: shown(unit.unit) }))
  if (note !== undefined)
    remarks.push(
      note === APPROXIMATE ? cellText('log-remark/approximate') : cellText('log-remark', { remark: note }),
    )
  return owning(unit, converted(read.value, unit ?? reading.unit ?? base, kind, remarks))
}

function owning(unit: KnownUnit | undefined, result: Interpreted): Interpreted {
  return unit && !('refused' in result) ? { ...result, ownUnit: true } : result
}

const DAY_SECONDS = 86_400
function remarkOnFormat(unit: KnownUnit | undefined, expected: KnownUnit): Remark[] {
  if (!unit || unit.unit === expected.unit) return []
  return [cellText('log-unit-in-format', { unit: shown(unit.unit), expected: shown(expected.unit) })]
}

function converted(
  value: number,
  from: KnownUnit,
  kind: keyof typeof RECORD_UNITS,
  remarks: Remark[],
): Interpreted {
  if (from.kind !== kind)
    return {
      refused: 'unknown-unit',
      message: `${shown(from.unit)} is a unit of ${from.kind}; a ${kind} is expected`,
    }
  if (from.unit === RECORD_UNITS[kind]) return { value, remarks }
  return {
    value: toRecordUnit(value, from),
    remarks: [...remarks, cellText('log-unit', { unit: shown(from.unit), conversion: conversionText(from) })],
  }
}

/** A number without a unit. */
export function plainNumber(cell: Cell, reading: Reading): Interpreted {
  if (cell.kind === 'number') return { value: Number(cell.value), remarks: [] }
  if (cell.kind === 'boolean') return notNumber(cell)
  const read = numberIn(cell, reading)
  if ('refused' in read) return read
  return read.unit || read.note !== undefined ? notNumber(cell) : { value: read.value, remarks: read.remarks }
}

interface NumberInText extends Written {
  remarks: Remark[]
}

function numberIn(
  cell: Cell,
  { decimal }: Reading,
  kind?: QuantityKind,
): NumberInText | { refused: LogProblemCode; message: string } {
  const shownText = String(cell.value).trim()
  const read = writtenIn(shownText, decimal)
  const digits = readNumberText(shownText, decimal)
  if (!read)
    return kind && digits && 'rest' in digits
      ? {
          refused: 'unknown-unit',
          message: `${quoted(shownText)}: ${quoted(digits.rest)} is not a known unit of ${kind}`,
        }
      : notNumber(cell)
  // What is negative for a book-keeper is a remark beside anything but a pressure.
  if (read.bracketed && kind !== 'pressure') return notNumber(cell)
  if (read.other !== undefined) {
    const message = `${quoted(shownText)} may be ${read.value} or ${read.other}: state "decimal" in the layout, or type the number again`
    return { refused: 'ambiguous-number', message }
  }
  const plain = digits && 'rest' in digits ? digits : undefined
  const { comma = false, grouped = false } = plain ?? {}
  const remarks = [cellText('log-text-number', { comma, grouped })]
  return { ...read, remarks: read.bracketed ? [...remarks, runText('log-brackets')] : remarks }
}
