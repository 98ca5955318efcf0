import { bareUnit, unitOfHeadings } from '../../cells/stated-unit.js'
import { findUnit, type KnownUnit, shown } from '../../cells/units.js'
import type { Content } from '../grid/cell-content.js'
import type { View } from '../grid/view.js'
import type { Stopped } from '../not-searched.js'
import { isPlaceholder, type Label, readLabel, says } from '../words/label.js'
import { zeroValuesIn } from '../zero-flow/in-text.js'
import { tableBeside } from './table-beside.js'

/** A column below a heading. */
export interface Column {
  readonly at: number
  readonly label: Label
  readonly unit?: KnownUnit
  readonly headingCell: string
}

/** Headings with numbers below: what may be a table of readings. */
export interface Head {
  readonly view: View
  /** First heading row and first row of numbers. */
  readonly top: number
  readonly first: number
  readonly columns: readonly Column[]
}

const HEADING_ROWS = 4
/** A sheet of tests has a few dozen blocks; one with more headings than this is none. */
const MOST_HEADS = 120
const MOST_COLUMNS = 2500

/** Every row of a sheet where numbers begin below headings, from the top. */
export function findHeads(view: View, stopped?: Stopped): Head[] {
  const heads: Head[] = []
  let columns = 0
  for (let row = 1; row < view.rows; row++) {
    if (heads.length >= MOST_HEADS || columns >= MOST_COLUMNS) {
      stopped?.(view.address(row, 0))
      break
    }
    const under = columnsUnderText(view, row)
    if (under.length === 0) continue
    const late = under.length === 1 ? columnsBeside(view, row, under[0] as number) : []
    if (under.length + late.length < 2) continue
    const head = headAt(
      view,
      row,
      [...under, ...late].sort((a, b) => a - b),
    )
    columns += head.columns.length
    if (!head.columns.some(({ label, unit }) => isPressureLike(label, unit) || isFlowLike(label, unit)))
      continue
    heads.push(head)
  }
  return heads
}

/** Columns of a row that hold a number and have text right above, or above one blank. */
function columnsUnderText(view: View, row: number): number[] {
  const found: number[] = []
  for (let column = 0; column < view.columns; column++) {
    if (view.number(row, column) === undefined) continue
    const above = view.at(row - 1, column)
    if (isPartOfField(view, row - 1, column)) continue
    if (isHeading(headingText(view, row - 1, column))) found.push(column)
    else if (!above && isHeading(view.text(row - 2, column)) && rowIsBlankNear(view, row - 1, column))
      found.push(column)
    else if (!above && hasHeadingPastBlanks(view, row, column)) found.push(column)
  }
  return found
}

/** "Zero before | −1.2 | Pa": the label of a value and the unit behind one are no headings of what stands below. */
function isPartOfField(view: View, row: number, column: number): boolean {
  const text = view.text(row, column)
  if (text === undefined) return false
  const value = (at: number) =>
    view.number(row, at) !== undefined &&
    view.number(row + 1, at) !== undefined &&
    headingText(view, row, at) === undefined
  return value(column + 1) || (value(column - 1) && bareUnit(text) !== undefined)
}

/** So many rows without flow may stand above the first reading: thirty zero-flow values and some more. */
const ZERO_ROWS = 70

/** Columns beside a lone number whose own numbers begin further down: a table that opens with zero-flow rows. */
function columnsFilledLater(view: View, row: number, column: number): number[] {
  const found: number[] = []
  for (const at of [column - 2, column - 1, column + 1, column + 2, column + 3]) {
    const own = at < 0 ? undefined : view.at(row, at)
    if (
      at < 0 ||
      (own && !(own.kind === 'text' && (isPlaceholder(own.text) || isRemarkAbove(view, row, at, column)))) ||
      !isHeading(view.text(row - 1, at) ?? (view.at(row - 1, at) ? undefined : view.text(row - 2, at)))
    )
      continue
    for (let below = row + 1; below < Math.min(view.rows, row + ZERO_ROWS); below++) {
      const content = view.at(below, at)
      if (content?.kind === 'number') found.push(at)
      if (content) break
    }
  }
  return found
}

/** "−1.2 | fan covered" above the first reading: a word where the numbers of a column are about to begin. */
const isRemarkAbove = (view: View, row: number, at: number, column: number): boolean =>
  view.right(row, at) === at &&
  view.number(row + 1, at) !== undefined &&
  view.number(row + 1, column) !== undefined &&
  !bareUnit(view.text(row, at) ?? '')

