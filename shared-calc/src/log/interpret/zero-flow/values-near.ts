import { bareUnit } from '../../cells/stated-unit.js'
import type { KnownUnit } from '../../cells/units.js'
import { BLANKS } from '../fields/value-beside.js'
import { leadOf, type View } from '../grid/view.js'
import { isSummary } from '../tables/row-labels.js'
import type { FoundRun } from '../tables/runs.js'
import type { Figure } from '../tables/table-row.js'
import { directionIn, type Label, readLabel, says } from '../words/label.js'
import { type Moment, momentIn, momentsAbove } from '../words/moments.js'
import { isInColumn } from './column-of-numbers.js'
import {
  FAR,
  HEADED,
  headingAbove,
  NOT_VALUES,
  namesNoValue,
  SPREAD,
  statisticIn,
  statisticsIn,
} from './headings.js'
import { meanAtEnd, type ZeroInText, zeroValuesIn } from './in-text.js'

export interface Placed extends Figure {
  row: number
  column: number
  which?: 'before' | 'after'
}

export function valuesOf(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
  runs: readonly FoundRun[],
): Placed[] {
  const named = withMomentsBehind(view, row, column, isTaken)
  if (named) return named
  const own = leftOf(view, row, column, isTaken)
  if (own) return [own]
  const right = rightOf(view, row, column, isTaken)
  if (runs.length === 1 && areOfSeveralRuns(view, row, right)) return []
  if (right.length > 0)
    return inMoments(
      view,
      row,
      column,
      meanByHeading(view, row, meansOf(view.text(row, column) ?? '', right)),
    )
  const below = belowOf(view, row, column, isTaken)
  const [only] = below
  if (!only && !view.at(row + 1, column) && !isTaken(row + 1, column + 1)) {
    const line = lineBelow(view, row, column, isTaken)
    if (line.length > 1) return line
    const content = view.at(row + 1, column + 1)
    // "Zero flow before" in a line of its own, with the value below and one column on.
    return content?.kind === 'number'
      ? [{ ...content.written, cell: view.address(row + 1, column + 1), row: row + 1, column: column + 1 }]
      : []
  }
  if (!only || below.length > 1) return below
  // "Δp₀ before / after" over two values side by side.
  const next = view.at(only.row, only.column + 1)
  const label = readLabel(view.text(row, column) ?? '')
  const isPair = says(label, 'before') && says(label, 'after') && !view.at(row, column + 1)
  if (isPair && next?.kind === 'number' && !isTaken(only.row, only.column + 1))
    return [
      only,
      {
        ...next.written,
        cell: view.address(only.row, only.column + 1),
        row: only.row,
        column: only.column + 1,
      },
    ]
  // One line of values below its label, each in the pressure column of a block.
  const beside = runs.flatMap(({ view: own, block, left, right: end }): Placed[] => {
    const { at } = block.pressure
    // The label's own block, and a value with a label of its own, as "before | after".
    if ((column >= left && column <= end) || view.at(row, at)) return []
    const content = own.name === view.name && !own.turned && at !== column ? view.at(only.row, at) : undefined
    return content?.kind === 'number' && !isTaken(only.row, at)
      ? [{ ...content.written, cell: view.address(only.row, at), row: only.row, column: at }]
      : []
  })
  // Blocks below one another have one column of pressures.
  return [only, ...beside.filter(({ cell }, index) => beside.findIndex((one) => one.cell === cell) === index)]
}

/** "Zero before | −1.2 | −0.8" below "Dep 1 | Dep 2" over the readings of one of the two: whose they are, the log does not say. */
function areOfSeveralRuns(view: View, row: number, values: readonly Placed[]): boolean {
  const headings = values.flatMap(({ column }) => headingAbove(view, row, column, HEADED) ?? [])
  const named = new Set(headings.map(directionIn))
  return (
    values.length > 1 &&
    headings.length === values.length &&
    named.size === 1 &&
    !named.has(undefined) &&
    new Set(headings.map(({ text }) => text)).size === values.length
  )
}

/** "Fan closed (Pa) | 1st dep | 2nd dep | 1st pres | 2nd pres" over a line of values: each has a heading of its own. */
function lineBelow(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
): Placed[] {
  const found: Placed[] = []
  for (let at = column + 1; at < view.columns && !isTaken(row + 1, at); at++) {
    const content = view.at(row + 1, at)
    const heading = readLabel(view.text(row, at) ?? '')
    const isNamed = directionIn(heading) !== undefined || momentIn(heading.text) !== undefined
    if (content?.kind !== 'number' || !isNamed) break
    found.push({ ...content.written, cell: view.address(row + 1, at), row: row + 1, column: at })
  }
  return found
}

/** "−1.4 | Pa zero flow before | | 0.7 | Pa zero flow before": the value in front of a label that has none behind it. */
function leftOf(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
): Placed | undefined {
  const at = column - 1
  const content = view.at(row, at)
  if (content?.kind !== 'number' || isTaken(row, at)) return undefined
  const behind = view.right(row, column) + 1
  return view.text(row, at - 1) === undefined && view.at(row, behind) === undefined
    ? { ...content.written, cell: view.address(row, at), row, column: at }
    : undefined
}

