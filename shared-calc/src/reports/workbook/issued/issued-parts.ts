import { strFromU8, strToU8 } from 'fflate'
import { sha256Hex } from '../../../contract/sha256.js'
import { sheetParts } from '../chart/package-parts.js'
import { RECORD } from '../record-sheet.js'
import type { Parts } from '../zip/parts.js'
import { canonicalPart, hasCanonicalForm, isTextPart } from './canonical-part.js'

/** Part of the workbook → SHA-256 of its canonical form, in lower-case hex. */
export type IssuedParts = ReadonlyMap<string, string>

/** Digests of all parts of a workbook, by name. Throws RangeError or Error when it is not a workbook. */
export function digestParts(parts: Parts): IssuedParts {
  const recordPart = sheetParts(parts).get(RECORD)
  return new Map(
    [...parts]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([path, bytes]) => [path, sha256Hex(canonicalBytes(path, bytes, recordPart))]),
  )
}

function canonicalBytes(path: string, bytes: Uint8Array, recordPart: string | undefined): Uint8Array {
  if (!isTextPart(path) || !hasCanonicalForm(path)) return bytes
  // Rows of cells are by far the most of a sheet, and they count as they are.
  const cut = path === recordPart ? bytes.length : headLength(bytes)
  const text = strFromU8(bytes.subarray(0, cut))
  const canonical = canonicalPart(path, text, recordPart)
  if (canonical === text) return bytes
  const head = strToU8(canonical)
  const whole = new Uint8Array(head.length + bytes.length - cut)
  whole.set(head)
  whole.set(bytes.subarray(cut), head.length)
  return whole
}

/** Bytes before the first `<sheetData`, as `canonicalPart` looks for it; all where there is none. */
function headLength(bytes: Uint8Array): number {
  for (let at = bytes.indexOf(SHEET_DATA[0] ?? 0); at >= 0; at = bytes.indexOf(SHEET_DATA[0] ?? 0, at + 1))
    if (SHEET_DATA.every((byte, i) => bytes[at + i] === byte)) return at
  return bytes.length
}
const SHEET_DATA = [...strToU8('<sheetData')]

/** One digest over the whole list: what a signature covers. */
export const digestOfParts = (issued: IssuedParts): string => sha256Hex(partLines(issued).join('\n'))

/** The list as it is on sheet Record, one line for each part: digest and name. */
export const partLines = (issued: IssuedParts): string[] =>
  [...issued].map(([path, digest]) => `${digest} ${path}`)

/** The list read back. Undefined where the workbook holds none. */
export function partsOfLines(lines: readonly string[] | undefined): IssuedParts | undefined {
  if (!lines || lines.length === 0) return undefined
  return new Map(
    lines.map((line) => {
      const cut = line.indexOf(' ')
      return [line.slice(cut + 1), line.slice(0, cut)]
    }),
  )
}

/**
 * Whether another program has written the whole file: then none of these parts is as issued. A part that was changed by hand
 * stands among others that are.
 */
export function savedAgain(issued: IssuedParts, now: IssuedParts): boolean {
  const kept = [...issued].filter(
    ([path, digest]) =>
      /^xl\/(worksheets\/[^/]+|styles|workbook)\.xml$/.test(path) && now.get(path) === digest,
  )
  return kept.length === 0
}
