import { mayGroup } from '../grid/text/dialect.js'
import { LIMITS } from '../limits.js'

export type NumberText =
  | {
      value: number
      /** What is after the number. */
      rest: string
      /** How it had to be read: with a decimal comma, with digits grouped. */
      comma: boolean
      grouped: boolean
    }
  /** Both readings of "1,234". */
  | { ambiguous: [number, number] }

/**
 * The number a text begins with. Knows decimal comma and point; groups by space, apostrophe, point or comma.
 * @param decimal - the decimal sign the layout states or the file proves; without it "1,234" is ambiguous
 * @returns undefined where the text does not begin with one plain number
 */
export function readNumberText(text: string, decimal?: '.' | ','): NumberText | undefined {
  if (text.length > LIMITS.labelCharacters) return undefined
  const plain = text
    // The sign of masculine numbers stands for degrees; it would become a letter.
    .replace(/º/g, '°')
    .normalize('NFKC')
    .replace(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .replace(/^\s*[−–]/, '-')
    .trim()
  const fraction = FRACTION.exec(plain)
  if (fraction) {
    const [whole, sign, units, ...parts] = fraction
    const [part, of] = parts.filter((one) => one !== undefined)
    const value = (sign === '-' ? -1 : 1) * (Number(units) + Number(part) / Number(of))
    return { value, rest: plain.slice(whole.length).trim(), comma: false, grouped: false }
  }
  const match = /^([+-]?) ?((?:\d[\d .,'’]*|[.,]\d+))/.exec(plain)
  if (!match) return undefined
  const digits = (match[2] as string).replace(/(?<![ .,'’])[ .,'’]+$/, '')
  const exponent =
    /^[eE][+-]?\d{1,3}(?![\p{L}\d])/u.exec(plain.slice((match[1] as string).length + digits.length))?.[0] ??
    ''
  const start = plain.indexOf(digits)
  const rest = plain.slice(start + digits.length + exponent.length).trim()
  const sign = match[1] === '-' ? -1 : 1
  const read = readDigits(digits, decimal)
  if (!read) return undefined
  if ('ambiguous' in read) return { ambiguous: [sign * read.ambiguous[0], sign * read.ambiguous[1]] }
  const value = sign * Number(`${read.value}${exponent}`)
  // Larger than numbers are here: it would be calculated with as if it were infinite.
  return Number.isFinite(value) ? { ...read, value, rest } : undefined
}

/** "29 1/2": halves, quarters and eighths of an inch. */
const FRACTION = /^([+-]?)(\d{1,4}) (?:(1)\/(2)|([13])\/(4)|([1357])\/(8))(?![\d/])/

/** A figure among words, in which a comma is the decimal sign. */
export function figureOf(text: string): number {
  const read = readNumberText(text, text.includes(',') ? ',' : '.')
  return read && 'value' in read ? read.value : Number.NaN
}

type Digits = { value: number; comma: boolean; grouped: boolean } | { ambiguous: [number, number] }

function readDigits(digits: string, decimal: '.' | ',' | undefined): Digits | undefined {
  if (/^\d+$/.test(digits)) return { value: Number(digits), comma: false, grouped: false }
  const single = /^(\d*)([.,])(\d+)$/.exec(digits)
  if (single) return readSingle(single[1] as string, single[2] as '.' | ',', single[3] as string, decimal)
  const groups = /^(\d{1,3})([ '’.,])\d{3}(?:\2\d{3})*(?:([.,])(\d+))?$/.exec(digits)
  if (!groups) return undefined
  const [, , group = '', sign, decimals = ''] = groups
  // A sign cannot both group digits and separate decimals.
  if (group === sign || group === decimal || (sign && decimal && sign !== decimal)) return undefined
  const whole = digits.slice(0, sign ? digits.length - decimals.length - 1 : undefined).replace(/\D/g, '')
  return { value: Number(`${whole}.${decimals || 0}`), comma: sign === ',', grouped: true }
}

function readSingle(
  whole: string,
  sign: '.' | ',',
  decimals: string,
  decimal: '.' | ',' | undefined,
): Digits {
  const asDecimal = Number(`${whole || 0}.${decimals}`)
  if (!mayGroup(whole, decimals)) return { value: asDecimal, comma: sign === ',', grouped: false }
  const asGroup = Number(whole + decimals)
  if (decimal === undefined) return { ambiguous: [asGroup, asDecimal] }
  if (decimal === sign) return { value: asDecimal, comma: sign === ',', grouped: false }
  return { value: asGroup, comma: false, grouped: true }
}
