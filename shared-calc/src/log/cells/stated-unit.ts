import { findUnit, type KnownUnit, type QuantityKind } from './units.js'

/** `loose`: the unit is a bare last word of one or two letters, which may be a word after all. */
export type StatedUnit = { unit?: KnownUnit; loose?: boolean }

/** The unit a heading or label states: in brackets, after a comma, slash or underscore, or as its last words. */
export function statedUnit(text: string): StatedUnit {
  const whole = findUnit(text)
  if (whole) return { unit: whole }
  for (const inside of bracketed(text)) {
    const unit = unitOfPiece(inside)
    if (unit) return { unit }
  }
  const bare = withoutBrackets(text).replace(/:\s*$/, '').trim()
  const underscored = bare.split('_')
  if (underscored.length > 2) {
    const unit = findUnit(underscored.slice(-2).join('/'))
    if (unit) return { unit }
  }
  for (const sign of [',', '_', ';', ':']) {
    const at = bare.lastIndexOf(sign)
    const unit = at > 0 ? findUnit(bare.slice(at + 1)) : undefined
    if (unit) return { unit }
  }
  const slash = bare.indexOf('/')
  const last = bare.slice(slash + 1).trim()
  // "Temp. out / in": no inch.
  const behind = slash > 0 && last.toLowerCase() !== 'in' ? findUnit(last) : undefined
  if (behind && behind.kind !== 'time') return { unit: behind }
  // "Pa1", "m³/h1": the number of the reading stands right behind the unit.
  const numbered = findUnit(bare.replace(/(?<=\p{L})\d{1,2}$/u, ''))
  if (numbered && bare.length > 2 && (numbered.kind === 'pressure' || numbered.kind === 'flow'))
    return { unit: numbered }
  const words = bare.split(/\s+/)
  for (let count = 3; count >= 1; count--) {
    if (words.length <= count) continue
    const last = words.slice(-count).join(' ')
    // "Pa 1" is the first of several pressures.
    const unit = last.toLowerCase() === 'in' || /^\d+$/.test(last) ? undefined : findUnit(last)
    if (unit) return { unit, ...(last.length < 2 || LOOSE.has(last.toLowerCase()) ? { loose: true } : {}) }
  }
  const first = words.length > 1 ? findUnit(words[0] as string) : undefined
  if (first && (words[0] as string).length > 1) return { unit: first, loose: true }
  // "m³/h at 20 °C", "all flows in l/s and pressures in Pa": the first unit of several letters.
  for (const word of words) {
    const unit = word.length >= 3 && /[/³3]/.test(word) ? findUnit(word.replace(/[.;]$/, '')) : undefined
    if (unit) return { unit, loose: true }
  }
  return {}
}

const LOOSE = new Set(['min', 'in', 'pa', 'kn', 'kt', 'sec', 'hr', 'sf', 'cf', 'bar', 'pct'])

function unitOfPiece(piece: string): KnownUnit | undefined {
  const whole = findUnit(piece.replace(/^\s*(in|en)\s+(?=\S{2})/i, ''))
  if (whole) return whole
  for (const part of piece.split(/[,;@]|\s(?:at|bei|a|ved|vid|by|of)\s/)) {
    const unit = findUnit(part) ?? findUnit(part.trim().split(/\s+/)[0] ?? '')
    if (unit) return unit
  }
  return undefined
}

/** A text that is a unit and nothing else, with or without brackets. */
export function bareUnit(text: string): KnownUnit | undefined {
  const trimmed = text.trim()
  const unit = findUnit(trimmed) ?? findUnit(bracketed(trimmed)[0] ?? '')
  return unit && (findUnit(trimmed) || /^[([{]/.test(trimmed)) && unit.unit !== 'fraction' ? unit : undefined
}

/** What is in brackets of any kind, without looking back. */
export function bracketed(text: string): string[] {
  const found: string[] = []
  let start = -1
  for (let at = 0; at < text.length; at++) {
    const letter = text[at] as string
    if ('([{'.includes(letter)) start = at + 1
    else if (')]}'.includes(letter) && start >= 0) {
      found.push(text.slice(start, at))
      start = -1
    }
  }
  return found
}

function withoutBrackets(text: string): string {
  let bare = ''
  let depth = 0
  for (const letter of text) {
    if ('([{'.includes(letter)) depth++
    else if (')]}'.includes(letter)) depth = Math.max(0, depth - 1)
    else if (depth === 0) bare += letter
  }
  return bare
}

/**
 * The unit that headings above each other state of what is below: a row of units, else the nearest heading.
 * @param texts - from the top down
 * @param kind - units of other quantities are skipped
 */
export function unitOfHeadings(texts: readonly string[], kind?: QuantityKind): KnownUnit | undefined {
  const fits = (unit: KnownUnit | undefined) => unit && (kind === undefined || unit.kind === kind)
  const row = texts.findLast((text) => fits(bareUnit(text)))
  if (row !== undefined) return bareUnit(row)
  const stated = texts
    .map(statedUnit)
    .reverse()
    .filter(({ unit }) => fits(unit))
  return (stated.find(({ loose }) => !loose) ?? stated[0])?.unit
}
