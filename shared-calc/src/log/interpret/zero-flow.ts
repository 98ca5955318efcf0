import type { Direction } from '../../contract/record/index.js'
import { bareUnit } from '../cells/stated-unit.js'
import type { KnownUnit } from '../cells/units.js'
import { leadOf, type View } from './grid/view.js'
import type { Stopped } from './not-searched.js'
import { type Figure, isSummary } from './tables/rows.js'
import { type FoundRun, tickedIn } from './tables/runs.js'
import { directionIn, type Label, readLabel, says, unitOf } from './words/label.js'
import { zeroValuesIn } from './zero-flow-text.js'

/** Zero-flow values found by their labels outside the tables of readings. */
export interface ZeroEntry {
  readonly view: View
  readonly row: number
  readonly column: number
  readonly which?: 'before' | 'after'
  readonly direction?: Direction
  readonly figures: readonly Figure[]
  readonly unit?: KnownUnit
  readonly label: string
  readonly labelCell: string
  /** Two values without a word: taken as before and after, as they stand. */
  readonly inOrder?: true
  /** One of two values in a row, given to the runs in their order. */
  readonly byOrder?: true
  /** The run it was given to. */
  readonly run?: FoundRun
  /** The test whose row of a list it stands in. */
  readonly test?: string
}

/** Texts of a sheet that are looked at as labels; a form has a few hundred. */
export const MOST_LABELS = 4000

const NOT_VALUES = /^(min|max|std|sd|stdev|stabw|s|count|dauer|duration)$/

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
  const sheetSays = says(readLabel(view.name), 'zero')
  for (let row = 0; row < view.rows; row++)
    for (let column = 0; column < view.columns; column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 90 || isTaken(row, column)) continue
      if (++looked > MOST_LABELS) {
        stopped(view.address(row, column))
        return entries
      }
      const label = readLabel(text)
      const zero = says(label, 'zero')
      const before = says(label, 'before')
      const after = says(label, 'after')
      const title = zero ? undefined : zeroTitle(view, row, column)
      const likely = !zero && before !== after && mayBeZero(label)
      if (!zero && !likely && !((before || after) && label.tokens.length <= 5 && (title || sheetSays)))
        continue
      const inner = zero || title || likely ? zeroValuesIn(text) : undefined
      const values = inner
        ? inner.map((one) => ({ ...one, cell: view.address(row, column), column, row }))
        : valuesOf(view, row, column, isTaken, runs)
      const fresh = values.filter(({ cell }) => !consumed.has(cell))
      if (fresh.length === 0 || (likely && fresh.some(({ value }) => Math.abs(value) > LIKELY_MOST))) continue
      if (!before && !after && hasParts(view, row, column)) continue
      if (isOfOneSign(text) && hasWhole(view, row, column)) continue
      for (const { cell } of fresh) consumed.add(cell)
      for (const own of byBlock(fresh, runs))
        entries.push(...asEntries(view, row, own.column ?? column, label, title, own.values, before, after))
    }
  return entries
}

