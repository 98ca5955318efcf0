import { plainWord } from '../cells/fields.js'
import { findUnit } from '../cells/units.js'
import { LIMITS } from '../limits.js'
import { remembered } from '../remembered.js'
import { lastBracket, lastWord } from './heading-parts.js'

/** Words of a heading or label without the unit it names: "Volume (m³):" → "volume". */
export interface Heading {
  words: string
  /** Words with everything in brackets. */
  whole: string
}

/** Reads a heading: its unit may be in brackets, after "in", after a slash or a comma, or as the last word. */
export const readHeading = remembered(headingOf)

function headingOf(text: string): Heading {
  const whole = plainWord(text)
  // Nobody's heading is that long.
  if (text.length > LIMITS.labelCharacters) return { whole, words: whole }
  const bracket = lastBracket(text)
  if (bracket?.unit && findUnit(bracket.unit)) return { whole, words: plainWord(bracket.words) }
  const tail = lastWord(text)
  // "T in" is a temperature inside, not one in inches.
  const hasUnit =
    tail?.words && tail.unit.length > 1 && tail.unit !== 'in' && findUnit(tail.unit.replace(/:$/, ''))
  return { whole, words: tail && hasUnit ? plainWord(tail.words) : whole }
}

/** Tells whether a heading is the label a layout names: the whole of it, or all but its unit. `*` stands for anything. */
export const labelMatcher = (wanted: string): ((heading: Heading) => boolean) => matcher(wanted).fits

const matcher = remembered((wanted) => ({ fits: matcherOf(wanted) }))

function matcherOf(wanted: string): (heading: Heading) => boolean {
  const target = plainWord(wanted.replaceAll('*', '\u0001'))
  if (target.includes('\u0001')) return ({ whole, words }) => glob(whole, target) || glob(words, target)
  return ({ whole, words }) => whole === target || words === target
}

/** Whether a cell's text is the label a layout names. */
export function matchesLabel(cellText: string, wanted: string): boolean {
  return labelMatcher(wanted)(readHeading(cellText))
}

/** Whether a sheet's name is the one a layout names. Case counts not. */
export function matchesSheet(name: string, wanted: string): boolean {
  return glob(name.toLowerCase(), wanted.toLowerCase().replaceAll('*', '\u0001'))
}

/** Greedy matching piece by piece: linear, so that no layout can make it slow. */
function glob(text: string, pattern: string): boolean {
  const pieces = pattern.split('\u0001')
  const first = pieces[0] ?? ''
  const last = pieces.at(-1) ?? ''
  if (pieces.length === 1) return text === pattern
  if (!text.startsWith(first)) return false
  let at = first.length
  for (const piece of pieces.slice(1, -1)) {
    const found = text.indexOf(piece, at)
    if (found < 0) return false
    at = found + piece.length
  }
  return text.length - last.length >= at && text.endsWith(last)
}
