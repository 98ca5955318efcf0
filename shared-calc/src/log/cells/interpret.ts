import type { Cell } from '../grid/grid.js'
import type { LogProblemCode } from '../problem.js'
import { type DateOrder, dateOfSerial, isDateFormat, isTimeFormat, readDateText } from './dates.js'
import { type FieldKind, plainWord } from './fields.js'
import { formatUnit } from './format-unit.js'
import { readNumberText } from './number-text.js'
import { conversionText, findUnit, type KnownUnit, RECORD_UNITS, shown, toRecordUnit } from './units.js'

/** What the layout says of a field beyond its place. */
export interface Reading {
  unit?: KnownUnit
  decimal?: '.' | ','
  dateOrder?: DateOrder
  /** The log's own words for the values of a choice. */
  words?: Readonly<Record<string, string>>
  date1904?: boolean
}

/** Something to tell of a cell: a conversion, an assumption, a remark left out. */
export interface Remark {
  severity: 'caution' | 'note'
  rule: string
  message: string
  remedy?: string
}

export type Interpreted =
  | { value: number | string; remarks: Remark[] }
  | { refused: LogProblemCode; message: string }

/** The record value a cell stands for, with everything that had to be converted or left out to get it. */
export function interpret(cell: Cell, field: FieldKind, reading: Reading): Interpreted {
  if (cell.kind === 'error')
    return { refused: 'error-value', message: `the cell shows the error ${String(cell.value)}` }
  if (cell.kind === 'unstored')
    return {
      refused: 'formula-without-result',
      message:
        'the cell holds a formula without a stored result: open the log in a spreadsheet program, recalculate and save it',
    }
  const remarks = generalRemarks(cell)
  const live = cell.struck === 'part' ? { ...cell, value: cell.unstruck ?? '' } : cell
  const result = byKind(live, field, reading)
  return 'refused' in result ? result : { ...result, remarks: [...remarks, ...result.remarks] }
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
      return choice(cell, { ...field.words, ...reading.words })
    case 'text':
      return text(cell, reading)
  }
}

function generalRemarks(cell: Cell): Remark[] {
  const remarks: Remark[] = []
  if (cell.formula !== undefined)
    remarks.push({
      severity: 'note',
      rule: 'log-formula',
      message: 'the cell holds a formula; its stored result was read',
    })
  if (cell.struck === 'part')
    remarks.push({
      severity: 'caution',
      rule: 'log-struck-through',
      message: `part of the cell is struck through; only ${quote(cell.unstruck ?? '')} was read`,
    })
  return remarks
}

function quantity(cell: Cell, kind: keyof typeof RECORD_UNITS, reading: Reading): Interpreted {
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
      return { value: Number(cell.value), remarks: [] }
    }
    return converted(
      Number(cell.value),
      unit ?? reading.unit ?? base,
      kind,
      remarkOnFormat(unit, reading.unit ?? base),
    )
  }
  const read = numberIn(cell, reading)
  if ('refused' in read) return read
  const { unit, note } = splitRest(read.rest)
  if (read.rest && !unit && note === undefined)
    return {
      refused: 'unknown-unit',
      message: `${quote(String(cell.value))}: ${quote(read.rest)} is no unit of ${kind} this reader knows`,
    }
  const remarks = [...read.remarks]
  if (unit && unit.unit !== (reading.unit ?? base).unit)
    remarks.push({
      severity: 'note',
      rule: 'log-unit-in-cell',
      message: `the cell names its own unit, ${shown(unit.unit)}, and it was used`,
    })
  if (note)
    remarks.push({
      severity: 'caution',
      rule: 'log-remark',
      message: `the remark ${quote(note)} after the number was left out`,
    })
  return converted(read.value, unit ?? reading.unit ?? base, kind, remarks)
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