/** Columns that make a table with a lone headed one: filled later, or without a heading. */
function columnsBeside(view: View, row: number, column: number): number[] {
  const later = columnsFilledLater(view, row, column)
  return later.length > 0 ? later : unheadedBeside(view, row, column)
}

/** So many numbers below one another in both columns are a table, of which one heading was lost. */
const FEWEST_ROWS = 4

/** A column of numbers right beside a headed one, with nothing over it. */
const unheadedBeside = (view: View, row: number, column: number): number[] =>
  [column - 1, column + 1].filter(
    (at) =>
      at >= 0 &&
      !view.at(row - 1, at) &&
      Array.from({ length: FEWEST_ROWS }, (_, index) => row + index).every(
        (one) => view.number(one, at) !== undefined && view.number(one, column) !== undefined,
      ),
  )

/** "(Pa) | | (m³/h)": a line of units between the headings and the numbers. */
const isOnlyUnits = (view: View, row: number, under: readonly number[]): boolean =>
  under.every((column) => {
    const text = view.text(row, column)
    return text === undefined ? !view.at(row, column) : bareUnit(text) !== undefined
  })

/** Two whole lines left blank between headings and numbers. */
const hasHeadingPastBlanks = (view: View, row: number, column: number): boolean =>
  isHeading(view.text(row - 3, column)) &&
  [row - 2, row - 1].every((at) =>
    Array.from({ length: view.columns }, (_, one) => one).every((one) => !view.at(at, one)),
  )

const rowIsBlankNear = (view: View, row: number, column: number): boolean =>
  view.number(row, column - 1) === undefined && view.number(row, column + 1) === undefined

const isHeading = (text: string | undefined): boolean => text !== undefined && text.length <= 80

/** The headings over a row of numbers. @param under - columns that have numbers in that row */
export function headAt(view: View, first: number, under: readonly number[]): Head {
  let top = first
  for (let row = first - 1; row >= Math.max(0, first - HEADING_ROWS); row--) {
    // A text with its own value beside it is a label, not a heading.
    const texts = under.filter(
      (column) =>
        isHeading(stackText(view, row, column)) &&
        !hasValue(view, row, column) &&
        !isUnitOfValue(view, row, column),
    ).length
    const numbers = under.some(
      (column) =>
        (view.number(row, column) !== undefined && headingText(view, row, column) === undefined) ||
        (holdsValue(view.at(row, column)) && !(row === first - 1 && isNumbered(view, row, column))),
    )
    const blank = under.every((column) => !view.at(row, column))
    // One line or two may be left blank below the headings.
    const below = top === first ? first - 2 : isOnlyUnits(view, top, under) ? top - 2 : first
    const isGap = blank && row >= below
    if (numbers || (texts === 0 && !isGap)) break
    // "Zero flow before | Mean | −1.2 | Values | …": a line of a form, whatever of it lies over the columns.
    const isOfForm = under.some(
      (column) => view.text(row, column) !== undefined && view.number(row, column + 1) !== undefined,
    )
    if (row < first - 1 && isEmptyZero(view, row, first - 1, under)) break
    if (row < first - 1 && isLineOfValues(view, row, under)) break
    const isEmpty = under.some((column) => {
      const text = view.text(row, column)
      return text !== undefined && /\p{L}|^\?$/u.test(text) && isPlaceholder(text)
    })
    if ((isOfForm || isEmpty || areLabelsBelow(view, row, under)) && row < first - 1) break
    if (
      texts === 1 &&
      under.length > 1 &&
      row < first - 1 &&
      under.some((column) => isSentence(view, row, column) || isOfOtherKind(view, row, column, first - 1))
    )
      break
    if (texts > 0) top = row
  }
  const label = top < first - 1 && isLabelOfZero(view, first - 1, under)
  const isBeside = tableBeside(view, first, under)
  const columns: Column[] = []
  for (let column = 0; column < view.columns; column++) {
    if (isBeside(column)) continue
    const made = columnAt(view, top, label ? first - 1 : first, first, column)
    if (made) columns.push(made)
  }
  return { view, top, first, columns }
}

/**
 * "Zero after (Pa) | " with no value, or with words for none, over the headings of pressures and flows: a line of the form, and none of the
 * headings. Read as one, it would make the pressures a list of zero flow.
 */
