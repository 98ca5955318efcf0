/** A rectangle on a sheet; rows and columns count from 1, ends included. */
export interface Area {
  sheet?: string
  top: number
  left: number
  bottom: number
  right: number
}

export const LAST_ROW = 1_048_576
export const LAST_COLUMN = 16_384

/** 1 → A, 28 → AB. */
export function columnLetters(column: number): string {
  let letters = ''
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters
  return letters
}

/** A → 1, AB → 28. */
export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0)
}

/** Splits `'House 3'!B2:C4` into sheet and address; a doubled quote stands for one. */
export function splitReference(reference: string): { sheet?: string; address: string } {
  const quoted = /^'((?:[^']|'')+)'!(.+)$/.exec(reference)
  if (quoted?.[1] && quoted[2]) return { sheet: quoted[1].replaceAll("''", "'"), address: quoted[2] }
  const plain = /^([^'!]+)!(.+)$/.exec(reference)
  return plain?.[1] && plain[2] ? { sheet: plain[1], address: plain[2] } : { address: reference }
}

/** Joins sheet and address, with quotes where a spreadsheet needs them. */
export function joinReference(sheet: string, address: string): string {
  const bare =
    /^[\p{L}_][\p{L}\p{N}_]*$/u.test(sheet) && !/^[A-Za-z]{1,3}\d+$|^[Rr]\d*([Cc]\d*)?$|^[Cc]\d*$/.test(sheet)
  return `${bare ? sheet : `'${sheet.replaceAll("'", "''")}'`}!${address}`
}

/** Reads `B4`, `$B$4:C12`, `B:C` or `4:9`, with or without a sheet. Returns undefined for anything else, as for a name. */
export function parseArea(reference: string): Area | undefined {
  const { sheet, address } = splitReference(reference.trim())
  const cells = /^\$?([A-Za-z]{1,3})\$?(\d{1,7})(?::\$?([A-Za-z]{1,3})\$?(\d{1,7}))?$/.exec(address)
  const columns = /^\$?([A-Za-z]{1,3}):\$?([A-Za-z]{1,3})$/.exec(address)
  const rows = /^\$?(\d{1,7}):\$?(\d{1,7})$/.exec(address)
  const corners = cells
    ? [
        columnNumber(cells[1] ?? ''),
        Number(cells[2]),
        columnNumber(cells[3] ?? cells[1] ?? ''),
        Number(cells[4] ?? cells[2]),
      ]
    : columns
      ? [columnNumber(columns[1] ?? ''), 1, columnNumber(columns[2] ?? ''), LAST_ROW]
      : rows
        ? [1, Number(rows[1]), LAST_COLUMN, Number(rows[2])]
        : undefined
  if (!corners) return undefined
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = corners
  const area = {
    top: Math.min(y1, y2),
    left: Math.min(x1, x2),
    bottom: Math.max(y1, y2),
    right: Math.max(x1, x2),
  }
  if (area.top < 1 || area.bottom > LAST_ROW || area.right > LAST_COLUMN) return undefined
  return sheet === undefined ? area : { sheet, ...area }
}

/** The address of an area without its sheet: `B4` or `B4:C12`. */
export function areaAddress({ top, left, bottom, right }: Area): string {
  const first = `${columnLetters(left)}${top}`
  return top === bottom && left === right ? first : `${first}:${columnLetters(right)}${bottom}`
}

/** The address of one cell, row and column from 1. */
export const cellAddress = (row: number, column: number): string => `${columnLetters(column)}${row}`

/** The part two areas share, or undefined. The sheet is that of the first. */
export function intersection(a: Area, b: Area): Area | undefined {
  const shared = {
    ...a,
    top: Math.max(a.top, b.top),
    left: Math.max(a.left, b.left),
    bottom: Math.min(a.bottom, b.bottom),
    right: Math.min(a.right, b.right),
  }
  return shared.top <= shared.bottom && shared.left <= shared.right ? shared : undefined
}

export const cellCount = ({ top, left, bottom, right }: Area): number =>
  (bottom - top + 1) * (right - left + 1)

/** Reference of one cell of a block, by row and column counted from 0 inside it. */
export function cellReference(
  block: { sheet: string; address: string },
  row: number,
  column: number,
): string {
  const area = parseArea(block.address)
  if (!area) return joinReference(block.sheet, block.address)
  return joinReference(block.sheet, `${columnLetters(area.left + column)}${area.top + row}`)
}

/** Cuts an area into bands of whole rows with at most `cells` cells each (one row at least). */
export function bands(area: Area, cells: number): Area[] {
  const rows = Math.max(1, Math.floor(cells / (area.right - area.left + 1)))
  const cut: Area[] = []
  for (let top = area.top; top <= area.bottom; top += rows)
    cut.push({ ...area, top, bottom: Math.min(area.bottom, top + rows - 1) })
  return cut
}

/** The smallest area that holds both. The sheet is that of the first. */
export const union = (a: Area, b: Area): Area => ({
  ...a,
  top: Math.min(a.top, b.top),
  left: Math.min(a.left, b.left),
  bottom: Math.max(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
})
