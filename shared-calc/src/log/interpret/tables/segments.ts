import type { View } from '../grid/view.js'
import { directionIn, readLabel, says } from '../words/label.js'
import { type KnownColumn, roleOf, type Segment } from './columns.js'
import { withoutFitted } from './fitted-flows.js'
import type { Head } from './heads.js'
import { withTestColumn } from './test-column.js'
import { withLostHeadings } from './unnamed-columns.js'

const PRESSURES = ['pressure', 'induced', 'device', 'target']
const FLOWS = ['flow', 'corrected']
const ZERO_LISTS = ['zeroBefore', 'zeroAfter']
const LEADING = ['direction', 'test', 'remark', 'index', 'time', 'other']

/** Parts the columns below one row of headings into blocks: a heading that comes again begins the next. */
export function segmentsOf(head: Head, preferred: Preferred = {}): Segment[] {
  const { view } = head
  const last = bodyEnd(head)
  const all = withZeroLists(
    head.columns
      .map((column) => withAnswer(roleOf(view, head.first, last, column), preferred))
      .filter((column) => !namesBoth(head, column)),
  )
  const form = withoutResults(withoutForm(all, view.turned), view.turned)
  const own = withDirections(head, withoutFitted(head, withMeans(withLostHeadings(view, head.first, form))))
  const columns = withTestColumn(view, head.first, last, own)
  const parts: KnownColumn[][] = [[]]
  for (const [index, column] of columns.entries()) {
    const current = parts.at(-1) as KnownColumn[]
    if (startsAnew(current, column, columns.slice(index))) parts.push([column])
    else current.push(column)
  }
  return shareAcross(parts.slice(0, MOST_BLOCKS)).map((own) => ({
    view,
    head,
    columns: own,
    left: Math.min(...own.map(({ at }) => at)),
    right: Math.max(...own.map(({ at }) => at)),
  }))
}

/** "Zero flow before | −1.2 | after | −0.9" read across: a line of the form above the readings, and no list. */
const namesBoth = ({ view, first }: Head, { role, at, numbers }: KnownColumn): boolean =>
  view.turned &&
  ZERO_LISTS.includes(role) &&
  Array.from({ length: 2 * numbers }, (_, index) => view.text(first + index, at)).some(
    (text) => text !== undefined && says(readLabel(text), role === 'zeroBefore' ? 'after' : 'before'),
  )

/** Columns that answers name, by heading or cell. */
export interface Preferred {
  readonly pressure?: string
  readonly flow?: string
}

/** A column without a heading is what the answer says. */
function withAnswer(column: KnownColumn, { pressure, flow }: Preferred): KnownColumn {
  if (column.label.text !== '') return column
  const role = column.headingCell === pressure ? 'pressure' : column.headingCell === flow ? 'flow' : undefined
  return role ? { ...column, role } : column
}

/** "Zero flow | " over "pre | post": the second list of the two has no word for zero flow over it. */
function withZeroLists(columns: readonly KnownColumn[]): KnownColumn[] {
  return columns.map((column, index) => {
    const before = columns[index - 1]
    const { label, role, at, numbers } = column
    const one = says(label, 'before') !== says(label, 'after')
    if (!one || numbers === 0 || ZERO_LISTS.includes(role) || label.tokens.length > 3) return column
    if (!before || before.at !== at - 1 || !ZERO_LISTS.includes(before.role)) return column
    const unit = column.unit ?? before.unit
    return { ...column, role: says(label, 'before') ? 'zeroBefore' : 'zeroAfter', ...(unit ? { unit } : {}) }
  })
}

