import { dateOfSerial, isDateFormat, isTimeFormat, readDateText } from '../../cells/dates.js'
import { type NumberInCell, numberInCell, numberInText, remarksOn } from '../../cells/number-in-cell.js'
import { readNumberText } from '../../cells/number-text.js'
import { type Written, writtenIn } from '../../cells/written.js'
import type { Cell } from '../../grid/grid.js'
import { LIMITS } from '../../limits.js'

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

/** What a cell of text or a number says, as text. */
export const textOf = (content: Content): string =>
  content.kind === 'text' ? content.text : content.kind === 'number' ? String(content.written.value) : ''

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
  const text = withoutLeaders(String(cell.struck === 'part' ? (cell.unstruck ?? '') : cell.value).trim())
  if (text === '') return undefined
  const content = ofText(text, decimal)
  if (content.kind !== 'number') return content
  const { written } = content
  return {
    ...content,
    written: { ...written, ...(cell.faint ? { faint: cell.faint } : {}), ...saidOf(cell, written) },
  }
}

/** "Volume ....... 412 m³": dots lead from a label to its value as a colon does. */
const withoutLeaders = (text: string): string =>
  text.length > LIMITS.labelCharacters || !text.includes('..')
    ? text
    : text.replace(/(?<=[^\s.])\s?\.{2,}:?\s+(?=\S)/, ': ')

function ofNumber(cell: Cell, date1904: boolean): Content {
  if (isDateFormat(cell.format)) {
    const date = dateOfSerial(Number(cell.value), date1904)
    if (date) return { kind: 'date', dates: [date], shortYear: false }
  }
  if (isTimeFormat(cell.format)) return { kind: 'time' }
  const { percent, ...written } = numberInCell(cell, undefined) as NumberInCell
  return {
    kind: 'number',
    written: { ...written, ...(cell.faint ? { faint: cell.faint } : {}), ...saidOf(cell) },
    ...(cell.formula === undefined ? {} : { formula: cell.formula }),
    ...(percent ? { percent } : {}),
  }
}

function saidOf(cell: Cell, { remarks = [] }: Partial<Written> = {}): Pick<Written, 'remarks'> {
  const all = [...remarksOn(cell), ...remarks]
  return all.length > 0 ? { remarks: all } : {}
}

/** A day read from a text, or both days that it may be. */
export const dayContent = (date: NonNullable<ReturnType<typeof readDateText>>): Content =>
  'ambiguous' in date
    ? { kind: 'date', dates: date.ambiguous, shortYear: false }
    : { kind: 'date', dates: [date.date], shortYear: date.shortYear }

function ofText(text: string, decimal: '.' | ',' | undefined): Content {
  if (!/\p{N}/u.test(text)) return { kind: 'text', text }
  const date = readDateText(text)
  if (date) return dayContent(date)
  if (/^\d{1,2}:\d{2}(:\d{2})?$/.test(text)) return { kind: 'time' }
  const written = numberInText(text, decimal)
  if (written) return { kind: 'number', written }
  const several = severalIn(text, decimal)
  return several ? { kind: 'text', text, numbers: several } : { kind: 'text', text }
}

/** Two or more numbers in one cell: "20.5 / 8.5", "−1.4; −1.1; −0.9". */
function severalIn(text: string, decimal: '.' | ',' | undefined): Written[] | undefined {
  for (const sign of [' / ', '/', ';', '|', ' , ', ' & ', ' and ']) {
    if (!text.includes(sign)) continue
    const pieces = text.split(sign)
    if (pieces.length > 60) continue
    const numbers = pieces.map((piece) => writtenIn(piece.trim(), decimal))
    if (numbers.every((one): one is Written => one !== undefined)) return numbers
  }
  return undefined
}
