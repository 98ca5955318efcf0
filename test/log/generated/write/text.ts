import type { Sheet } from './sheet.js'

/** The first sheet as separated text in UTF-8. */
export function writeText(
  sheet: Sheet,
  separator: string,
  decimal: '.' | ',',
  byteOrderMark = false,
): Uint8Array {
  const { rows, columns } = sheet.size
  const lines: string[] = []
  for (let row = 1; row <= rows; row++) {
    const fields: string[] = []
    for (let column = 1; column <= columns; column++) {
      const value = sheet.at(row, column)?.value
      if (value instanceof Date) throw new Error('a day must be written as text here')
      const text = typeof value === 'number' ? String(value).replace('.', decimal) : (value ?? '')
      fields.push(text.includes(separator) || text.includes('"') ? `"${text.replaceAll('"', '""')}"` : text)
    }
    while (fields.at(-1) === '') fields.pop()
    lines.push(fields.join(separator))
  }
  return new TextEncoder().encode(`${byteOrderMark ? '\ufeff' : ''}${lines.join('\r\n')}\r\n`)
}