/** Two flows of the same words behind one pressure, each below the name of a direction some rows further up. */
function withDirections({ view, top }: Head, columns: readonly KnownColumn[]): readonly KnownColumn[] {
  const flows = columns.filter(({ role }) => role === 'flow')
  const [one, other] = flows
  const pressures = columns.filter(({ role }) => PRESSURES.includes(role))
  if (!one || !other || flows.length !== 2 || pressures.length !== 1 || keyOf(one) !== keyOf(other))
    return columns
  if (flows.some(({ label }) => directionIn(label))) return columns
  const titles = flows.map(({ at }) => titleOver(view, top, at))
  const [first, second] = titles.map((title) => title && directionIn(readLabel(title)))
  if (!first || !second || first === second) return columns
  return columns.map((column) => {
    const title = titles[flows.indexOf(column)]
    return title === undefined ? column : { ...column, label: readLabel(`${title} ${column.label.text}`) }
  })
}

const ROWS_UP = 12

/** The nearest text over a column that names a direction, past the values between. */
function titleOver(view: View, top: number, column: number): string | undefined {
  for (let row = top - 1; row >= Math.max(0, top - ROWS_UP); row--) {
    const text = view.text(row, column)
    if (text !== undefined) return text.length <= 40 && directionIn(readLabel(text)) ? text : undefined
  }
  return undefined
}

/** "Flow 1 (m³/h) | Flow 2 (m³/h) | Mean": the flow of the last needs no word and no unit of its own. */
function withMeans(columns: readonly KnownColumn[]): readonly KnownColumn[] {
  return columns.map((column, index) => {
    const [one, other] = [columns[index - 1], columns[index - 2]]
    const { label, role, unit, numbers } = column
    if (role !== 'other' || unit || numbers === 0 || label.tokens.length > 3) return column
    if (!says(label, 'average') && !says(label, 'total')) return column
    if (one?.role !== 'flow' || other?.role !== 'flow' || one.unit?.unit !== other.unit?.unit) return column
    return { ...column, role: 'flow', ...(one.unit ? { unit: one.unit } : {}) }
  })
}

/**
 * A form beside a table, parted from it by a blank column or line, is none of its columns. Upright, a column there that says
 * something of each row stays.
 */
function withoutForm(columns: readonly KnownColumn[], turned: boolean): readonly KnownColumn[] {
  const first = columns.findIndex(({ role }) => PRESSURES.includes(role) || FLOWS.includes(role))
  for (let index = first; index > 0; index--) {
    if ((columns[index] as KnownColumn).at - (columns[index - 1] as KnownColumn).at <= 1) continue
    const before = columns.slice(0, index)
    if (turned || before.every(isOfForm)) return columns.slice(index)
  }
  return columns
}

/**
 * "| Depressurisation | Pressurisation" over "n" and "q50 (m³/h)" below tables across: lines much shorter than the readings, with no
 * pressure among them, are results.
 */
function withoutResults(columns: readonly KnownColumn[], turned: boolean): readonly KnownColumn[] {
  if (!turned) return columns
  const most = Math.max(
    0,
    ...columns.filter(({ role }) => FLOWS.includes(role)).map(({ numbers }) => numbers),
  )
  const isLong = ({ numbers, texts }: KnownColumn) => numbers + texts > most / 2
  const last = columns.findLastIndex(isLong)
  const below = columns.slice(last + 1)
  if (most < FEWEST_ACROSS || below.some(({ role }) => PRESSURES.includes(role))) return columns
  const begin = below.findIndex(({ role }) => OF_RESULTS.includes(role))
  return begin < 0 ? columns : columns.slice(0, last + 1 + begin)
}

/** Fewer readings across are told from results by nothing. */
const FEWEST_ACROSS = 5
const OF_RESULTS: readonly string[] = [...FLOWS, 'direction', 'test', 'derived']

/** "Zero flow before | −1.2" with more labels below it is a line of a form, and no list. */
const isOfForm = ({ role, texts }: KnownColumn): boolean =>
  OF_A_FORM.includes(role) || (ZERO_LISTS.includes(role) && texts > 0)

const OF_A_FORM = ['other', 'remark', 'test', 'derived']

