import { plain } from '../../catalogue/words.js'
import type { Direction, LeakLog } from '../../contract/record/index.js'
import type { WorkedLeaks } from './work-leaks.js'

/** What the pressure opens in each direction. Source: which way the pressure pushes (derived). */
const opens: Readonly<Record<Direction, readonly string[]>> = {
  pressurisation: [
    'flaps of extract ducts and hoods, which open outwards',
    'windows and doors that open outwards, pushed away from their seals',
    'loft hatches lying loose in their frames',
    'membranes fixed from outside, pushed away from the wall',
  ],
  depressurisation: [
    'flaps of supply ducts, which open inwards',
    'windows and doors that open inwards, pulled away from their seals',
    'membranes and tapes on the room side, pulled away from the wall',
    'hatches and covers held in place by room pressure',
  ],
}

const other: Record<Direction, Direction> = {
  pressurisation: 'depressurisation',
  depressurisation: 'pressurisation',
}

/**
 * Why the directions may differ: what seals in one direction opens in the other. It names what was seen and guesses
 * nothing.
 */
export function directionsInWords({ directions }: WorkedLeaks, { list }: LeakLog): string[] {
  if (!directions) return ['Only one direction was measured, so the directions cannot be compared.']
  const { compared, hole } = directions
  const difference = compared.value('d_ab')
  if (difference === 0) return ['Leakage is the same in both directions.']
  const more: Direction = difference > 0 ? 'pressurisation' : 'depressurisation'
  const less = other[more]
  const area = hole.seal.value('A_s')
  const seen = list.filter((leak) => leak.seenUnder === more && !leak.fixed).map(({ place }) => `"${place}"`)
  const opposite = list
    .filter((leak) => leak.seenUnder === less && !leak.fixed)
    .map(({ place }) => `"${place}"`)
  return [
    `Under ${more} the building leaks ${plain(Math.abs(difference), 0)} m³/h more at 50 Pa than under ${less}. This is equivalent to a hole of about ${plain(area, 0)} cm² that opens under ${more} or closes under ${less}.`,
    `These can open under ${more} and close under ${less}: ${opens[more].join('; ')}.`,
    seen.length > 0
      ? `Logged as leaking under ${more} only: ${seen.join(', ')}.`
      : `No open leak in the log was seen under ${more} only. Look for one before you name a cause.`,
    ...(opposite.length > 0
      ? [`Logged as leaking under ${less} only, which has the opposite effect: ${opposite.join(', ')}.`]
      : []),
    'The two leakage rates alone do not show which of these it is.',
  ]
}
