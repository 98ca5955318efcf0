import type { Attributes } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'

/** A data style under construction: its format as the code a workbook would hold, so that both are interpreted alike. */
export interface NumberStyle {
  name: string
  kind: string
  code: string
  /** The style of the values this one's condition names, often those of zero and above; it is first in a code. */
  applied?: string
}

/** Elements whose attributes decide the code at once (OpenDocument 1.3 part 3, 16.29). Others are skipped. */
const PARTS: Record<string, (attributes: Attributes, kind: string) => string> = {
  number: digits,
  fraction: () => '# ?/?',
  'scientific-number': (attributes) => `${digits(attributes)}E+00`,
  year: (attributes) => (isLong(attributes) ? 'yyyy' : 'yy'),
  month: (attributes) =>
    'm'.repeat((attributes['number:textual'] === 'true' ? 3 : 1) + (isLong(attributes) ? 1 : 0)),
  day: (attributes) => (isLong(attributes) ? 'dd' : 'd'),
  'day-of-week': (attributes) => (isLong(attributes) ? 'dddd' : 'ddd'),
  hours: (attributes, kind) => (kind === 'time-style' ? 'h' : isLong(attributes) ? 'hh' : 'h'),
  minutes: () => 'mm',
  seconds: () => 'ss',
  'am-pm': () => 'AM/PM',
}

/** Kinds of data styles that a number format can be read from. */
export const NUMBER_STYLES: ReadonlySet<string> = new Set([
  'number-style',
  'percentage-style',
  'currency-style',
  'date-style',
  'time-style',
])

/** Adds what one element inside a data style shows. */
export function addPart(style: NumberStyle, element: string, attributes: Attributes): void {
  const part = PARTS[element]?.(attributes, style.kind)
  if (part !== undefined) style.code = (style.code + part).slice(0, LIMITS.formatCharacters)
}

/** Adds a text of a data style; the sign of a percentage must stay outside quotes to mean one. */
export function addText(style: NumberStyle, text: string): void {
  const shown =
    style.kind === 'percentage-style' && text.trim() === '%' ? '%' : `"${text.replaceAll('"', '')}"`
  if (text !== '') style.code = (style.code + shown).slice(0, LIMITS.formatCharacters)
}

function digits(attributes: Attributes): string {
  const places = Math.min(15, Number(attributes['number:decimal-places'] ?? 0) || 0)
  return places > 0 ? `0.${'0'.repeat(places)}` : '0'
}

const isLong = (attributes: Attributes) => attributes['number:style'] === 'long'
