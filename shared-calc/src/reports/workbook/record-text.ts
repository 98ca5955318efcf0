/** Characters of one cell, well under the 32 767 a cell can hold. */
const CHUNK = 30_000

/**
 * JSON in plain ASCII, cut into pieces that a cell can hold. Everything a spreadsheet might alter on the way
 * is escaped: characters outside ASCII, and `_x`, which begins an escape of its own in workbook files.
 */
export function jsonChunks(value: unknown): string[] {
  const text = JSON.stringify(value)
    .replace(/[\u007f-\uffff]/g, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`)
    .replaceAll('_x', '\\u005fx')
  const chunks: string[] = []
  for (let at = 0; at < text.length; at += CHUNK) chunks.push(text.slice(at, at + CHUNK))
  return chunks
}

/** The value that {@link jsonChunks} was given. Throws SyntaxError when the pieces are not JSON. */
export const parseChunks = (chunks: readonly string[]): unknown => JSON.parse(chunks.join(''))
