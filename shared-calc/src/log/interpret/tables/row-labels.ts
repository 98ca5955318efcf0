import { bareUnit } from '../../cells/stated-unit.js'
import type { View } from '../grid/view.js'
import { isPlaceholder, type Label, readLabel, says } from '../words/label.js'
import type { Segment } from './columns.js'
import { type KnownColumn, roleOf } from './columns.js'
import { isFlowLike, isPressureLike } from './heads.js'

export interface RowLabel {
  readonly text: string
  readonly cell: string
  /** It stands in front of another block of the same headings, and names the row for all of them. */
  readonly lead?: boolean
}

/**
 * Texts of a row in and just left of the table, but for the columns of numbers.
 * @param lead - the column that names the rows of several blocks
 */
export function labelsOf(
  segment: Segment,
  row: number,
  numeric: readonly KnownColumn[],
  lead: number | undefined,
): RowLabel[] {
  const { view, head, columns, left, right } = segment
  const found: RowLabel[] = []
  // In a table across, the lines further up are those of the form.
  const first = view.turned ? Math.min(...numeric.map(({ at }) => at)) - LINES_ABOVE : left - 1
  for (let column = Math.max(0, left - 1, first); column <= right + 1; column++) {
    if (column > right && columns.some(({ at }) => at === column)) continue
    // The remarks of the block before this one are of its rows.
    if (column < left && !view.turned && isOfBlockBefore(head, column)) continue
    // Below a table across, the line that heads its results is none of it.
    if (column > right && view.turned && head.columns.some(({ at }) => at === column)) continue
    // A line of zero flow above a table across has its own words: "Zero flow | −1.2 | −1.4 | mean | −1.3".
    if (view.turned && says(readLabel(view.text(head.top, column) ?? ''), 'zero')) continue
    const text = view.text(row, column)
    // "–" beside the readings, where the block next to them has no value, says nothing.
    if (text === undefined || isPlaceholder(text)) continue
    if (column < left && view.number(row, column) !== undefined) continue
    if (numeric.some(({ at }) => at === column) && !isSummary(text) && !says(readLabel(text), 'zero'))
      continue
    if (bareUnit(text)) continue
    if (
      columns.some(
        ({ at, role }) =>
          at === column &&
          (role === 'test' ||
            role === 'direction' ||
            ((role === 'range' || codesOf(segment).has(at)) &&
              !says(readLabel(text), 'zero') &&
              !isSummary(text) &&
              !isOfOtherQuantity(text))),
      )
    )
      continue
    found.push({ text, cell: view.address(row, column) })
  }
  const text = lead === undefined || found.length > 0 ? undefined : view.text(row, lead)
  return lead === undefined || text === undefined
    ? found
    : [{ text, cell: view.address(row, lead), lead: true }]
}

/** Whether a column stands behind a heading of pressures or flows of its own. */
const isOfBlockBefore = ({ columns }: Segment['head'], column: number): boolean =>
  columns.some(({ at }) => at === column) &&
  columns.some(
    ({ at, label, unit }) => at < column && (isPressureLike(label, unit) || isFlowLike(label, unit)),
  )

/** Columns of a letter or two in each line, whatever heads them: rings and the like. "C" there is no coefficient. */
function codesOf(segment: Segment): ReadonlySet<number> {
  const known = codes.get(segment)
  if (known) return known
  const { view, head, columns } = segment
  const isOfCodes = ({ at, role, texts, numbers }: KnownColumn): boolean => {
    if (role !== 'other' || numbers > 0 || texts < FEWEST_CODES) return false
    const own = Array.from({ length: 2 * texts }, (_, index) => view.text(head.first + index, at))
    return own.every((text) => text === undefined || CODE.test(text.trim()))
  }
  const found = new Set(columns.filter(isOfCodes).map(({ at }) => at))
  codes.set(segment, found)
  return found
}
const codes = new WeakMap<Segment, ReadonlySet<number>>()
const CODE = /^\p{L}\p{N}?$/u
const FEWEST_CODES = 3

