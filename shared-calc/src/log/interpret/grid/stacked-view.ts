import { bareUnit } from '../../cells/stated-unit.js'
import { type KnownUnit, shown } from '../../cells/units.js'
import { directionIn, readLabel, says } from '../words/label.js'
import type { Content } from './cell-content.js'
import { cellsOf, READ, type View } from './view.js'

/** Fewer points below one another are no readings, unless the method asks for no more. */
const FEWEST = 4
/** Rows from the pressure of a point to its flow, and to the next point. */
const FARTHEST = 6

/** A label with the number right of it. */
interface Line {
  readonly row: number
  readonly kind: 'pressure' | 'flow'
  readonly label: string
  readonly unit: KnownUnit | undefined
}

interface Point {
  readonly pressure: Line
  readonly flow: Line
}

/** A row of the view: one of the sheet, the headings of a group of points, or a point. */
type Row = number | { readonly head: Point } | Point

/**
 * A sheet whose readings stand in lines below one another ("Pressure | −55.3 | Pa", "Flow | 412 | m³/h", and again for the next point)
 * with a row for each point and headings over them. Undefined where there are no such lines.
 * @param fewest - readings that the method of the test asks of a run
 */
export function stackedView(view: View, fewest: number): View | undefined {
  for (let column = 0; column + 1 < Math.min(view.columns, READ.columns); column++) {
    const groups = groupsOf(linesOf(view, column), fewest > 2 ? FEWEST : fewest, (row) =>
      beginsAnew(view, row, column),
    )
    if (groups.length > 0) return unstacked(view, column, groups)
  }
  return undefined
}

function linesOf(view: View, column: number): Line[] {
  const lines: Line[] = []
  for (let row = 0; row < Math.min(view.rows, READ.rows); row++) {
    const text = view.text(row, column)
    const content = text === undefined ? undefined : view.at(row, column + 1)
    if (text === undefined || content?.kind !== 'number') continue
    const label = readLabel(text)
    const unit = content.written.unit ?? label.unit ?? bareUnit(view.text(row, column + 2) ?? '')
    if (says(label, 'zero') || says(label, 'barometer') || says(label, 'target')) continue
    const kind =
      unit?.kind === 'pressure' || unit?.kind === 'flow'
        ? unit.kind
        : unit !== undefined
          ? undefined
          : says(label, 'flow')
            ? 'flow'
            : says(label, 'pressure')
              ? 'pressure'
              : undefined
    if (kind && !(kind === 'pressure' && says(label, 'device')))
      lines.push({ row, kind, label: plain(text), unit })
  }
  return lines
}

/** A line that names a direction or a zero flow belongs to the next run. */
function beginsAnew(view: View, row: number, column: number): boolean {
  for (let at = 0; at <= column + 2; at++) {
    const text = view.text(row, at)
    const label = text === undefined ? undefined : readLabel(text)
    if (says(label, 'zero') || directionIn(label)) return true
  }
  return false
}

/** "Δp 3" and "Δp 4" are labels of the same thing. */
function plain(text: string): string {
  const front = text.trim().replace(/[:.]$/, '').trimEnd()
  return front
    .replace(/(?<![0-9])[0-9]+$/, '')
    .replace(/(?<![\s#])[\s#]+$/, '')
    .trim()
}

/** Points one below the other, parted where something else stands between. */
function groupsOf(lines: readonly Line[], fewest: number, isBorder: (row: number) => boolean): Point[][] {
  const groups: Point[][] = [[]]
  for (const [index, line] of lines.entries()) {
    const next = lines[index + 1]
    if (!next || line.kind === next.kind || next.row - line.row > FARTHEST) continue
    const group = groups.at(-1) as Point[]
    const last = group.at(-1)
    const end = last ? Math.max(last.pressure.row, last.flow.row) : undefined
    if (end !== undefined && line.row <= end) continue
    const point = line.kind === 'pressure' ? { pressure: line, flow: next } : { pressure: next, flow: line }
    const first = group[0]
    const isAlike =
      first !== undefined &&
      first.pressure.label === point.pressure.label &&
      first.flow.label === point.flow.label
    const between =
      end === undefined ? [] : Array.from({ length: line.row - end - 1 }, (_, at) => end + 1 + at)
    if (end === undefined || (isAlike && between.length < FARTHEST && !between.some(isBorder)))
      group.push(point)
    else groups.push([point])
  }
  return groups.filter((group) => group.length >= fewest)
}

const rowsOf = ({ pressure, flow }: Point): [number, number] => [
  Math.min(pressure.row, flow.row),
  Math.max(pressure.row, flow.row),
]

function unstacked(view: View, column: number, groups: readonly Point[][]): View {
  const rows: Row[] = []
  let next = 0
  const ends = new Set(groups.flat().map((point) => rowsOf(point)[1]))
  for (const group of groups) {
    const [first, last] = [group[0] as Point, group.at(-1) as Point]
    const top = rowsOf(first)[0]
    // A title of the first point, as "Point 1", belongs to it; any other stays above the headings.
    for (; next < top; next++) rows.push(next)
    rows.push({ head: first }, ...group)
    next = rowsOf(last)[1] + 1
  }
  for (; next < view.rows; next++) rows.push(next)
  const lineAt = (row: number, index: number): Line | undefined => {
    const own = rows[row]
    if (own === undefined || typeof own === 'number') return undefined
    const point = 'head' in own ? own.head : own
    return index === column + 1 ? point.pressure : index === column + 2 ? point.flow : undefined
  }
  const at = (row: number, index: number): Content | undefined => {
    const own = rows[row]
    if (own === undefined) return undefined
    if (typeof own === 'number') return view.at(own, index)
    const line = lineAt(row, index)
    // What else stands in the lines of a point or over them, as "Point 3: window open", goes with it.
    if (!line) return 'head' in own ? undefined : besides(own, index)
    if (!('head' in own)) return view.at(line.row, column + 1)
    return { kind: 'text', text: line.unit ? `${line.label} (${shown(line.unit.unit)})` : line.label }
  }
  const besides = (point: Point, index: number): Content | undefined => {
    const [first, last] = rowsOf(point)
    if (index > column + 2) return view.at(first, index) ?? view.at(last, index)
    const title = view.at(first - 1, index)
    return index <= column && title?.kind === 'text' && !ends.has(first - 1) ? title : undefined
  }
  const cell = (row: number, index: number): [number, number] => {
    const own = rows[row]
    if (typeof own === 'number') return [own, index]
    const line = lineAt(row, index)
    if (line && own !== undefined) return [line.row, 'head' in own ? column : column + 1]
    return [own === undefined ? view.rows : ('head' in own ? own.head : own).pressure.row, index]
  }
  return {
    ...view,
    rows: rows.length,
    columns: Math.max(view.columns, column + 3),
    ...cellsOf(at),
    address: (row, index) => view.address(...cell(row, index)),
    hidden: (row, index) => view.hidden(...cell(row, index)),
    comment: (row, index) => view.comment(...cell(row, index)),
    right: (row, index) => (typeof rows[row] === 'number' ? view.right(rows[row], index) : index),
  }
}
