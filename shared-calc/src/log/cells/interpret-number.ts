import { cellText } from '../../catalogue/findings/log/cells.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { quoted } from '../../catalogue/words.js'
import type { Cell } from '../grid/grid.js'
import type { LogProblemCode } from '../problem.js'
import { isDateFormat, isTimeFormat } from './dates.js'
import { type Interpreted, notNumber, type Reading } from './interpreted.js'
import { readNumberText } from './number-text.js'
import {
  conversionText,
  findUnit,
  formatUnit,
  type KnownUnit,
  RECORD_UNITS,
  shown,
  toRecordUnit,
} from './units.js'

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
  const read = numberIn(cell, reading)
  if ('refused' in read) return read
  const { unit, note } = splitRest(read.rest)
  if (read.rest && !unit && note === undefined)
    return {
      refused: 'unknown-unit',
      message: `${quoted(String(cell.value))}: ${quoted(read.rest)} is not a known unit of ${kind}`,
    }
  const remarks = [...read.remarks]
  if (unit && unit.unit !== (reading.unit ?? base).unit)
    remarks.push(cellText('log-unit-in-cell', { unit: shown(unit.unit) }))
  if (note) remarks.push(cellText('log-remark', { remark: note }))
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
  return read.rest ? notNumber(cell) : { value: read.value, remarks: read.remarks }
}

function numberIn(
  cell: Cell,
  { decimal }: Reading,
): { value: number; rest: string; remarks: Remark[] } | { refused: LogProblemCode; message: string } {
  const shownText = String(cell.value).trim()
  const read = readNumberText(shownText, decimal)
  if (!read) return notNumber(cell)
  if ('ambiguous' in read) {
    const [grouped, fraction] = read.ambiguous
    const message = `${quoted(shownText)} may be ${grouped} or ${fraction}: state "decimal" in the layout, or type the number again`
    return { refused: 'ambiguous-number', message }
  }
  const { value, rest, comma, grouped } = read
  return { value, rest, remarks: [cellText('log-text-number', { comma, grouped })] }
}

/** Unit and remark of what stands after a number: "Pa (gust)" → Pa and "(gust)". A second number is never a remark. */
function splitRest(rest: string): { unit?: KnownUnit; note?: string } {
  if (!rest) return {}
  const whole = findUnit(rest)
  if (whole) return { unit: whole }
  for (let end = rest.length - 1; end > 0; end--) {
    if (!/[\s(*[,;]/.test(rest[end] as string)) continue
    const unit = findUnit(rest.slice(0, end))
    const note = rest.slice(end).trim()
    if (unit && isRemark(note)) return { unit, note }
  }
  return /^[(*[]/.test(rest) && isRemark(rest) ? { note: rest } : {}
}

function isRemark(text: string): boolean {
  return /^[([].*[)\]]$/.test(text) || !/\d/.test(text)
}
