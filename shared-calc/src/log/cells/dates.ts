import { LIMITS } from '../limits.js'

const MONTHS: Record<string, number> = Object.fromEntries(
  [
    'jan januar january janvier janv januari enero ene gennaio gen styczen stycznia leden ledna janeiro',
    'feb februar february fevrier fevr fev februari febrero febbraio luty lutego unor unora fevereiro',
    'mar mrz marz maerz march mars maart marzo marts marzec marca brezen brezna marco',
    'apr april avril avr abril abr aprile kwiecien kwietnia duben dubna',
    'may mai mei maj mayo maggio mag maja kveten kvetna maio',
    'jun juni june juin junio giugno giu czerwiec czerwca cerven cervna junho',
    'jul juli july juillet juil julio luglio lug lipiec lipca cervenec cervence julho',
    'aug august aout augustus augusti agosto ago sierpien sierpnia srpen srpna',
    'sep sept september septembre septiembre settembre set wrzesien wrzesnia zari setembro',
    'oct okt oktober october octobre octubre ottobre ott pazdziernik pazdziernika rijen rijna outubro',
    'nov november novembre noviembre listopad listopada novembro',
    'dec dez dezember december decembre diciembre dic dicembre grudzien grudnia prosinec prosince dezembro',
  ].flatMap((names, index) => names.split(' ').map((name) => [name, index + 1])),
)

export type DateOrder = 'dmy' | 'mdy' | 'ymd'
export type DateText = { date: string; shortYear: boolean } | { ambiguous: string[] } | undefined

/**
 * A date as text, to YYYY-MM-DD. Knows 2026-10-14, 14.10.2026, 14/10/2026, "14 October 2026" and the like in English,
 * German and French; a time after it is left out. Two figures that could both be the month are ambiguous unless the
 * layout states the order; points between digits mean day, month, year.
 */
export function readDateText(text: string, order?: DateOrder): DateText {
  if (text.length > LIMITS.labelCharacters) return undefined
  const plain = text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/(?<![t ,])[t ,]+\d{1,2}[:h]\d{2}[\s\S]*$/, '')
    .trim()
    .replace(/^(\d{1,2}\.) ?(\d{1,2}\.) ?(?=\d{2,4}$)/, '$1$2')
    // Hungarian: "2026. 05. 14."
    .replace(/^(\d{4}\.) ?(\d{1,2}\.) ?(\d{1,2})\.?$/, '$1$2$3')
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(plain)
  if (iso) return made(Number(iso[1]), Number(iso[2]), Number(iso[3]), false)
  const named =
    /^(?:\p{L}+,? +)?(\d{1,2})(?:st|nd|rd|th|er)?[. -]+(?:de )?(\p{L}+)[. ,-]+(?:de )?(\d{4}|\d{2})$/u.exec(
      plain,
    )
  if (named) return withMonth(named[1], named[2], named[3])
  const namedFirst = /^(\p{L}+)[. ]+(\d{1,2})(?:st|nd|rd|th)?,? +(\d{4})$/u.exec(plain)
  if (namedFirst) return withMonth(namedFirst[2], namedFirst[1], namedFirst[3])
  const figures = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})$/.exec(plain)
  if (!figures) return undefined
  const [, first, sign, second, last] = figures
  return fromFigures(
    Number(first),
    Number(second),
    last as string,
    order ?? (sign === '.' ? 'dmy' : undefined),
    sign as string,
  )
}

function withMonth(day: string | undefined, month: string | undefined, year: string | undefined): DateText {
  const number = MONTHS[month ?? '']
  return number === undefined
    ? undefined
    : made(fullYear(year ?? ''), number, Number(day), year?.length === 2)
}

function fromFigures(
  first: number,
  second: number,
  last: string,
  order: DateOrder | undefined,
  sign: string,
): DateText {
  const shortYear = last.length === 2
  const year = fullYear(last)
  if (order === 'ymd') return shortYear ? made(2000 + first, second, Number(last), true) : undefined
  if (order === 'dmy') return made(year, second, first, shortYear)
  if (order === 'mdy') return made(year, first, second, shortYear)
  const readings = [made(year, second, first, shortYear), made(year, first, second, shortYear)]
  // "22/04/26" is a day in 2026: nobody writes the year first with two digits and slashes, unless the day cannot be there.
  if (shortYear && (sign === '-' || readings.every((one) => one === undefined)))
    readings.push(made(2000 + first, second, Number(last), true))
  const dates = [
    ...new Set(readings.flatMap((reading) => (reading && 'date' in reading ? [reading.date] : []))),
  ]
  if (dates.length > 1) return { ambiguous: dates }
  return dates[0] === undefined ? undefined : { date: dates[0], shortYear }
}

const fullYear = (text: string) => (text.length === 2 ? 2000 + Number(text) : Number(text))

function made(year: number, month: number, day: number, shortYear: boolean): DateText {
  const date = new Date(Date.UTC(year, month - 1, day))
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day || year < 1900) return undefined
  return { date: date.toISOString().slice(0, 10), shortYear }
}

const DAY_MS = 86_400_000

/**
 * A serial day to YYYY-MM-DD; the fraction of the day is left out. Days of the 1900 system up to 60 are refused:
 * it counts a 29 February 1900 that never was (ECMA-376 part 1, 18.17.4.1).
 */
export function dateOfSerial(serial: number, date1904: boolean): string | undefined {
  const day = Math.floor(serial)
  if (day > 2_958_465 || day < (date1904 ? 0 : 61)) return undefined
  const start = date1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, 30)
  return new Date(start + day * DAY_MS).toISOString().slice(0, 10)
}

/** Whether a number format shows a date: it has d or y, or m that is not minutes, outside quotes, brackets and escapes. */
export function isDateFormat(format: string | undefined): boolean {
  const letters = bare(format)
  return /[dy]/i.test(letters) || (/m/i.test(letters) && !/[hs]/i.test(letters))
}

/** Whether a number format shows a time of day or a duration. */
export function isTimeFormat(format: string | undefined): boolean {
  return /[hs]/i.test(bare(format)) || /\[(h|m|s)+\]/i.test(format ?? '')
}

function bare(format = ''): string {
  return format.replace(/"[^"]*"|\\.|_.|\*.|\[[^[\]]*\]/g, '')
}

const CLOCK = /^(\d{1,3}):(\d{2}):(\d{2}(?:[.,]\d+)?)$/
const DATED = /^(\d{4}-\d{2}-\d{2}|\d{1,2}[./]\d{1,2}[./]\d{4})[T ](\d{1,2}:\d{2}:\d{2}(?:[.,]\d+)?)Z?$/

/**
 * A moment as text, in seconds: 14:03:07.2 from midnight, with a date before it from 1970. Day and month may stand either
 * way: only differences count. Undefined for anything else; "12:34" too, which may be minutes or hours.
 */
export function readTimeText(text: string): number | undefined {
  const plain = text.trim()
  const dated = DATED.exec(plain)
  if (dated) {
    const [first = 0, second = 0, third = 0] = (dated[1] as string).split(/[-./]/).map(Number)
    const day = first > 31 ? Date.UTC(first, second - 1, third) : Date.UTC(third, second - 1, first)
    const clock = readTimeText(dated[2] as string)
    return clock === undefined || Number.isNaN(day) ? undefined : day / 1000 + clock
  }
  const match = CLOCK.exec(plain)
  if (!match) return undefined
  const minutes = Number(match[2])
  const seconds = Number((match[3] as string).replace(',', '.'))
  return minutes < 60 && seconds < 60 ? Number(match[1]) * 3600 + minutes * 60 + seconds : undefined
}
