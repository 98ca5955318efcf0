import { dateOfSerial, isDateFormat, isTimeFormat, readDateText } from '../../cells/dates.js'
import { readNumberText } from '../../cells/number-text.js'
import { findUnit, formatUnit, type KnownUnit } from '../../cells/units.js'
import type { Cell, Faint } from '../../grid/grid.js'

/** A number somebody wrote into a cell, in the unit the cell itself states, if any. */
export interface Written {
  readonly value: number
  readonly unit?: KnownUnit
  /** What else stands in the cell: "(gusty)". */
  readonly note?: string
  /** The other reading of a number like "1,234". */
  readonly other?: number
  /** Written or shaded in grey. */
  readonly faint?: Faint
  /** Written in brackets, as book-keepers write what is negative; its value is. */
  readonly bracketed?: true
}

/** What a cell holds, as far as the cell alone can tell. */
export type Content =
  | {
      readonly kind: 'number'
      readonly written: Written
      readonly formula?: string
      readonly percent?: boolean
    }
  | {
      readonly kind: 'date'
      readonly dates: readonly string[]
      readonly shortYear: boolean
      /** It stands there as a plain number: a count of days. */
      readonly serial?: true
    }
  | { readonly kind: 'time' }
  | { readonly kind: 'text'; readonly text: string; readonly numbers?: readonly Written[] }
  | { readonly kind: 'struck'; readonly text: string; readonly number: boolean }
  | { readonly kind: 'error'; readonly text: string; readonly unstored: boolean }

export interface Surroundings {
  readonly date1904: boolean
  readonly decimal: '.' | ',' | undefined
}

/** Reads one cell. Undefined where nothing stands. */
export function contentOf(cell: Cell | undefined, { date1904, decimal }: Surroundings): Content | undefined {
  if (!cell) return undefined
  if (cell.struck === 'whole')
    return {
      kind: 'struck',
      text: String(cell.value),
      number: cell.kind === 'number' || readNumberText(String(cell.value)) !== undefined,
    }
  if (cell.kind === 'error' || cell.kind === 'unstored')
    return { kind: 'error', text: String(cell.value), unstored: cell.kind === 'unstored' }
  if (cell.kind === 'number') return ofNumber(cell, date1904)
  if (cell.kind === 'boolean') return { kind: 'text', text: String(cell.value) }
  const text = String(cell.struck === 'part' ? (cell.unstruck ?? '') : cell.value).trim()
  if (text === '') return undefined
  const content = ofText(text, decimal)
  return cell.faint && content.kind === 'number'
    ? { ...content, written: { ...content.written, faint: cell.faint } }
    : content
}

function ofNumber(cell: Cell, date1904: boolean): Content {
  const value = Number(cell.value)
  if (isDateFormat(cell.format)) {
    const date = dateOfSerial(value, date1904)
    if (date) return { kind: 'date', dates: [date], shortYear: false }
  }
  if (isTimeFormat(cell.format)) return { kind: 'time' }
  const { unit, percent } = formatUnit(cell.format)
  return {
    kind: 'number',
    written: { value, ...(unit ? { unit } : {}), ...(cell.faint ? { faint: cell.faint } : {}) },
    ...(cell.formula === undefined ? {} : { formula: cell.formula }),
    ...(percent ? { percent } : {}),
  }
}

function ofText(text: string, decimal: '.' | ',' | undefined): Content {
  const date = readDateText(text)
  if (date)
    return 'ambiguous' in date
      ? { kind: 'date', dates: date.ambiguous, shortYear: false }
      : { kind: 'date', dates: [date.date], shortYear: date.shortYear }
  if (/^\d{1,2}:\d{2}(:\d{2})?$/.test(text)) return { kind: 'time' }
  const written = writtenIn(text, decimal)
  if (written) return { kind: 'number', written }
  const several = severalIn(text, decimal)
  return several ? { kind: 'text', text, numbers: several } : { kind: 'text', text }
}

/** A number with its unit and a remark; undefined where the text is more than that. */
export function writtenIn(text: string, decimal: '.' | ',' | undefined): Written | undefined {
  return inBrackets(text, decimal) ?? plainIn(text, decimal)
}

/** "(55.2)", "(1.2) Pa": negative. "(1)" numbers a column and "(2026)" is a year: neither is meant. */
function inBrackets(text: string, decimal: '.' | ',' | undefined): Written | undefined {
  const [, inner = '', rest = ''] = /^\(\s*([\d.,]+)\s*\)\s*(\S*)$/.exec(text) ?? []
  const written = inner === '' ? undefined : plainIn(`${inner} ${rest}`.trim(), decimal)
  if (!written || (/^\d+$/.test(inner) && (written.value < 10 || written.value > 200))) return undefined
  return { ...written, value: -written.value, bracketed: true }
}

function plainIn(text: string, decimal: '.' | ',' | undefined): Written | undefined {
  const bare = text.replace(/^[~≈≃]\s*|^(?:ca|approx)\.?\s+/i, '')
  const read = readNumberText(bare, decimal)
  if (!read) return undefined
  if ('ambiguous' in read) {
    const [grouped, fraction] = read.ambiguous
    return { value: grouped, other: fraction }
  }
  const { value, rest } = read
  if (rest === '') return bare === text ? { value } : { value, note: 'approximate' }
  const unit = findUnit(rest)
  if (unit) return { value, unit }
  const spread = /^(?:±|\+\/-|\+-)\s*[\d.,]+\s*([\s\S]*)$/.exec(rest)
  if (spread) {
    const after = spread[1] ? findUnit(spread[1]) : undefined
    return { value, ...(after ? { unit: after } : {}), note: rest }
  }
  // "20 °C ± 0.5": the unit stands in front of the spread.
  const plus = rest.search(/±|\+\/-/)
  const before = plus > 0 ? findUnit(rest.slice(0, plus)) : undefined
  if (before) return { value, unit: before, note: rest.slice(plus) }
  const cut = remarkAt(rest)
  if (cut < 0) return undefined
  const head = rest.slice(0, cut).trim()
  const note = rest.slice(cut).trim()
  const headUnit = head === '' ? undefined : findUnit(head)
  if (head !== '' && !headUnit) return undefined
  // A second number is no remark.
  if (/^[;,]\s*[-−–+]?\d/.test(note)) return undefined
  return { value, ...(headUnit ? { unit: headUnit } : {}), note }
}

/** Where a remark begins that stands in brackets, behind a mark, or is a word without figures; −1: there is none. */
function remarkAt(rest: string): number {
  const bracket = rest.search(/[([]/)
  if (bracket >= 0) return bracket
  const mark = rest.search(/[*!?;,]/)
  if (mark >= 0) return mark
  if (/\d/.test(rest)) return -1
  const words = rest.split(/\s+/)
  const unit = findUnit(words[0] ?? '')
  return unit && (words[0] ?? '').length > 1 ? rest.indexOf(' ') : -1
}

/** Two or more numbers in one cell: "20.5 / 8.5", "−1.4; −1.1; −0.9". */
function severalIn(text: string, decimal: '.' | ',' | undefined): Written[] | undefined {
  for (const sign of [' / ', '/', ';', '|', ' , ', ' & ', ' and ']) {
    const pieces = text.split(sign)
    if (pieces.length < 2 || pieces.length > 60) continue
    const numbers = pieces.map((piece) => writtenIn(piece.trim(), decimal))
    if (numbers.every((one): one is Written => one !== undefined)) return numbers
  }
  return undefined
}