function isEmptyZero(view: View, row: number, heading: number, under: readonly number[]): boolean {
  const [column = -1] = under
  const text = view.turned ? undefined : view.text(row, column)
  const label = text === undefined ? undefined : readLabel(text)
  if (!label || !says(label, 'zero')) return false
  const below = under.map((at) => readLabel(view.text(heading, at) ?? ''))
  const isWhole =
    below.some((one) => isFlowLike(one, one.unit)) && isPressureLike(below[0] as Label, below[0]?.unit)
  const isAlone = under.length > 1 && under.every((at) => at === column || !view.at(row, at))
  return isWhole && (isAlone || (label.unit !== undefined && !label.loose && below[0]?.unit !== undefined))
}

/** "Elm Row 3 | 18/03/2026 | 290.8 | 20.5" below "House | Date | Volume | Inside": a form written across, and none of the headings. */
function isLineOfValues(view: View, row: number, under: readonly number[]): boolean {
  const beside = Array.from({ length: view.columns }, (_, column) => column).filter(
    (column) => !under.includes(column) && view.number(row, column) !== undefined,
  )
  const headed = (column: number) => view.text(row - 1, column) !== undefined
  return (
    row > 0 &&
    beside.length >= 2 &&
    beside.every(headed) &&
    under.filter((column) => view.at(row, column)).every(headed)
  )
}

/** "−1.2 | −0.9" over "zero flow, start | zero flow, end": each text is the label of the value above it. */
function areLabelsBelow(view: View, row: number, under: readonly number[]): boolean {
  const texts = under.filter((column) => view.text(row, column) !== undefined)
  return (
    texts.length > 0 &&
    texts.every(
      (column) =>
        view.number(row - 1, column) !== undefined &&
        view.number(row - 2, column) === undefined &&
        says(readLabel(view.text(row, column) ?? ''), 'zero'),
    )
  )
}

/** "Zero flow before" in a line of its own between the headings and its value, once or over each of two blocks. */
function isLabelOfZero(view: View, row: number, under: readonly number[]): boolean {
  const texts = under.flatMap((column) => view.text(row, column) ?? [])
  const isOfAll = texts.length === under.length
  // Over all columns it may be a heading: then other columns, of flows, are headed in the line above.
  const others = Array.from({ length: view.columns }, (_, column) => column).filter(
    (column) => !under.includes(column) && view.text(row - 1, column) !== undefined,
  )
  return (
    texts.length > 0 &&
    (under.length > 1 || isOfAll) &&
    texts.every((text) => says(readLabel(text), 'zero')) &&
    (!isOfAll || others.length >= under.length)
  )
}

/** "Baseline | −1.2 | Pa": the unit behind a value, in a line above the headings. */
const isUnitOfValue = (view: View, row: number, column: number): boolean =>
  view.number(row, column - 1) !== undefined && bareUnit(view.text(row, column) ?? '') !== undefined

/** Whether a value stands right behind a text, or behind one blank. */
const hasValue = (view: View, row: number, column: number): boolean =>
  view.number(row, column + 1) !== undefined ||
  (!view.at(row, column + 1) && view.number(row, column + 2) !== undefined)

/** "Zero: 0.7 Pa", "0.4 Pa before": a value with its label, no heading. */
const holdsValue = (content: Content | undefined): boolean =>
  content?.kind === 'text' && (content.numbers !== undefined || statesZeroFlow(content.text))

/** "Zero before 1 Pa | Zero before 2 Pa" right over their values: the figure counts the columns. */
const isNumbered = (view: View, row: number, column: number): boolean => {
  const [one, other, before] = [column, column + 1, column - 1].map((at) =>
    (view.text(row, at) ?? '').replace(/\d+/, '#'),
  )
  return /#/.test(one ?? '') && (one === other || one === before)
}

const statesZeroFlow = (text: string): boolean =>
  (/[:=]\s*[-+−–]?\d/.test(text) ||
    /^\s*[-+−–]?\d+(?:[.,]\d+)?\s+\p{L}/u.test(text) ||
    /\d[.,]\d|\d\s*Pa\b/.test(text)) &&
  zeroValuesIn(text) !== undefined

/** A line over the headings, of which only the first cell lies over a column: "Fan: Q = 61 · Δp^0.51", "Volume of the house 330 m³". */
const isSentence = (view: View, row: number, column: number): boolean => {
  const text = view.text(row, column)
  if (text === undefined || view.right(row, column) !== column) return false
  return (
    /[=;]|:\s*\S/.test(text) || text.length > 40 || text.trim().split(/\s+/).length > 4 || statesValue(text)
  )
}

