import { cellText } from '../../catalogue/findings/log/cells.js'
import { tableText } from '../../catalogue/findings/log/tables.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { plainWord } from '../cells/fields.js'
import type { Collector } from '../collector.js'
import type { Looked } from './look.js'

/** One row of a table of readings, as seen. */
export interface TableRow {
  pressure: Looked
  flow?: Looked
  devicePressure?: Looked
  range?: Looked
  direction?: Looked
  role?: 'reading' | 'zero-flow before' | 'zero-flow after'
}

/** What people write in place of a number that was not taken. */
const PLACEHOLDERS = new Set([
  '-',
  '–',
  '—',
  '/',
  'n/a',
  'na',
  'n a',
  'none',
  'k a',
  's o',
  'nc',
  'oor',
  'out of range',
  'x',
  '?',
])

/** The flow as indicated or the device's pressure, whichever the row holds. */
export function flowOf({ flow, devicePressure }: TableRow): Looked | undefined {
  return flow && (flow.state !== 'blank' || !devicePressure || devicePressure.state === 'blank')
    ? flow
    : devicePressure
}

/**
 * Whether a row of a table is a reading. Left out, with the reason: what is struck through, shows an error or a word instead of a
 * number, or lacks its pressure or its flow. A cell that holds figures and cannot be read is kept, for its fault to be reported.
 * @param open - the table runs on to whatever is below: a word in the column of pressures is none of its readings
 */
export function isUsable(row: TableRow, open: boolean, collector: Collector, path: string): boolean {
  const { pressure, flow, devicePressure, range, role } = row
  const cells = [pressure, flow, devicePressure, range].filter((cell) => cell !== undefined)
  if (cells.every(({ state }) => state === 'value')) return true
  const struck = cells.filter(({ state }) => state === 'struck')
  for (const { address } of struck)
    collector.tell(cellText('log-struck-through', { what: 'reading' }), address, path)
  if (struck.length > 0) return false
  const bad = cells.find(
    (cell) =>
      cell.state === 'refused' &&
      (cell.code === 'error-value' || isPlaceholder(cell) || (isWord(cell) && !(open && cell === pressure))),
  )
  if (bad?.state === 'refused') {
    collector.tell(withoutNumber(bad, 'reading'), bad.address, path)
    return false
  }
  const second = role && role !== 'reading' ? undefined : flowOf(row)
  const missing = [pressure, second].find((cell) => cell?.state === 'blank')
  if (!missing) return true
  const named = missing.address === '' ? cells.find(({ address }) => address !== '') : missing
  collector.tell(tableText('log-incomplete'), named?.address ?? '', path)
  return false
}

export function isPlaceholder(looked: Looked): boolean {
  return (
    looked.state === 'refused' &&
    looked.cell.kind === 'text' &&
    (PLACEHOLDERS.has(plainWord(String(looked.cell.value))) ||
      PLACEHOLDERS.has(String(looked.cell.value).trim()))
  )
}

/** Text without a figure: a remark where a number belongs. */
export const isWord = (looked: Looked): boolean =>
  looked.state === 'refused' &&
  looked.code === 'not-a-number' &&
  looked.cell.kind === 'text' &&
  !/\d/.test(String(looked.cell.value))

/** A cell that holds an error or a word instead of a number. */
export const withoutNumber = (
  { code, cell }: Extract<Looked, { state: 'refused' }>,
  what: 'reading' | 'zero-flow pressure',
): Remark =>
  tableText(code === 'error-value' ? 'log-error-value' : 'log-placeholder', {
    shown: String(cell.value),
    what,
  })
