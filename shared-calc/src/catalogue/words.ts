import { printed } from '../contract/check.js'
import type { Direction, Outcome } from '../contract/record/index.js'

/** A number as findings print it: at most `decimals` places, no trailing zeros. */
export const plain = (value: number, decimals = 2): string => printed(Number(value.toFixed(decimals)))

/**
 * The same with as many more decimals as keep it apart from the limits it is printed next to: 49.97 is not printed as 50
 * where at least 50 is needed.
 */
export function apart(value: number, limits: readonly number[], decimals = 2): string {
  for (let more = decimals; more < MOST_DECIMALS; more += 1) {
    const shown = Number(value.toFixed(more))
    if (limits.every((limit) => limit === value || shown !== Number(limit.toFixed(more))))
      return plain(value, more)
  }
  return plain(value, MOST_DECIMALS)
}

const MOST_DECIMALS = 9

/** A word with a capital, as a sentence begins. */
export const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)

/**
 * Parts of a remark as sentences: each clause after a semicolon begins a sentence of its own, with a capital and a full
 * stop. Quoted text and symbols such as n50 stay as they are.
 */
export const sentences = (remark: string): string =>
  (remark.match(/"[^"]*"|“[^”]*”|; |[^"“;]+|./g) ?? [])
    .map((part, i, parts) =>
      part === '; '
        ? '. '
        : i === 0 || parts[i - 1] === '; '
          ? part.replace(/^[a-z]+(?=[ ,:])/, capital)
          : part,
    )
    .join('')
    .replace(/[^.!?:]$/, '$&.')

/** A reading as findings name it, numbered as on the sheet: both runs have a reading 1. */
export const readingName = (direction: Direction, index: number): string =>
  `${capital(direction)}, reading ${index + 1}`

/** A text of somebody else as findings quote it; a long one is cut short. */
export const quoted = (text: string): string =>
  visible(JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}…` : text))

// Control characters could move a cursor or recolour a screen; direction marks and characters without width show a text as another.
const UNSEEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]/g

/** Text of somebody else, made safe to show: characters that nobody sees become visible escapes. */
export const visible = (text: string): string =>
  text.replace(UNSEEN, (character) => `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`)

/** A typed number as it is printed: with the minus sign instead of the hyphen of a keyboard. */
export const withMinus = (text: string): string => text.replace(/^-/, '−')

/** A number of things: `1 reading`, `3 readings`. */
export const counted = (count: number, one: string, several = `${one}s`): string =>
  `${count} ${count === 1 ? one : several}`

export const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

/** The day of a moment by this machine's clock, as 2026-10-14; today where none is given. */
export function dayOf(moment = new Date()): string {
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`
}

/** `2026-10-14` as people write it: 14 October 2026. Anything that is no such date is left as it is. */
export function dayInWords(date: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? []
  const name = months[Number(month) - 1]
  return name ? `${Number(day)} ${name} ${year}` : date
}

/** The date that stands so in words, as `2026-10-14`; undefined for anything else. */
export function dayFromWords(text: string): string | undefined {
  const [, day, name = '', year] = /^(\d{1,2}) (\p{L}+) (\d{4})$/u.exec(text) ?? []
  const names: readonly string[] = months
  const month = names.indexOf(name) + 1
  return month === 0 ? undefined : [year, String(month).padStart(2, '0'), day?.padStart(2, '0')].join('-')
}

/** `2026-10` as people write it: October 2026. Anything that is no such month is left as it is. */
export function monthInWords(month: string): string {
  const [, year, number] = /^(\d{4})-(\d{2})$/.exec(month) ?? []
  const name = months[Number(number) - 1]
  return name ? `${name} ${year}` : month
}

/** October 2026 as 2026-10; undefined for anything else. */
export function monthFromWords(text: string): string | undefined {
  const [, name, year] = /^([A-Z][a-z]+) (\d{4})$/.exec(text) ?? []
  const number = (months as readonly string[]).indexOf(name ?? '') + 1
  return number > 0 ? `${year}-${String(number).padStart(2, '0')}` : undefined
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[], last = 'and'): string {
  const [end = '', ...before] = [...words].reverse()
  return before.length === 0 ? end : `${before.reverse().join(', ')} ${last} ${end}`
}

/** `a, b, c and 4 more`: the first few of many names. */
export const firstFew = (names: readonly string[], few = 3): string =>
  names.length > few ? `${names.slice(0, few).join(', ')} and ${names.length - few} more` : names.join(', ')

/** The outcome of a test as people read it; the contract's own word for a failed test is older. */
export const outcomeWords: Readonly<Record<Outcome, string>> = {
  meets: 'meets',
  misses: 'fails',
  'not valid': 'not valid',
  'no target': 'no target',
}
