import type { Difference } from '../report.js'

/**
 * How offices mark the rows of a register that they work with. None of it hides or restates a value: one that can no longer be read has a
 * difference of its own.
 */
const MARKS: ReadonlySet<string> = new Set([
  'text colour',
  'background colour',
  'bold',
  'italic',
  'underlined',
  'text size, points',
  'alignment',
  'vertical alignment',
  'thick lines around the cell',
])

/** Ways of setting out that show a value over and over, or in the middle of its neighbours: 3 becomes 333. */
const RESTATING: ReadonlySet<string> = new Set(['fill', 'centerContinuous', 'distributed'])

/** Whether cells of a register were only coloured, set in other letters, or given more room: its figures, words and formulas agree. */
export const isOfficeLook = ({ kind, label, recorded, expected }: Difference): boolean =>
  kind === 'appearance' &&
  ((MARKS.has(label) && !RESTATING.has(String(recorded))) || (isSize(label) && isMore(recorded, expected)))

const isSize = (label: string): boolean => label.startsWith('height of ') || label.startsWith('width of ')

const isMore = (now: Difference['recorded'], issued: Difference['expected']): boolean =>
  typeof now === 'number' && typeof issued === 'number' && now > issued && now < MOST_ROOM * issued

/** Beyond it, what stands behind a column is pushed off the page. */
const MOST_ROOM = 4
