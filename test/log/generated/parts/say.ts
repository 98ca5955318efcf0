import type { Recipe, UnitPlace } from '../recipe.js'
import type { Unit } from '../units.js'
import type { Look, Value } from '../write/sheet.js'

/** A label with its unit, where the unit belongs into the label. */
export function labelled(text: string, symbol: string, place: UnitPlace): string {
  if (place === 'brackets') return `${text} (${symbol})`
  if (place === 'square') return `${text} [${symbol}]`
  if (place === 'comma') return `${text}, ${symbol}`
  if (place === 'slash') return `${text} / ${symbol}`
  if (place === 'alone') return `${text} ${symbol}`
  return text
}

/** A number as text, with the decimal sign of the firm's country. */
export const numberText = (value: number, { words }: Recipe): string =>
  words.decimalComma ? String(value).replace('.', ',') : String(value)

/** A figure in its cell: as a number, with its unit stuck to it as text, or shown by the cell's format. */
export function figure(value: number, unit: Unit, place: UnitPlace, recipe: Recipe): [Value, Look] {
  if (place === 'stuck') return [`${numberText(value, recipe)} ${unit.symbol}`, {}]
  if (place === 'format') {
    const digits = unit.digits > 0 ? `0.${'0'.repeat(unit.digits)}` : '0'
    return [value, { format: `${digits}" ${unit.symbol}"` }]
  }
  if (recipe.dirt.includes('numbers as text')) return [numberText(value, recipe), {}]
  return [value, {}]
}

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
)

/** The day as this log writes it; a text file knows no dates. */
export function dayOf(
  { year, month, day }: { year: number; month: number; day: number },
  { date, file, words }: Recipe,
): Value {
  if (date === 'long text') return `${day} ${MONTHS[month - 1]} ${year}`
  if (date === 'two-figure year')
    return words.dayText(year, month, day).replace(String(year), String(year % 100))
  if (date === 'text' || date === 'day or month first' || file !== 'xlsx')
    return words.dayText(year, month, day)
  return new Date(Date.UTC(year, month - 1, day))
}