/**
 * "ungültig" some columns behind the readings, past cells that are blank: it may be of this row. Words behind another block or number
 * are not.
 */
export function remarkBeyond({ view, head, right }: Segment, row: number): string | undefined {
  if (view.turned) return undefined
  for (let column = right + 2; column <= Math.min(right + COLUMNS_BEHIND, view.columns - 1); column++) {
    if (head.columns.some(({ at }) => at === column)) return undefined
    const content = view.at(row, column)
    if (!content) continue
    const isOfRow = content.kind === 'text' && says(readLabel(content.text), 'leftOut')
    return isOfRow ? content.text : undefined
  }
  return undefined
}

const COLUMNS_BEHIND = 12

/** A line of remarks stands next to a table across. */
const LINES_ABOVE = 1

/** The first column of the headings, where it numbers or names the rows of several blocks and this one has no such column. */
export function leadOf({ view, head, columns, left }: Segment): number | undefined {
  const [first] = head.columns
  if (!first || first.at >= left - 1) return undefined
  if (columns.some(({ role, at }) => role === 'index' || (at === left && LEADS.includes(role))))
    return undefined
  const { role } = roleOf(view, head.first, head.first + ROWS_OF_A_TABLE, first)
  return LEADS.includes(role) ? first.at : undefined
}

const ROWS_OF_A_TABLE = 30
const LEADS = ['index', 'other', 'remark', 'time', 'test']

/** Whether a zero-flow label holds or is followed by values for before and after, so that it is no row of this table. */
export function saysBoth(
  labels: readonly RowLabel[],
  said: Label,
  numeric: readonly KnownColumn[],
  view: View,
  row: number,
): boolean {
  if (says(said, 'before') && says(said, 'after')) return true
  // "Zero flow (Pa) | before | −1.2 | after | −0.9"
  const words = Array.from({ length: WORDS_BEHIND }, (_, index) => readLabel(view.text(row, index) ?? ''))
  if (words.some((one) => says(one, 'before')) && words.some((one) => says(one, 'after'))) return true
  return labels.some(({ cell }) => numeric.some(({ at }) => view.address(row, at) === cell))
}

/** "Zero flow before | −1.6 | −1.4 | −1.7" below the readings: the columns of the table mean nothing in such a line. */
export function isListOfZero(view: View, row: number, carriers: readonly KnownColumn[]): boolean {
  const label = Array.from({ length: WORDS_BEHIND }, (_, column) => column).find((column) =>
    says(readLabel(view.text(row, column) ?? ''), 'zero'),
  )
  if (label === undefined) return false
  const values: number[] = []
  for (let column = label + 1; view.number(row, column) !== undefined; column++)
    values.push(view.number(row, column) as number)
  return (
    values.length >= FEWEST_OF_LIST &&
    carriers.some(({ at }) => at > label && at <= label + values.length) &&
    carriers.some(({ at }) => view.number(row, at)) &&
    Math.max(...values) - Math.min(...values) <= LIST_WITHIN
  )
}

/**
 * "Zero flow before | −1.2 | −1.4 | −1.7" from a label far to the left on: its values run on below the readings of the next block too.
 */
export function isOfListBefore(
  { view, head, left }: Segment,
  row: number,
  carriers: readonly KnownColumn[],
): boolean {
  let column = left - 1
  while (column >= 0 && view.number(row, column) !== undefined) column--
  let end = column + 1
  while (view.number(row, end) !== undefined) end++
  const isList = column < left - 1 && end - column - 1 >= FEWEST_OF_LIST
  if (view.turned || !isList || !says(readLabel(view.text(row, column) ?? ''), 'zero')) return false
  const flows = head.columns.filter(({ label, unit }) => isFlowLike(label, unit)).map(({ at }) => at)
  return [...flows, ...carriers.map(({ at }) => at)].some(
    (at) => at > column && Boolean(view.number(row, at)),
  )
}

