import { sheetParts } from '../chart/package-parts.js'
import { escapeXml } from '../chart/xml.js'
import { RECORD } from '../record-sheet.js'
import { type Parts, setText, textOf } from '../zip/parts.js'

/** Key of the rows that hold the digests of the parts. */
export const ISSUED_PART = 'issued part'

export type IssuedRow = readonly [key: string, text: string]

/**
 * Adds rows of key and text below all others of sheet Record, in the finished workbook: digests of its parts cannot be known
 * before. Returns the number of the first row.
 */
export function addIssuedRows(parts: Parts, rows: readonly IssuedRow[]): number {
  const path = sheetParts(parts).get(RECORD) ?? ''
  const xml = textOf(parts, path)
  const numbers = [...xml.matchAll(/<row r="(\d+)"/g)].map(([, row]) => Number(row))
  const first = Math.max(0, ...numbers) + 2
  const style = (column: string) => new RegExp(`<c r="${column}2"( s="\\d+")?`).exec(xml)?.[1] ?? ''
  const cell = (column: string, row: number, text: string) =>
    `<c r="${column}${row}"${style(column)} t="inlineStr"><is><t>${escapeXml(text)}</t></is></c>`
  const added = rows.map(
    ([key, text], i) =>
      `<row r="${first + i}">${cell('A', first + i, key)}${cell('B', first + i, text)}</row>`,
  )
  setText(
    parts,
    path,
    xml.replace('</sheetData>', () => `${added.join('')}</sheetData>`),
  )
  return first
}
