import type { Cell } from '../grid/grid.js'
import type { LogProblemCode } from '../problem.js'
import { isDateFormat, isTimeFormat } from './dates.js'
import { type Interpreted, notNumber, quote, type Reading, type Remark } from './interpreted.js'
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
      return { value: Number(cell.value) * DAY_SECONDS, remarks: [CLOCK] }
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
    remarks.push({
      severity: 'note',
      rule: 'log-unit-in-cell',
      message: `the cell names its own unit, ${shown(unit.unit)}, and it was used`,
    })
  if (note !== undefined) remarks.push(besides(note))
  return owning(unit, converted(read.value, unit ?? reading.unit ?? base, kind, remarks))
}

const besides = (note: string): Remark => ({
  severity: 'caution',
  rule: 'log-remark',
  message:
    note === APPROXIMATE
      ? 'the number is marked as approximate; it was read'
      : `the remark ${quote(note)} after the number was left out`,
})

function owning(unit: KnownUnit | undefined, result: Interpreted): Interpreted {
  return unit && !('refused' in result) ? { ...result, ownUnit: true } : result
}

const DAY_SECONDS = 86_400
const CLOCK: Remark = {
  severity: 'note',
  rule: 'log-unit',
  message: 'the cell is formatted as a time; its part of a day was converted to s',
}

function remarkOnFormat(unit: KnownUnit | undefined, expected: KnownUnit): Remark[] {
  if (!unit || unit.unit === expected.unit) return []
  const message = `the cell's number format shows ${shown(unit.unit)} where ${shown(expected.unit)} is expected; the shown unit was used`
  return [{ severity: 'caution', rule: 'log-unit-in-format', message }]
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
  const message = `converted from ${shown(from.unit)} (${conversionText(from)})`
  return {
    value: toRecordUnit(value, from),
    remarks: [...remarks, { severity: 'note', rule: 'log-unit', message }],
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
          message: `${quote(shownText)}: ${quote(digits.rest)} is not a known unit of ${kind}`,
        }
      : notNumber(cell)
  if (read.other !== undefined) {
    const message = `${quote(shownText)} may be ${read.value} or ${read.other}: state "decimal" in the layout, or type the number again`
    return { refused: 'ambiguous-number', message }
  }
  const plain = digits && 'rest' in digits ? digits : undefined
  const how = [plain?.comma ? 'a decimal comma' : '', plain?.grouped ? 'grouped digits' : '']
    .filter(Boolean)
    .join(' and ')
  const message = `the number is stored as text${how ? ` with ${how}` : ''} and was read as a number`
  return { ...read, remarks: [{ severity: 'note', rule: 'log-text-number', message }] }
}