const FEWEST_OF_LIST = 3
/** Zero-flow pressures of one list are this near to one another, Pa; common practice, no source. */
const LIST_WITHIN = 4

/** So many columns of a line are looked at. */
const WORDS_BEHIND = 16

/** "Average", "Mean flow", "Total": a row that sums others up. */
export function isSummary(text: string): boolean {
  if (SUMMARY_SIGN.test(text.trim())) return true
  const label = readLabel(text)
  return label.tokens.length <= 4 && says(label, 'average') && !says(label, 'zero')
}

/** "Ø", "Σ", "x̄": signs of a mean or a sum. */
const SUMMARY_SIGN = /^(?:[Øø⌀∅Σ∑µμ]|[x×]\u0304|n\s?=\s?\d+)\.?$/u

/** "Interpolated", "calculated at 4 Pa" in front of a row: worked out from the readings. A remark on a reading has more words. */
export function isWorkedOut(text: string): boolean {
  const label = readLabel(text)
  return label.tokens.length <= 5 && says(label, 'workedOut') && !says(label, 'zero')
}

/** "V50 | 50 | 312" below the readings: its label is that of a result, where no other row has one like it. */
export function namesResult(text: string, others: readonly string[]): boolean {
  const result = /^(?:q|v|n|w|ach|cfm)_?(?:4|10|25|50|75)(?!\d)/i
  return result.test(text.trim()) && !others.some((one) => /^(?:q|v|n|w|ach|cfm)_?\d/i.test(one.trim()))
}

/** "Target", "Zielwert (Pa)" in front of a row: what was aimed at. A remark on a reading has more words. */
export function isIntended(text: string): boolean {
  const [first, second, ...more] = readLabel(text).tokens
  return (
    first !== undefined &&
    more.length === 0 &&
    says(readLabel(first), 'target') &&
    (second === undefined || says(readLabel(second), 'pressure'))
  )
}

/** A word left of the number that names a thing, as "n", "Q50", "Volume": not a reading any more. */
export function labelledAsField(labels: readonly RowLabel[]): boolean {
  return labels.some(({ text }) => {
    const label = readLabel(text)
    return (
      label.tokens.length > 0 &&
      !says(label, 'index') &&
      // "À ignorer" holds the letter of a coefficient.
      !says(label, 'leftOut') &&
      (says(label, 'volume') ||
        says(label, 'area') ||
        says(label, 'temperature') ||
        says(label, 'exponent') ||
        says(label, 'coefficient') ||
        says(label, 'limit') ||
        label.tokens.some((token) => /^(?:q|n|r|v|w|ach|cfm|ela)\d/.test(token)))
    )
  })
}

/** "Flow at 50 Pa (m³/s)" in front of a number in the column of pressures: by its unit the number is no pressure. */
export const namesOtherQuantity = (labels: readonly RowLabel[]): boolean =>
  labels.some(({ text }) => isOfOtherQuantity(text))

/** "Wind 3 m/s" is a remark with a value of its own, and names no other number. */
function isOfOtherQuantity(text: string): boolean {
  const { unit, loose } = readLabel(text)
  return unit !== undefined && !loose && unit.kind !== 'pressure' && !/\d\s?\S{1,12}$/.test(text.trim())
}

/** "C | 30.9", "n50 | 0.86" in the column that numbers the readings above: results, and no readings. */
export function isBelowNumbering({ view, head, columns }: Segment, row: number): boolean {
  return columns.some(({ at, role }) => {
    const counts = view.number(head.first, at) === 1 && view.number(head.first + 1, at) === 2
    const text = role === 'index' || counts ? view.text(row, at) : undefined
    return (
      text !== undefined &&
      view.number(head.first, at) !== undefined &&
      labelledAsField([{ text, cell: view.address(row, at) }])
    )
  })
}
