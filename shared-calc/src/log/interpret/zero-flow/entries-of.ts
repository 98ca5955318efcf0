import type { Direction } from '../../../contract/record/index.js'
import { bareUnit } from '../../cells/stated-unit.js'
import { leadOf, type View } from '../grid/view.js'
import { tickedIn } from '../tables/runs.js'
import { directionIn, isPlaceholder, type Label, readLabel, says, unitOf } from '../words/label.js'
import type { ZeroEntry } from './entry.js'
import { FAR, headingAbove, isOfOneSign } from './headings.js'
import type { Placed } from './values-near.js'

export function entriesOf(
  view: View,
  row: number,
  column: number,
  label: Label,
  title: Label | undefined,
  values: readonly Placed[],
  before: boolean,
  after: boolean,
): ZeroEntry[] {
  const parted = byDirection(view, row, values)
  if (parted)
    return parted.flatMap(({ direction, own }) =>
      entriesOf(view, row, own[0]?.column ?? column, label, title, own, before, after).map((entry) => ({
        ...entry,
        direction,
      })),
    )
  const unit = unitOf(label, 'pressure') ?? unitOf(title, 'pressure')
  const base = {
    view,
    row,
    column,
    ...(unit ? { unit } : {}),
    label: label.text,
    labelCell: view.address(row, column),
  }
  // One column with a row for each direction.
  const led = values.map((value) => ({
    value,
    of: directionIn(readLabel(leadOf(view, value.row, value.column, FAR) ?? '')),
  }))
  const isOfBoth = led.every(({ of }) => of) && new Set(led.map(({ of }) => of)).size > 1
  const own =
    directionIn(label) ??
    (title ? directionIn(title) : undefined) ??
    (isOfBoth
      ? undefined
      : (directionIn(readLabel(view.name)) ??
        directionOfHeading(view, row, column) ??
        leadingDirection(view, row, column)))
  const isLed = !own && values.length > 1 && led.every(({ of }) => of)
  const over = own ?? (title && before !== after && !isLed ? titleOver(view, row, column) : undefined)
  const direction = over ? { direction: over } : {}
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
  if (isLed && new Set(led.map(({ of }) => of)).size > 1)
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

/** "Depressurisation | zero before | −1.2 | zero after | −0.8": the direction in front of the labels of a line goes for all of it. */
function leadingDirection(view: View, row: number, column: number): Direction | undefined {
  for (let at = column - 1; at >= 0; at--) {
    const text = view.text(row, at)
    const label = text === undefined || text.length > 60 ? undefined : readLabel(text)
    const direction = label && label.tokens.length <= 4 ? directionIn(label) : undefined
    if (direction && !isOfOneSign(text ?? '')) return direction
  }
  return undefined
}

/** A heading of directions over a column of zero-flow values, past the lines of zero flow in between. */
function directionOfHeading(view: View, row: number, column: number): Direction | undefined {
  for (let at = row - 1; at >= Math.max(0, row - TITLE_ROWS); at--) {
    const ticked = row - at <= 2 ? tickedIn(view, at) : undefined
    if (ticked) return ticked.direction
    const text = view.text(at, column)
    if (text === undefined && (view.at(at, column) || row - at > 2)) return undefined
    if (text === undefined || bareUnit(text) || isPlaceholder(text)) continue
    const label = readLabel(text)
    const direction = label.tokens.length <= 5 ? directionIn(label) : undefined
    if (direction || !(says(label, 'zero') || says(label, 'before') || says(label, 'after'))) return direction
  }
  return undefined
}

/** "before | after | before | after" below the titles of both directions, each over the first of its columns. */
function byDirection(
  view: View,
  row: number,
  values: readonly Placed[],
): { direction: Direction; own: Placed[] }[] | undefined {
  if (values.length < 4 || values.some((value) => value.row !== row)) return undefined
  const titled = values.map((value) => ({ value, of: titleOver(view, row, value.column) }))
  const parts = (['depressurisation', 'pressurisation'] as const).map((direction) => ({
    direction,
    own: titled.filter(({ of }) => of === direction).map(({ value }) => value),
  }))
  const [one, other] = parts
  const isWhole = one && other && one.own.length === other.own.length
  return isWhole && one.own.length * 2 === values.length ? parts : undefined
}

const TITLE_ROWS = 4
const TITLE_COLUMNS = 3

/** The direction named over a column, or over the last column in front of it that has a title in that line. */
function titleOver(view: View, row: number, column: number): Direction | undefined {
  for (let at = row - 1; at >= Math.max(0, row - TITLE_ROWS); at--)
    for (let left = column; left >= Math.max(0, column - TITLE_COLUMNS); left--) {
      const text = view.text(at, left)
      if (text === undefined) continue
      const direction = directionIn(readLabel(text))
      if (direction) return direction
      break
    }
  return undefined
}
