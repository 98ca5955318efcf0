import { bareUnit } from '../../cells/stated-unit.js'
import { leadOf, type View } from '../grid/view.js'
import type { Stopped } from '../not-searched.js'
import type { FoundRun } from '../tables/runs.js'
import { directionIn, type Label, readLabel, says } from '../words/label.js'
import { isAnswered } from '../words/yes-or-no.js'
import { withDirectionInFront } from './direction-in-front.js'
import { entriesOf } from './entries-of.js'
import { LIKELY_MOST, type ZeroEntry } from './entry.js'
import { FAR, isOfOneSign } from './headings.js'
import { withoutFigures, zeroOfBoth, zeroValuesWithin } from './in-text.js'
import { withNumbers } from './numbered.js'
import { type Placed, valuesOf } from './values-near.js'
import { zeroTitle } from './zero-title.js'

/** Texts of a sheet that are looked at as labels; a form has a few hundred. */
export const MOST_LABELS = 4000

/** Every labelled zero-flow value of a sheet. */
export function findZeroFlow(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  stopped: Stopped,
  runs: readonly FoundRun[],
): ZeroEntry[] {
  const entries: ZeroEntry[] = []
  const consumed = new Set<string>()
  let looked = 0
  const sheet = readLabel(view.name)
  const sheetSays = says(sheet, 'zero')
  for (let row = 0; row < view.rows; row++)
    for (let column = 0; column < view.columns; column++) {
      const text = view.text(row, column)
      const both = text === undefined || isTaken(row, column) ? undefined : zeroOfBoth(text)
      if (text !== undefined && both) {
        entries.push(...ofBoth(view, row, column, text, both))
        continue
      }
      if (text === undefined || text.length > 90 || isTaken(row, column)) continue
      if (isAnswered(text, view.text(row, column + 1))) continue
      if (++looked > MOST_LABELS) {
        stopped(view.address(row, column))
        return entries
      }
      const label = readLabel(text)
      const zero = says(label, 'zero')
      const words = withoutFigures(text)
      const isList = headsList(view, row, column, label)
      const isOfSheet = isList && sheetSays && !says(words, 'before') && !says(words, 'after')
      const before = says(isOfSheet ? sheet : words, 'before')
      const after = says(isOfSheet ? sheet : words, 'after')
      const between = !before && !after && says(words, 'between')
      const likely = !zero && before !== after && mayBeZero(label)
      // Most texts of a form say nothing of all this: no title is looked for over them.
      if (!zero && !likely && !isList && !before && !after && !between) continue
      const title = zero ? undefined : zeroTitle(view, row, column)?.label
      if (
        !zero &&
        !likely &&
        !((title || sheetSays) && isList) &&
        !((before || after || between) && label.tokens.length <= 5 && (title || sheetSays))
      )
        continue
      const inner = zero || title || likely ? zeroValuesWithin(text) : undefined
      const values = inner
        ? inner.map((one) => ({ ...one, cell: view.address(row, column), column, row }))
        : valuesOf(view, row, column, isTaken, runs)
      const fresh = values.filter(({ cell }) => !consumed.has(cell))
      if (fresh.length === 0 || (likely && fresh.some(({ value }) => Math.abs(value) > LIKELY_MOST))) continue
      if (
        !inner &&
        !before &&
        !after &&
        !between &&
        !values.some(({ which }) => which) &&
        hasParts(view, row, column)
      )
        continue
      const isSigned = isOfOneSign(text)
      if (isSigned && (hasWhole(view, row, column) || hasOtherSign(view, row, column))) continue
      for (const { cell } of fresh) consumed.add(cell)
      for (const own of byBlock(fresh, runs))
        entries.push(
          ...entriesOf(
            view,
            lineOf(own.values, row),
            own.column ?? column,
            // The values of the other sign are nought: this mean is that of all.
            isSigned ? readLabel(text.replace(/[+−–-]/, '')) : label,
            title,
            own.values,
            before,
            after,
          ).map((entry) => ({
            ...entry,
            labelCell: view.address(row, own.column ?? column),
            ...(between ? { between: true as const } : {}),
          })),
        )
    }
  return withDirectionInFront(withNumbers(entries))
}

/** Entries of a text that states the zero flow of each direction. */
const ofBoth = (
  view: View,
  row: number,
  column: number,
  label: string,
  both: NonNullable<ReturnType<typeof zeroOfBoth>>,
): ZeroEntry[] => {
  const cell = view.address(row, column)
  return both.flatMap(({ direction, values }) =>
    ([undefined, 'before', 'after'] as const).flatMap((which) => {
      const figures = values.filter((one) => one.which === which).map((one) => ({ ...one, cell }))
      const entry = { view, row, column, direction, figures, label, labelCell: cell }
      return figures.length === 0 ? [] : which ? [{ ...entry, which }] : [entry]
    }),
  )
}