function plainNumber(cell: Cell, reading: Reading): Interpreted {
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
    const message = `${quote(shownText)} may be ${grouped} or ${fraction}: state "decimal" in the layout, or type the number anew`
    return { refused: 'ambiguous-number', message }
  }
  const how = [read.comma ? 'a decimal comma' : '', read.grouped ? 'grouped digits' : '']
    .filter(Boolean)
    .join(' and ')
  const message = `the number is stored as text${how ? ` with ${how}` : ''} and was read as a number`
  return {
    value: read.value,
    rest: read.rest,
    remarks: [{ severity: 'note', rule: 'log-text-number', message }],
  }
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

function date(cell: Cell, { dateOrder, date1904 = false }: Reading): Interpreted {
  if (cell.kind === 'number') {
    const value = dateOfSerial(Number(cell.value), date1904)
    const plain = !isDateFormat(cell.format)
    const plausible = value !== undefined && (!plain || (value > '1990' && value < '2100'))
    if (!plausible) return { refused: 'not-a-date', message: `the number ${String(cell.value)} is no date` }
    const remarks: Remark[] = []
    if (plain)
      remarks.push({
        severity: 'caution',
        rule: 'log-serial-date',
        message: `the cell is not formatted as a date; its number was read as the day ${value}`,
      })
    if (date1904)
      remarks.push({
        severity: 'note',
        rule: 'log-date-1904',
        message: 'the workbook counts its days from 1904; dates were read accordingly',
      })
    return { value, remarks }
  }
  const read = cell.kind === 'text' ? readDateText(String(cell.value), dateOrder) : undefined
  if (!read) return { refused: 'not-a-date', message: `${quote(String(cell.value))} is no date` }
  if ('ambiguous' in read)
    return {
      refused: 'ambiguous-date',
      message: `${quote(String(cell.value))} may be ${read.ambiguous.join(' or ')}: state "dateOrder" in the layout, or type the date as 2026-10-14`,
    }
  const remarks: Remark[] = [
    {
      severity: 'note',
      rule: 'log-text-date',
      message: `the date is stored as text and was read as ${read.date}`,
    },
  ]
  if (read.shortYear)
    remarks.push({
      severity: 'caution',
      rule: 'log-short-year',
      message: `the year has two figures; it was read as ${read.date.slice(0, 4)}`,
    })
  return { value: read.date, remarks }
}

function choice(cell: Cell, words: Readonly<Record<string, string>>): Interpreted {
  const typed = String(cell.value).trim()
  const found = Object.entries(words).find(([word]) => plainWord(word) === plainWord(typed))?.[1]
  if (found === undefined) {
    const known = [...new Set(Object.values(words))].join('", "')
    return {
      refused: 'unknown-word',
      message: `${quote(typed)} is none of the words known here (for "${known}"): add it to "words" in the layout`,
    }
  }
  const remarks: Remark[] =
    found === typed
      ? []
      : [{ severity: 'note', rule: 'log-word', message: `${quote(typed)} was read as ${quote(found)}` }]
  return { value: found, remarks }
}

function text(cell: Cell, { date1904 = false }: Reading): Interpreted {
  if (cell.kind === 'text') return { value: String(cell.value).trim(), remarks: [] }
  const stored =
    cell.kind === 'number' && isDateFormat(cell.format)
      ? dateOfSerial(Number(cell.value), date1904)
      : undefined
  const value = stored ?? String(cell.value)
  const message = `a ${cell.kind}${cell.format ? ` shown as ${cell.format}` : ''} stands where text is expected; it was read as ${quote(value)}`
  return {
    value,
    remarks:
      cell.format || cell.kind === 'boolean'
        ? [{ severity: 'note', rule: 'log-number-as-text', message }]
        : [],
  }
}

function notNumber(cell: Cell): { refused: LogProblemCode; message: string } {
  return { refused: 'not-a-number', message: `${quote(String(cell.value))} is not a number` }
}

function quote(text: string): string {
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}…` : text)
}