/** "Zero flow | −1.4 | Pa before | −0.9 | Pa after": the moment of each value stands behind it. */
function withMomentsBehind(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
): Placed[] | undefined {
  const found: Placed[] = []
  for (let at = view.right(row, column) + 1; found.length < 2; at += 2) {
    const content = view.at(row, at)
    const which = momentIn(view.text(row, at + 1))
    if (content?.kind !== 'number' || !which || which === 'mean' || isTaken(row, at)) return undefined
    found.push({ ...content.written, cell: view.address(row, at), row, column: at, which })
  }
  return found[0]?.which === found[1]?.which || momentIn(view.text(row, column)) ? undefined : found
}

/** Behind "zero flow min / max / avg" only the mean counts. */
function meansOf(label: string, values: readonly Placed[]): readonly Placed[] {
  const statistics = statisticsIn(label)
  return statistics.length > 1 && statistics.length === values.length && statistics.includes('mean')
    ? values.filter((_, index) => statistics[index] === 'mean')
    : values
}

/** Below "mini | maxi | moyenne" only the mean counts, whatever the other headings say, unless they are moments. */
function meanByHeading(view: View, row: number, values: readonly Placed[]): readonly Placed[] {
  if (values.length < 2) return values
  const headings = values.map(({ column }) => headingAbove(view, row, column, HEADED))
  const means = values.filter((_, index) => statisticIn(headings[index]?.text) === 'mean')
  // "Positive | negative | average" over 0.4, −1.6 and −1.1: signs of the values, and no directions.
  const isSign = (index: number): boolean =>
    statisticIn(headings[index]?.text) === 'other' &&
    (values[index]?.value ?? 0) * (directionIn(headings[index]) === 'pressurisation' ? 1 : -1) >= 0
  const isOfMoments = headings.some(
    (one, index) => says(one, 'before') || says(one, 'after') || (directionIn(one) && !isSign(index)),
  )
  if (means.length === 1 && headings.every((one) => one) && !isOfMoments) return means
  return wholeOfSigns(values, headings) ?? values
}

/** "X + | X − | X" over three values, in whatever word: the one without a sign is that of all. */
function wholeOfSigns(
  values: readonly Placed[],
  headings: readonly (Label | undefined)[],
): readonly Placed[] | undefined {
  const texts = headings.map((one) => one?.text.trim() ?? '')
  const fronts = texts.map((text) => SIGNED.exec(text)?.[1]?.trim())
  const whole = texts.findIndex((text, index) => text !== '' && fronts[index] === undefined)
  const isOfAll =
    values.length === 3 && fronts.every((front, index) => index === whole || front === texts[whole])
  return isOfAll && whole >= 0 ? values.slice(whole, whole + 1) : undefined
}

const SIGNED = /^([^+−–-]{1,40})[+−–-]$/

/** "Zero flow | −1.7 | −1.1 | −1.4" below the headings "before", "after" and "mean". */
function inMoments(view: View, row: number, column: number, values: readonly Placed[]): Placed[] {
  // "Zero before (Pa)" below "before sealing" and "after sealing": these are two tests.
  const label = readLabel(view.text(row, column) ?? '')
  if (says(label, 'before') !== says(label, 'after')) return [...values]
  const moments = momentsAbove(
    view,
    row,
    values.map(({ column }) => column),
  )
  if (moments.length === 0) return [...values]
  return values.flatMap((value, index) => {
    const which = moments[index]
    return which === 'before' || which === 'after' ? [{ ...value, which }] : []
  })
}

/** So many blanks end the values of a line; behind the label as many as in a form. */
const BEHIND_LABEL = BLANKS + 1
const BEHIND_LIST = 2