/** The last row with a number below the headings, before more than a few rows without. */
function bodyEnd({ view, first, columns }: Head): number {
  let last = first
  for (let row = first; row < view.rows && row <= last + GAP; row++)
    if (columns.some(({ at }) => view.number(row, at) !== undefined)) last = row
  return last
}

const GAP = 4
/** Blocks side by side below one row of headings. */
const MOST_BLOCKS = 12

function startsAnew(
  current: readonly KnownColumn[],
  column: KnownColumn,
  rest: readonly KnownColumn[],
): boolean {
  const whole = (columns: readonly KnownColumn[]) =>
    columns.some(({ role }) => PRESSURES.includes(role)) &&
    columns.some(({ role }) => FLOWS.includes(role) || role === 'device')
  if (!whole(current)) return false
  // Lists of zero-flow values behind a gap belong to the readings before them, unless these have theirs.
  if (ZERO_LISTS.includes(column.role) && !current.some(({ role }) => role === column.role)) return false
  // A blank column ends a block that has all it needs.
  if (column.at - (current.at(-1) as KnownColumn).at > 1) return whole(rest) || !FLOWS.includes(column.role)
  if (whole(rest) && current.some((one) => directionsDiffer(one, column))) return true
  // "Pressure | Dep. flow | Pressure | Pres. flow": the second pressure is that of the other direction, whatever else its heading says.
  const isPressure = column.role === 'pressure' || column.role === 'induced'
  const next = rest.find(({ role }) => FLOWS.includes(role))
  if (isPressure && next && current.some((one) => FLOWS.includes(one.role) && directionsDiffer(one, next)))
    return true
  // "Sample 1 | | Sample 2 | | Average | " over "Pa | m³/h | Pa | m³/h | Pa | m³/h": each pressure has the flow behind it.
  const behind = rest[1]
  const isPaired = current.at(-1)?.role === 'flow' && behind?.role === 'flow' && behind.at === column.at + 1
  const areSamples = isPressure && isPaired && rest.some(isMeanPressure)
  if (areSamples && current.some((one) => keyOf(one) === keyOf(behind))) return true
  const same = current.find((one) => keyOf(one) === keyOf(column))
  if (!same) return false
  // Flow twice behind one pressure, with another direction each: both share the pressure.
  if (!whole(rest)) return FLOWS.includes(column.role) && directionsDiffer(same, column)
  return true
}

const isMeanPressure = ({ role, label }: KnownColumn): boolean =>
  role === 'pressure' && says(label, 'average')

function directionsDiffer(one: KnownColumn, other: KnownColumn): boolean {
  const dep = [one, other].map(({ label }) => says(label, 'dep'))
  const pres = [one, other].map(({ label }) => says(label, 'pres'))
  return (dep[0] === true && pres[1] === true) || (pres[0] === true && dep[1] === true)
}

/** A heading without the words of a direction and without figures behind it. */
function keyOf({ label, unit, role }: KnownColumn): string {
  const words = label.tokens.filter((token) => !isOfDirection(token)).join(' ')
  return `${role}|${words}|${unit?.unit ?? ''}`
}

const isOfDirection = (token: string): boolean =>
  DIRECTION_TOKEN.test(token) || directionIn(readLabel(token)) !== undefined

const DIRECTION_TOKEN =
  /^(dep(?!ois)|despres|presuri|pressuris|pressuriz|press$|pres$|under|unter|uber|ueber|over|onder|neg|pos|podci|nadci|surp|sovra|sobre|plus|minus)/

/** Leading columns (job, direction, time) and a lone pressure column serve the blocks that have none. */
function shareAcross(parts: readonly KnownColumn[][]): KnownColumn[][] {
  const [first = []] = parts
  return parts
    .filter((part) => part.length > 0)
    .map((part, index) => {
      if (index === 0) return part
      const hasPressure = part.some(({ role }) => PRESSURES.includes(role))
      const shared = first.filter(({ role }) =>
        hasPressure ? false : [...PRESSURES, ...LEADING].includes(role),
      )
      return [...shared, ...part]
    })
}