/** "All flows in l/s" some lines over "Pressure": what it states is not of this column. */
function isOfOtherKind(view: View, row: number, column: number, heading: number): boolean {
  const unit = readLabel(view.text(row, column) ?? '').unit
  const own = readLabel(view.text(heading, column) ?? '')
  return (
    (unit?.kind === 'flow' && isPressureLike(own, own.unit)) ||
    (unit?.kind === 'pressure' && isFlowLike(own, own.unit))
  )
}

/** A number with a unit behind it that neither pressures nor flows of a column have: "330 m³", "1008 hPa". */
const statesValue = (text: string): boolean =>
  [...text.matchAll(/\d\s?([^\s\d,;()]+)/g)].some(([, word = '']) => {
    const unit = findUnit(word.replace(/[.:]$/, ''))
    return unit && (OF_VALUES.includes(unit.kind) || (unit.kind === 'pressure' && unit.unit !== 'Pa'))
  })
const OF_VALUES: readonly string[] = ['volume', 'area', 'temperature']

/** The text of a heading; "1000 m³/h" over numbers is a number to the reader of cells, and the unit of a column here. */
function headingText(view: View, row: number, column: number): string | undefined {
  const content = view.at(row, column)
  if (content?.kind !== 'number') return content?.kind === 'text' ? content.text : undefined
  const { value, unit } = content.written
  const isUnit = unit?.kind === 'flow' && [10, 100, 1000].includes(value)
  const below = isUnit ? view.at(row + 1, column) : undefined
  return below?.kind === 'number' && !below.written.unit ? `${value} ${shown(unit?.unit ?? '')}` : undefined
}

/** Text of a cell, or of the merged block over it. */
function stackText(view: View, row: number, column: number): string | undefined {
  const own = headingText(view, row, column)
  if (own !== undefined || view.at(row, column)) return own
  for (let left = column - 1; left >= Math.max(0, column - 12); left--) {
    if (!view.at(row, left)) continue
    return view.right(row, left) >= column ? view.text(row, left) : undefined
  }
  return undefined
}

function columnAt(view: View, top: number, end: number, first: number, column: number): Column | undefined {
  const pieces: { text: string; row: number }[] = []
  const isFilled = view.number(first, column) !== undefined || view.number(first + 1, column) !== undefined
  for (let row = top; row < end; row++) {
    const text = stackText(view, row, column)
    if (!isFilled && row < first - 1 && leadsToValue(view, row, column)) continue
    if (text !== undefined && isHeading(text)) pieces.push({ text, row })
  }
  const stated = pieces.length === 0 ? statedPressure(view, first - 1, column) : undefined
  if (stated) pieces.push({ text: stated, row: first - 1 })
  if (pieces.length === 0) {
    // Names or numbers of the rows, which need no heading.
    const named = view.text(first, column) !== undefined && view.at(first + 1, column) !== undefined
    if (view.number(first, column) === undefined && !named) return undefined
    return { at: column, label: readLabel(''), headingCell: view.address(first, column) }
  }
  const words = pieces.filter(({ text }) => !bareUnit(text))
  const label = readLabel(words.map(({ text }) => text).join(' '))
  const unit = unitOfHeadings(pieces.map(({ text }) => text))
  const { row } = (words.at(-1) ?? pieces.at(-1)) as { row: number }
  return {
    at: column,
    label: words.length > 0 ? label : readLabel(pieces.at(-1)?.text ?? ''),
    ...(unit ? { unit } : {}),
    headingCell: view.address(row, column),
  }
}

/** "Zero flow (Pa) | before | −1.2 | after | −0.9" over the headings: a text with its values behind it, and no numbers below. */
const leadsToValue = (view: View, row: number, column: number): boolean =>
  view.text(row, column) !== undefined &&
  (hasValue(view, row, column) ||
    (view.text(row, column + 1) !== undefined && view.number(row, column + 2) !== undefined))

/** "50 Pa" over a column of flows is a number to the reader of cells, and a heading here. */
function statedPressure(view: View, row: number, column: number): string | undefined {
  const content = view.at(row, column)
  if (content?.kind !== 'number' || view.number(row + 1, column) === undefined) return undefined
  const { value, unit } = content.written
  return unit?.unit === 'Pa' ? `${value} Pa` : undefined
}

export const isPressureLike = (label: Label, unit: KnownUnit | undefined): boolean =>
  unit
    ? unit.kind === 'pressure'
    : says(label, 'pressure') || (says(label, 'induced') && !says(label, 'flow'))

export const isFlowLike = (label: Label, unit: KnownUnit | undefined): boolean =>
  unit ? unit.kind === 'flow' : says(label, 'flow') && !says(label, 'pressure')