/** "Δp01+", "p02 (−)": the mean of the values of one sign only, as a standard asks for beside the mean of all. */
const isOfOneSign = (text: string): boolean => {
  const bare = text
    .replace(/\s/g, '')
    .replace(/[([]?Pa[)\]]?$/, '')
    .replace(/[)\]]$/, '')
  return /\d[([]?[+−–-]$/.test(bare)
}

/** Whether the mean of all values stands in the same line or column of labels. */
function hasWhole(view: View, row: number, column: number): boolean {
  for (let step = -6; step <= 6; step++)
    for (const text of [view.text(row, column + step), view.text(row + step, column)])
      if (text !== undefined && step !== 0 && !isOfOneSign(text) && says(readLabel(text), 'zero')) return true
  return false
}

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

/** With the fan off no house is at more than this, Pa. */
const LIKELY_MOST = 15

/** A pressure before or after the readings, in words this dictionary does not all know: nothing else is logged like that. */
const mayBeZero = (label: Label): boolean =>
  (label.unit?.kind === 'pressure' || says(label, 'pressure')) &&
  !says(label, 'barometer') &&
  !says(label, 'target')

interface Placed extends Figure {
  row: number
  column: number
  which?: 'before' | 'after'
}

function valuesOf(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
  runs: readonly FoundRun[],
): Placed[] {
  const right = rightOf(view, row, column, isTaken)
  if (right.length > 0) return right
  const below = belowOf(view, row, column, isTaken)
  const [only] = below
  if (!only && !view.at(row + 1, column) && !isTaken(row + 1, column + 1)) {
    const content = view.at(row + 1, column + 1)
    // "Zero flow before" in a line of its own, with the value below and one column on.
    return content?.kind === 'number'
      ? [{ ...content.written, cell: view.address(row + 1, column + 1), row: row + 1, column: column + 1 }]
      : []
  }
  if (!only || below.length > 1) return below
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
  return [only, ...beside]
}

function rightOf(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
): Placed[] {
  const found: Placed[] = []
  let blanks = 0
  let isExtreme = false
  for (let at = view.right(row, column) + 1; at < view.columns && blanks < 4; at++) {
    const content = view.at(row, at)
    if (!content) {
      blanks++
      continue
    }
    if (isTaken(row, at)) break
    if (content.kind === 'number') {
      const heading = headingAbove(view, row, at, 2)
      if (!isExtreme && !namesNoValue(heading))
        found.push({ ...content.written, cell: view.address(row, at), row, column: at })
      isExtreme = false
      blanks = 0
    } else if (content.kind === 'text' && content.numbers) {
      found.push(...content.numbers.map((one) => ({ ...one, cell: view.address(row, at), row, column: at })))
    } else if (content.kind === 'text' && zeroValuesIn(content.text)) {
      const values = zeroValuesIn(content.text) ?? []
      found.push(...values.map((one) => ({ ...one, cell: view.address(row, at), row, column: at })))
    } else if (content.kind !== 'text') break
    // "min | −2.1 | mean | −1.2 | values | −1.0 …": the mean alone is read.
    else if (NOT_VALUES.test(content.text.trim().toLowerCase())) isExtreme = true
    else if (isSummary(content.text) && found.length === 0) continue
    else if (!bareUnit(content.text) || found.length > 1) break
  }
  return found
}

/** Headings over figures that are no readings: extremes, spreads, means of one sign. */
const namesNoValue = (heading: Label | undefined): boolean =>
  heading !== undefined &&
  (isOfOneSign(heading.text) ||
    (heading.tokens.length <= 2 && heading.tokens.some((token) => NOT_VALUES.test(token))))

function belowOf(
  view: View,
  row: number,
  column: number,
  isTaken: (row: number, column: number) => boolean,
): Placed[] {
  const found: Placed[] = []
  let skipped = 0
  for (let at = row + 1; at < view.rows; at++) {
    const content = view.at(at, column)
    if (isTaken(at, column)) break
    if (content?.kind === 'number') {
      const left = leadOf(view, at, column)
      // Below a list its mean; alone it is the value itself.
      if (found.length > 0 && left !== undefined && isSummary(left)) break
      found.push({ ...content.written, cell: view.address(at, column), row: at, column })
    } else if (found.length > 0 || ++skipped > 2) break
    else if (content && !(content.kind === 'text' && bareUnit(content.text))) break
  }
  return found
}

function headingAbove(view: View, row: number, column: number, most: number): Label | undefined {
  for (let at = row - 1; at >= Math.max(0, row - most); at--) {
    const text = view.text(at, column)
    if (text !== undefined) return bareUnit(text) ? undefined : readLabel(text)
    if (view.number(at, column) !== undefined) continue
  }
  return undefined
}

/** A title above or left of a "before" or "after" that names zero flow. */
function zeroTitle(view: View, row: number, column: number): Label | undefined {
  for (let at = row; at >= Math.max(0, row - 6); at--)
    for (let left = column; left >= Math.max(0, column - 8); left--) {
      if (at === row && left === column) continue
      const text = view.text(at, left)
      const label = text === undefined || text.length > 90 ? undefined : readLabel(text)
      if (label && says(label, 'zero')) return label
    }
  return undefined
}

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

function asEntries(
  view: View,
  row: number,
  column: number,
  label: Label,
  title: Label | undefined,
  values: readonly Placed[],
  before: boolean,
  after: boolean,
): ZeroEntry[] {
  const unit = unitOf(label, 'pressure') ?? unitOf(title, 'pressure')
  const base = {
    view,
    row,
    column,
    ...(unit ? { unit } : {}),
    label: label.text,
    labelCell: view.address(row, column),
  }
  const own =
    directionIn(label) ??
    (title ? directionIn(title) : undefined) ??
    directionIn(readLabel(view.name)) ??
    directionOfHeading(view, row, column)
  const direction = own ? { direction: own } : {}
  if (values.some((value) => value.which))
    return (['before', 'after'] as const).flatMap((which) => {
      const own = values.filter((value) => (value.which ?? (before ? 'before' : 'after')) === which)
      return own.length > 0 ? [{ ...base, ...direction, which, figures: own }] : []
    })
  if (before && after) {
    const half = Math.ceil(values.length / 2)
    return [
      { ...base, ...direction, which: 'before', figures: values.slice(0, half) },
      { ...base, ...direction, which: 'after', figures: values.slice(half) },
    ]
  }
  const which = before ? { which: 'before' as const } : after ? { which: 'after' as const } : {}
  // One line with a column for each direction.
  const headed = values.map((value) => ({
    value,
    of: directionIn(headingAbove(view, row, value.column, 14)),
  }))
  if (values.length === 2 && headed[0]?.of && headed[1]?.of && headed[0].of !== headed[1].of)
    return headed.map(({ value, of }) => ({
      ...base,
      column: value.column,
      ...which,
      direction: of as Direction,
      figures: [value],
    }))
  // One column with a row for each direction.
  const led = values.map((value) => ({
    value,
    of: directionIn(readLabel(leadOf(view, value.row, value.column) ?? '')),
  }))
  if (!own && values.length > 1 && new Set(led.map(({ of }) => of)).size > 1 && led.every(({ of }) => of))
    return (['depressurisation', 'pressurisation'] as const).map((of) => ({
      ...base,
      ...which,
      direction: of,
      figures: led.filter((one) => one.of === of).map(({ value }) => value),
    }))
  const [first, second] = values
  if (first && second && values.length === 2 && !before && !after)
    return [
      { ...base, ...direction, which: 'before', inOrder: true, figures: [first] },
      { ...base, ...direction, which: 'after', inOrder: true, figures: [second] },
    ]
  return [{ ...base, ...direction, ...which, figures: values }]
}

/** A heading of directions over a column of zero-flow values. */
function directionOfHeading(view: View, row: number, column: number): Direction | undefined {
  const ticked = tickedIn(view, row - 1) ?? tickedIn(view, row - 2)
  if (ticked) return ticked.direction
  const above = headingAbove(view, row, column, 2)
  return above && above.tokens.length <= 5 ? directionIn(above) : undefined
}

/** Things that are noted before and after a test, and are no pressures. */
const isOfOther = (label: Label): boolean =>
  (['temperature', 'time', 'date', 'wind', 'humidity', 'flow', 'volume', 'index', 'speed'] as const).some(
    (thing) => says(label, thing),
  )

/**
 * Small pressures by a label this dictionary does not know: where a log seems to hold no zero flow they may be it, and are asked about.
 * In the order of the sheet, before and after by turns.
 */
export function unknownPressures(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  known: readonly ZeroEntry[],
): ZeroEntry[] {
  const found: ZeroEntry[] = []
  for (let row = 0; row < Math.min(view.rows, 300); row++)
    for (let column = 0; column < Math.min(view.columns, 40); column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 90 || isTaken(row, column) || bareUnit(text)) continue
      const label = readLabel(text)
      const content = view.at(row, column + 1)
      if (content?.kind !== 'number' || isTaken(row, column + 1)) continue
      const beside = view.text(row, column + 2)
      const unit = content.written.unit ?? label.unit ?? (beside === undefined ? undefined : bareUnit(beside))
      const said = says(label, 'before') !== says(label, 'after')
      // "N.DR. VOR | −1.2": a word for before or after is as good as the unit.
      const likely = unit ? unit.kind === 'pressure' && !says(label, 'barometer') : said && !isOfOther(label)
      if (!likely || Math.abs(content.written.value) > LIKELY_MOST) continue
      const cell = view.address(row, column + 1)
      if (known.some(({ figures }) => figures.some((one) => one.cell === cell))) continue
      // Of two blocks side by side each has its own before and after.
      const above = found.filter((one) => one.column === column).length
      const word = says(label, 'before') ? ('before' as const) : ('after' as const)
      const which = said ? word : above % 2 === 0 ? ('before' as const) : ('after' as const)
      found.push({
        view,
        row,
        column,
        which,
        figures: [{ ...content.written, cell }],
        ...(unit ? { unit } : {}),
        label: label.text,
        labelCell: view.address(row, column),
      })
    }
  return found
}

/** Texts that speak of zero flow, for a log of which none was read: at most a few, as label and cell. */
export function mentionsOfZeroFlow(views: readonly View[]): { label: string; labelCell: string }[] {
  const found: { label: string; labelCell: string }[] = []
  for (const view of views)
    for (let row = 0; row < Math.min(view.rows, 300); row++)
      for (let column = 0; column < Math.min(view.columns, 40) && found.length < MOST_MENTIONS; column++) {
        const text = view.text(row, column)
        if (text !== undefined && text.length <= 120 && says(readLabel(text), 'zero'))
          found.push({ label: text, labelCell: view.address(row, column) })
      }
  return found
}

const MOST_MENTIONS = 4
