export type ParsedNumber = { value: number } | { problem: string }

/**
 * A number as typed, with a decimal comma or point and with spaces (also narrow or non-breaking) between thousands.
 * A comma before exactly three digits (`1,234`) may mean either, so it is refused, as is a text with both signs.
 */
export function parseNumber(text: string): ParsedNumber {
  const trimmed = text.trim().replace(/^[−–]/, '-')
  if (trimmed === '') return { problem: 'enter a number' }
  const joined = trimmed.replace(/(?<=\d)[ \u00a0\u2009\u202f](?=\d{3}(?!\d))/g, '')
  const signs = joined.match(/[.,]/g) ?? []
  if (signs.length > 1)
    return { problem: `“${trimmed}” has more than one comma or point: leave thousands unmarked` }
  const grouped = /^[+-]?([1-9]\d{0,2}),(\d{3})$/.exec(joined)
  if (grouped)
    return { problem: `“${trimmed}” may be ${grouped[1]}${grouped[2]} or ${grouped[1]}.${grouped[2]}: write one of these` }
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?$/.test(joined)) return { problem: `“${trimmed}” is not a number` }
  const value = Number(joined.replace(',', '.'))
  return Number.isFinite(value) ? { value } : { problem: `“${trimmed}” is beyond what can be computed` }
}
