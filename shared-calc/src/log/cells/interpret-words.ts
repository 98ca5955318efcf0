import { cellText } from '../../catalogue/findings/log/cells.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { dayInWords, listed, quoted } from '../../catalogue/words.js'
import type { Cell } from '../grid/grid.js'
import { dateOfSerial, isDateFormat, readDateText } from './dates.js'
import { plainWord } from './fields.js'
import { type Interpreted, type Reading, refusedUnless } from './interpreted.js'

/** A calendar date, YYYY-MM-DD. */
export function date(cell: Cell, { dateOrder, date1904 = false }: Reading): Interpreted {
  if (cell.kind === 'number') {
    const value = dateOfSerial(Number(cell.value), date1904)
    const plain = !isDateFormat(cell.format)
    const plausible = value !== undefined && (!plain || (value > '1990' && value < '2100'))
    if (!plausible)
      return {
        refused: 'not-a-date',
        message: `the number ${String(cell.value)} is not a date: type it as 2026-10-14`,
      }
    const remarks: Remark[] = []
    if (plain) remarks.push(cellText('log-serial-date', { date: value }))
    if (date1904) remarks.push(cellText('log-date-1904'))
    return { value, remarks }
  }
  const read = cell.kind === 'text' ? readDateText(String(cell.value), dateOrder) : undefined
  if (!read)
    return {
      refused: 'not-a-date',
      message: `${quoted(String(cell.value))} is not a date: type it as 2026-10-14`,
    }
  if ('ambiguous' in read) {
    const either = `${quoted(String(cell.value))} may be ${listed(read.ambiguous.map(dayInWords), 'or')}`
    return {
      refused: 'ambiguous-date',
      message: `${either}: state "dateOrder" in the layout, or type the date as 2026-10-14`,
      fault: `${either}: type it as ${listed(read.ambiguous, 'or')}`,
    }
  }
  const remarks = [cellText('log-text-date', { date: read.date })]
  if (read.shortYear) remarks.push(cellText('log-short-year', { year: read.date.slice(0, 4) }))
  return { value: read.date, remarks }
}

/** One of the words a field allows. */
export function choice(cell: Cell, words: Readonly<Record<string, string>>, open: boolean): Interpreted {
  const typed = String(cell.value).trim()
  const plain = plainWord(typed)
  const found = Object.entries(words).find(([word]) => plainWord(word) === plain)?.[1]
  if (found === undefined && open) return { value: typed, remarks: [] }
  if (found === undefined) {
    const known = [...new Set(Object.values(words))].map(quoted)
    return refusedUnless(
      'unknown-word',
      `${quoted(typed)} is not one of ${listed(known, 'or')}`,
      'use one of these, or add it to "words" in the layout',
    )
  }
  return {
    value: found,
    remarks: found === typed ? [] : [cellText('log-word', { word: typed, read: found })],
  }
}

/** Text as typed, without blanks around it. */
export function text(cell: Cell, { date1904 = false }: Reading): Interpreted {
  if (cell.kind === 'text') return { value: String(cell.value).trim(), remarks: [] }
  const stored =
    cell.kind === 'number' && isDateFormat(cell.format)
      ? dateOfSerial(Number(cell.value), date1904)
      : undefined
  const value = stored ?? String(cell.value)
  const { kind, format } = cell
  return {
    value,
    remarks:
      format || kind === 'boolean' ? [cellText('log-number-as-text', { kind, format, read: value })] : [],
  }
}