function rightOf(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
): Placed[] {
  const found: Placed[] = []
  let blanks = 0
  let isExtreme = false
  let which: Moment | undefined
  // "Zero flow before | hPa | −0.012": the unit in front of the first value.
  let front: KnownUnit | undefined
  const endsInLetter = /\s\p{L}$/u.test(view.text(row, column)?.trim() ?? '')
  for (let at = view.right(row, column) + 1; at < view.columns; at++) {
    const content = view.at(row, at)
    if (!content) {
      // Behind a list a number further off is none of it.
      if (++blanks >= (found.length > 1 ? BEHIND_LIST : BEHIND_LABEL)) break
      continue
    }
    if (isTaken(row, at)) break
    // What was struck out is replaced by the value behind it.
    if (content.kind === 'struck') continue
    const unit = content.kind === 'text' ? bareUnit(content.text) : undefined
    if (unit?.kind === 'pressure') {
      // Behind values that have theirs it is that of the next.
      if (found.every((one) => one.unit)) front = unit
      else setUnit(found, unit)
    }
    if (content.kind === 'number') {
      // "−1.4 | Pa | 30 s": for how long it was taken.
      const behind = content.written.unit ?? unitBehind(view, row, at)
      if (behind && behind.kind !== 'pressure') break
      const heading = headingAbove(view, row, at, HEADED)
      // Beside a value that is shown, the figures of a hidden column are of something else; so is what stands far off without a heading.
      const [shown] = found
      if (shown && !view.hidden(shown.row, shown.column) && view.hidden(row, at)) break
      if (blanks > 1 && found.length > 0 && !heading) break
      // Past a blank, numbers below one another are another table.
      if (blanks > 0 && found.length > 0 && isInColumn(view, row, at)) break
      if (!isExtreme && !namesNoValue(heading))
        found.push({
          ...(front ? { unit: front } : {}),
          ...content.written,
          cell: view.address(row, at),
          row,
          column: at,
          ...(which && which !== 'mean' ? { which } : {}),
        })
      isExtreme = false
      blanks = 0
    } else if (content.kind === 'text' && meanAtEnd(content.text)) {
      const mean = meanAtEnd(content.text) as ZeroInText
      found.push({ ...mean, cell: view.address(row, at), row, column: at })
    } else if (content.kind === 'text' && content.numbers) {
      found.push(...content.numbers.map((one) => ({ ...one, cell: view.address(row, at), row, column: at })))
    } else if (content.kind === 'text' && zeroValuesIn(content.text)) {
      const values = zeroValuesIn(content.text) ?? []
      found.push(...values.map((one) => ({ ...one, cell: view.address(row, at), row, column: at })))
    } else if (content.kind !== 'text') break
    // "min | −2.1 | mean | −1.2 | values | −1.0 …": the mean alone is read.
    else if (
      NOT_VALUES.test(content.text.trim().toLowerCase()) ||
      SPREAD.test(content.text) ||
      statisticIn(content.text) === 'other'
    )
      isExtreme = true
    else if (isSummary(content.text) && found.length === 0) continue
    // "Zero flow b | −1.7 | a | −1.1", and in Dutch "voor | −1.7 | na | −1.1"
    else if (content.text.length <= 2 && view.number(row, at + 1) !== undefined) {
      const moment = momentIn(content.text)
      // "−0.3 | Pa | n | 0.65 | r² | 0.999": the symbol of another value; behind "Zero flow b" the letter a is the other moment.
      const isSymbol = /\p{L}/u.test(content.text) && !bareUnit(content.text) && !endsInLetter
      if (!moment && found.length > 0 && isSymbol) break
      which = moment ?? which
    } else if (!bareUnit(content.text) || found.length > 1) break
  }
  return found
}

/** "30 | s", but in "−1.4 | min | −3.1" the least of the values. */
function unitBehind(view: View, row: number, at: number): KnownUnit | undefined {
  const text = view.text(row, at + 1) ?? ''
  return /^min\.?$/i.test(text.trim()) && view.number(row, at + 2) !== undefined ? undefined : bareUnit(text)
}

/** "−0.2 | mm H₂O": the unit behind values that state none. */
function setUnit(values: Placed[], unit: KnownUnit): void {
  for (const [index, value] of values.entries()) if (!value.unit) values[index] = { ...value, unit }
}

function belowOf(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
): Placed[] {
  const found: Placed[] = []
  let skipped = 0
  const mean = meanBelow(view, row, column, isTaken)
  if (mean) return [mean]
  for (let at = row + 1; at < view.rows; at++) {
    const content = view.at(at, column)
    if (isTaken(at, column)) break
    if (content?.kind === 'number') {
      const left = leadOf(view, at, column)
      // Below a list its mean; alone it is the value itself.
      if (found.length > 0 && left !== undefined && isSummary(left)) break
      // "Zero flow | −0.3 | −0.1" with the numbers of the readings in the next line.
      if (found.length > 0 && isOfOtherLine(leadOf(view, row + 1, column), left)) break
      const unit = bareUnit(view.text(at, column + 1) ?? '')
      found.push({
        ...(unit?.kind === 'pressure' ? { unit } : {}),
        ...content.written,
        cell: view.address(at, column),
        row: at,
        column,
      })
    } else if (found.length > 0 || ++skipped > 2) break
    // Seconds of a list of values have a column of their own, and are no pressures.
    else if (content && !(content.kind === 'text' && bareUnit(content.text)?.kind === 'pressure')) break
  }
  return found
}

const isOfOtherLine = (first: string | undefined, lead: string | undefined): boolean =>
  first !== undefined &&
  lead !== undefined &&
  says(readLabel(first), 'zero') &&
  !says(readLabel(lead), 'zero')

/** "Mean of positive values | mean of negative values | mean of all values" below one another: the last is the zero flow. */
function meanBelow(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
): Placed | undefined {
  let mean: Placed | undefined
  let others = 0
  for (let at = row + 1; at <= row + 6 && !isTaken(at, column); at++) {
    const content = view.at(at, column)
    if (content?.kind !== 'number') break
    const statistic = statisticIn(leadOf(view, at, column, FAR))
    if (statistic === undefined) return undefined
    if (statistic === 'other') others++
    else mean ??= { ...content.written, cell: view.address(at, column), row: at, column }
  }
  return others > 0 ? mean : undefined
}
