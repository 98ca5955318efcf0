import { strFromU8, strToU8 } from 'fflate'
import { sha256Hex } from '../../../contract/sha256.js'
import { sheetParts } from '../chart/package-parts.js'
import { RECORD } from '../record-sheet.js'
import type { Parts } from '../zip/parts.js'
import { canonicalPart, isTextPart } from './canonical-part.js'

/** Part of the workbook → SHA-256 of its canonical form, in lower-case hex. */
export type IssuedParts = ReadonlyMap<string, string>

/** Digests of all parts of a workbook, by name. Throws RangeError or Error when it is no workbook. */
export function digestParts(parts: Parts): IssuedParts {
  const recordPart = sheetParts(parts).get(RECORD)
  return new Map(
    [...parts]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([path, bytes]) => [path, sha256Hex(canonicalBytes(path, bytes, recordPart))]),
  )
}

function canonicalBytes(path: string, bytes: Uint8Array, recordPart: string | undefined): Uint8Array {
  if (!isTextPart(path)) return bytes
  const text = strFromU8(bytes)
  const canonical = canonicalPart(path, text, recordPart)
  return canonical === text ? bytes : strToU8(canonical)
}

/** One digest over the whole list: what a signature covers. */
export const digestOfParts = (issued: IssuedParts): string => sha256Hex(partLines(issued).join('\n'))

/** The list as it stands on sheet Record, one line for each part: digest and name. */
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