/** The line of several values side by side below their headings, else that of the label. */
const lineOf = (values: readonly Placed[], row: number): number => {
  const [first] = values
  const isLine = values.length > 1 && values.every((one) => one.row === first?.row)
  return isLine ? (first?.row ?? row) : row
}

/** "Depressurisation" over a list of values with no words in front of them: all of them are of that run. */
function headsList(view: View, row: number, column: number, label: Label): boolean {
  if (label.tokens.length > 3 || directionIn(label) === undefined) return false
  const first = bareUnit(view.text(row + 1, column) ?? '') ? row + 2 : row + 1
  return Array.from({ length: FEWEST }, (_, index) => first + index).every(
    (at) => view.number(at, column) !== undefined && leadOf(view, at, column, FAR) === undefined,
  )
}

/** So many values below one another are a list. */
const FEWEST = 3

/** Whether the mean of all values stands in the same line or column of labels. */
function hasWhole(view: View, row: number, column: number): boolean {
  for (let step = -6; step <= 6; step++)
    for (const text of [view.text(row, column + step), view.text(row + step, column)])
      if (text !== undefined && step !== 0 && !isOfOneSign(text) && says(readLabel(text), 'zero')) return true
  return false
}

/**
 * Whether the mean of the values of the other sign stands beside, and is not nought: of two such means nobody knows how many values each
 * was taken of. One that is nought itself says nothing beside the other.
 */
function hasOtherSign(view: View, row: number, column: number): boolean {
  const own = view.text(row, column) ?? ''
  const down = (at: number) => [1, 2, 3].map((step) => view.number(at, column + step))
  const isOther = (text: string | undefined) =>
    text !== undefined && text !== own && isOfOneSign(text) && withoutSign(text) === withoutSign(own)
  const below = [-2, -1, 1, 2].find((step) => isOther(view.text(row + step, column)))
  const beside = [-3, -2, -1, 1, 2, 3].find((step) => isOther(view.text(row, column + step)))
  const [mine, other] =
    below !== undefined
      ? [row, row + below].map((at) => down(at).find((value) => value !== undefined))
      : beside !== undefined
        ? [column, column + beside].map((at) => view.number(row + 1, at))
        : [1, 0]
  return mine === 0 || (other ?? 0) !== 0
}

const withoutSign = (text: string): string => text.replace(/[\s+−–()[\]-]|Pa/g, '')

/** Values of one line that stand below the blocks of readings they belong to, with a gap between them. */
function byBlock(
  values: readonly Placed[],
  runs: readonly FoundRun[],
): { column?: number; values: readonly Placed[] }[] {
  const blockOf = ({ column }: Placed) =>
    runs.findIndex((run) => !run.view.turned && column >= run.left && column <= run.right)
  const groups: { block: number; values: Placed[] }[] = []
  for (const value of values) {
    const last = groups.at(-1)
    const before = last?.values.at(-1)
    const block = blockOf(value)
    const apart = before !== undefined && (value.row !== before.row || value.column - before.column > 1)
    if (last && before && (!apart || block === last.block)) last.values.push(value)
    else groups.push({ block, values: [value] })
  }
  const distinct = new Set(groups.map(({ block }) => block))
  return groups.length > 1 && distinct.size === groups.length && !distinct.has(-1)
    ? groups.map((group) => ({ column: group.values[0]?.column as number, values: group.values }))
    : [{ values }]
}

/** A pressure before or after the readings, in words this dictionary does not all know: nothing else is logged like that. */
const mayBeZero = (label: Label): boolean =>
  (label.unit?.kind === 'pressure' || says(label, 'pressure')) &&
  !says(label, 'barometer') &&
  !says(label, 'target')

/** Whether "before" and "after" stand as words of their own near a title of zero flow. */
function hasParts(view: View, row: number, column: number): boolean {
  for (let at = row; at <= row + 4; at++)
    for (let right = column; right <= column + 8; right++) {
      const text = at === row && right === column ? undefined : view.text(at, right)
      const label = text === undefined || text.length > 40 ? undefined : readLabel(text)
      // "Post baseline" has values of its own and is no part of "Baseline".
      const isPart = label && label.tokens.length <= 4 && !says(label, 'zero')
      if (isPart && (says(label, 'before') || says(label, 'after'))) return true
    }
  return false
}
