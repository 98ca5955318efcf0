import { LIMITS } from '../limits.js'
import { remembered } from '../remembered.js'

/** A cell's place, counted from 0. */
export interface Place {
  row: number
  column: number
}

/** A block of cells, both corners included, counted from 0. */
export interface Block {
  top: number
  left: number
  bottom: number
  right: number
}

/** 0 → A, 25 → Z, 26 → AA. */
export function columnLetters(column: number): string {
  let letters = ''
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters
  return letters
}

/** A → 0, XFD → 16383; undefined for what is not a column of the file format. */
export function columnIndex(letters: string): number | undefined {
  if (!/^[A-Z]{1,3}$/.test(letters)) return undefined
  let column = 0
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64
  return column <= LIMITS.columns ? column - 1 : undefined
}

/** B4 or $B$4 → its place; undefined for anything else or beyond the sheet's edge. */
export function parseAddress(text: string): Place | undefined {
  return plainAddress(text) ?? markedAddress(text)
}

/** The common case, letters then digits, without a pattern: every cell of every sheet comes through here. */
function plainAddress(text: string): Place | undefined {
  let at = 0
  let column = 0
  for (; at < 3; at++) {
    const code = text.charCodeAt(at)
    if (!(code >= 65 && code <= 90)) break
    column = column * 26 + code - 64
  }
  let row = 0
  const first = at
  for (; at < text.length && at < first + 7; at++) {
    const digit = text.charCodeAt(at) - 48
    if (!(digit >= 0 && digit <= 9) || (digit === 0 && at === first)) return undefined
    row = row * 10 + digit
  }
  if (first === 0 || at === first || at < text.length) return undefined
  return column <= LIMITS.columns && row <= LIMITS.rows ? { row: row - 1, column: column - 1 } : undefined
}

function markedAddress(text: string): Place | undefined {
  const match = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i.exec(text)
  if (!match) return undefined
  const column = columnIndex((match[1] as string).toUpperCase())
  const row = Number(match[2]) - 1
  return column === undefined || row >= LIMITS.rows ? undefined : { row, column }
}

/** B4:C9 or B4 → the block; undefined for anything else. */
export function parseBlock(text: string): Block | undefined {
  const [first = '', second = first] = text.split(':')
  const from = parseAddress(first)
  const to = parseAddress(second)
  if (!from || !to) return undefined
  return {
    top: Math.min(from.row, to.row),
    left: Math.min(from.column, to.column),
    bottom: Math.max(from.row, to.row),
    right: Math.max(from.column, to.column),
  }
}

export function addressOf(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`
}

export function blockText({ top, left, bottom, right }: Block): string {
  const from = addressOf(top, left)
  return top === bottom && left === right ? from : `${from}:${addressOf(bottom, right)}`
}

/** Log!B4, or 'Test log'!B4 where the name needs quotes. */
export function withSheet(sheet: string, address: string): string {
  return `${prefix(sheet).text}!${address}`
}

/** B4 of Log!B4 or 'Test log'!B4. */
export const withoutSheet = (cell: string): string => cell.slice(cell.lastIndexOf('!') + 1)

/** The sheet's name: Log!B4 → Log, 'Device ranges'!A2 → Device ranges. Empty where the address names none. */
export const sheetOf = (cell: string): string =>
  cell
    .slice(0, Math.max(0, cell.lastIndexOf('!')))
    .replace(/^'|'$/g, '')
    .replaceAll("''", "'")

/** Log!B4 and Log!C9 → Log!B4:C9. */
export const blockBetween = (first: string, last: string): string => `${first}:${withoutSheet(last)}`

const prefix = remembered((sheet): { text: string } => {
  const plain = /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(sheet)
  return { text: plain ? sheet : `'${sheet.replaceAll("'", "''")}'` }
})
