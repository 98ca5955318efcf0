import Papa from 'papaparse'
import { addressOf, withSheet } from '../address.js'

const SEPARATORS = ['\t', ';', '|', ','] as const
export type Separator = (typeof SEPARATORS)[number]

/** Characters looked at to tell the separator. */
const SAMPLE = 64 * 1024

/**
 * The separator of a text file: of those that split most of the first lines, tab, semicolon and bar go before the comma,
 * which may be a decimal sign instead. A first line `sep=;` decides outright. Undefined: one field per line.
 */
export function findSeparator(text: string): Separator | undefined {
  const stated = /^sep=([\t;|,])\r?\n/.exec(text)?.[1]
  if (stated) return stated as Separator
  const start = text.slice(0, SAMPLE)
  let best: { separator: Separator; share: number } | undefined
  for (const separator of SEPARATORS) {
    const { data } = Papa.parse<string[]>(start, { delimiter: separator, preview: 60, skipEmptyLines: true })
    const share = data.filter((fields) => fields.length > 1).length / Math.max(1, data.length)
    if (share > 0.5 && share > (best?.share ?? 0) + 0.2) best = { separator, share }
  }
  return best?.separator
}

const DECIMAL = /^\s*[+\-−–]?(\d*)([.,])(\d+)\s*(?:[^\d\s.,].*)?$/

/**
 * The decimal sign a whole file proves: some number can be read only with it ("12,5"), and none only with the other.
 * @returns the sign with the cell that proves it; undefined when nothing or both are proven
 */
export function provenDecimal(
  rows: readonly (readonly string[])[],
  sheet: string,
): { sign: '.' | ','; cell: string } | undefined {
  const proof: { '.'?: string; ','?: string } = {}
  for (const [row, fields] of rows.entries()) {
    for (const [column, field] of fields.entries()) {
      const match = DECIMAL.exec(field)
      if (!match) continue
      const [, whole = '', sign = '.', decimals = ''] = match
      if (mayGroup(whole, decimals)) continue
      proof[sign as '.' | ','] ??= withSheet(sheet, addressOf(row, column))
    }
  }
  if (proof['.'] && !proof[',']) return { sign: '.', cell: proof['.'] }
  if (proof[','] && !proof['.']) return { sign: ',', cell: proof[','] }
  return undefined
}

/** "1,234" may be one thousand or one and a bit; "0,234", "12,5" and "1234,567" cannot be thousands. */
export function mayGroup(whole: string, decimals: string): boolean {
  return decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole)
}
