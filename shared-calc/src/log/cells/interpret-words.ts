import type { Cell } from '../grid/grid.js'
import { dateOfSerial, isDateFormat, readDateText } from './dates.js'
import { plainWord } from './fields.js'
import { type Interpreted, quote, type Reading, type Remark } from './interpreted.js'

/** A calendar date, YYYY-MM-DD. */
export function date(cell: Cell, { dateOrder, date1904 = false }: Reading): Interpreted {
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

/** One of the words a field allows. */
export function choice(cell: Cell, words: Readonly<Record<string, string>>, open: boolean): Interpreted {
  const typed = String(cell.value).trim()
  const plain = plainWord(typed)
  const found = Object.entries(words).find(([word]) => plainWord(word) === plain)?.[1]
  if (found === undefined && open) return { value: typed, remarks: [] }
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

/** Text as typed, without blanks around it. */
export function text(cell: Cell, { date1904 = false }: Reading): Interpreted {
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
