const QUOTE = 34
const NEWLINE = 10
const RETURN = 13
const BLANK = 32
const TAB = 9

/** Where the fields stop making sense, counted from 0. */
export interface QuoteFault {
  row: number
  column: number
  /** `open`: a quotation mark that is never closed; `after`: more text behind the closing mark. */
  kind: 'open' | 'after'
}

/**
 * Rows and fields of a separated-values text (RFC 4180, with blanks allowed behind a closing quotation mark). Every letter is
 * looked at once: parsers that search ahead for the next separator or mark take the square of the length over stray ones.
 * @param separator - one character; empty: a line is a field
 * @param seen - is told where each field is in the text, its quotation marks included
 * @returns the rows, the last one a single empty field where the text ends with a line break; stops at the first fault
 */
export function splitFields(
  text: string,
  separator: string,
  seen?: (row: number, column: number, start: number, end: number) => void,
): { rows: string[][]; fault?: QuoteFault } {
  const parting = separator === '' ? -1 : separator.charCodeAt(0)
  // Old files separate lines by carriage returns alone.
  const lineEnd = text.includes('\n') ? NEWLINE : RETURN
  const rows: string[][] = []
  let row: string[] = []
  let at = 0
  for (;;) {
    if (text.charCodeAt(at) === QUOTE) {
      const end = closingQuote(text, at)
      if (end < 0) return { rows, fault: { row: rows.length, column: row.length, kind: 'open' } }
      seen?.(rows.length, row.length, at, end + 1)
      row.push(text.slice(at + 1, end).replaceAll('""', '"'))
      at = afterBlanks(text, end + 1, parting)
      if (at < text.length && !isEnd(text, at, parting, lineEnd))
        return { rows, fault: { row: rows.length, column: row.length - 1, kind: 'after' } }
    } else {
      const start = at
      while (at < text.length && !isEnd(text, at, parting, lineEnd)) at++
      seen?.(rows.length, row.length, start, at)
      row.push(text.slice(start, at))
    }
    if (text.charCodeAt(at) === parting) {
      at++
      continue
    }
    rows.push(row)
    if (at >= text.length) return { rows }
    row = []
    at += text.charCodeAt(at) === RETURN && text.charCodeAt(at + 1) === NEWLINE ? 2 : 1
  }
}

/** The mark that ends a quoted field: one that is not doubled. -1 where there is none. */
function closingQuote(text: string, open: number): number {
  let at = text.indexOf('"', open + 1)
  while (at >= 0 && text.charCodeAt(at + 1) === QUOTE) at = text.indexOf('"', at + 2)
  return at
}

function afterBlanks(text: string, start: number, parting: number): number {
  let at = start
  for (;;) {
    const code = text.charCodeAt(at)
    if (code === parting || (code !== BLANK && code !== TAB)) return at
    at++
  }
}

/** Whether a field ends here: at the separator or the end of the line. */
function isEnd(text: string, at: number, parting: number, lineEnd: number): boolean {
  const code = text.charCodeAt(at)
  if (code === parting || code === lineEnd) return true
  return code === RETURN && text.charCodeAt(at + 1) === NEWLINE
}
