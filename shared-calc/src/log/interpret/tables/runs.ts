import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { Direction } from '../../../contract/record/index.js'
import { formPlaces, type View } from '../grid/view.js'
import { directionIn, readLabel, says } from '../words/label.js'
import type { Block } from './choose.js'
import type { KnownColumn } from './columns.js'
import type { Figure, TableRow } from './table-row.js'

/** One run as found: readings of one direction, units as logged. */
export interface FoundRun {
  readonly view: View
  readonly top: number
  readonly left: number
  readonly bottom: number
  readonly right: number
  readonly direction?: Direction
  /** Where the direction was read, in words. */
  readonly directionFrom: string
  readonly block: Block
  readonly readings: readonly TableRow[]
  readonly zeroBefore: Figure[]
  readonly zeroAfter: Figure[]
  /** No word says which of the two was taken before the readings. */
  readonly zeroInOrder?: true
  /** The log's own name of the test, where each row has it. */
  readonly test?: string
  readonly hidden: boolean
  /** Set when read from one row of a list. */
  readonly row?: number
  /** Column that holds the values of its house, above its flows. */
  readonly houseColumn?: number
  /** Headings that state the pressures, where no column holds them. */
  readonly pressuresIn?: readonly string[]
}

/** Runs of one block: parted by a column of tests, a column of directions, or the sign of the pressures. */
export function runsOf(block: Block, above: number): FoundRun[] {
  const { walked, segment } = block
  const hidden = walked.rows.filter((row) => row.hidden)
  // Rows that a filter hides are left out where others are shown; a table hidden as a whole stays one test of its own.
  const tests = [...new Set(walked.rows.map(({ test }) => test ?? ''))]
  const parts: { rows: TableRow[]; test?: string }[] = meaningful(tests, walked.rows)
    ? tests.map((test) => ({ rows: walked.rows.filter((row) => (row.test ?? '') === test), test }))
    : [{ rows: [...walked.rows] }]
  return parts
    .flatMap((part) => byDay(block, part))
    .flatMap(({ rows, test }) => {
      const all = rows.every((row) => row.hidden)
      const own = all ? rows : rows.filter((row) => !row.hidden)
      return partsByDirection(block, own, above).map(({ rows: readings, direction, from }) =>
        made(block, readings, direction, from, test, all && hidden.length > 0),
      )
    })
    .filter(({ readings }) => readings.length > 0)
    .map((run) => ({ ...run, left: segment.left, right: segment.right }))
}

/** One house tested on several days, in one list: each day is a test. */
function byDay(
  { segment }: Block,
  part: { rows: TableRow[]; test?: string },
): { rows: TableRow[]; test?: string }[] {
  const { view, columns } = segment
  const column = columns.find(({ label, role }) => role === 'other' && says(label, 'date'))
  if (!column || view.turned) return [part]
  const dayOf = ({ row }: TableRow): string => {
    const content = view.at(row, column.at)
    return content?.kind === 'date' ? (content.dates[0] ?? '') : ''
  }
  const days = [...new Set(part.rows.map(dayOf))]
  const own = days.map((day) => part.rows.filter((row) => dayOf(row) === day))
  if (days.length < 2 || days.includes('') || own.some((rows) => rows.length < 3)) return [part]
  const name = part.test || part.rows[0]?.test
  return days.map((day, index) => ({
    rows: own[index] ?? [],
    test: name === undefined ? day : `${name}, ${day}`,
  }))
}

/** A column of test names parts a table only where each name has several rows. */
const meaningful = (tests: readonly string[], rows: readonly TableRow[]): boolean =>
  tests.length > 1 && tests.every((test) => rows.filter((row) => (row.test ?? '') === test).length >= 3)

interface Part {
  rows: TableRow[]
  direction?: Direction
  from: string
}

function partsByDirection(block: Block, rows: readonly TableRow[], above: number): Part[] {
  if (rows.some(({ direction }) => direction))
    return inTurn(rows, 'its column of directions', ({ direction }) => direction)
  const signs = rows.filter(({ kind }) => kind === 'reading').map(({ pressure }) => Math.sign(pressure.value))
  const negative = signs.filter((sign) => sign < 0).length
  const positive = signs.filter((sign) => sign > 0).length
  if (negative >= 2 && positive >= 2)
    return inTurn(withSignDoubt(rows), 'the sign of its pressures', ({ kind, pressure }) =>
      kind === 'zero' ? undefined : pressure.value < 0 ? 'depressurisation' : 'pressurisation',
    )
  const titled = titleOf(block, above)
  return [{ rows: [...rows], ...titled }]
}

/** One reading of the other sign inside a run: most likely its minus sign was lost, or is too many. */
function withSignDoubt(rows: readonly TableRow[]): TableRow[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const sign = (index: number) => Math.sign(readings[index]?.pressure.value ?? 0)
  const turns = readings.filter((_, index) => index > 0 && sign(index) !== sign(index - 1)).length
  // Directions that take turns at each pressure change sign at every reading.
  const lone = readings.findIndex(
    (_, index) => sign(index) === -sign(index - 1) && sign(index) === -sign(index + 1),
  )
  if (turns > 3 || lone < 0) return [...rows]
  return rows.map((row) =>
    row === readings[lone] && !row.doubt ? { ...row, doubt: { kind: 'remark', why: rowReasons.sign } } : row,
  )
}

/** Both directions in one table: the runs follow one another, with zero-flow rows around them that may name none. */
function inTurn(
  rows: readonly TableRow[],
  from: string,
  directionOf: (row: TableRow) => Direction | undefined,
): Part[] {
  const parts: Part[] = []
  const partOf = (direction: Direction | undefined, index: number): Part => {
    const known = parts.findLast((part) => part.direction === direction)
    const stretch = known === before ? [] : stretchFrom(rows, index, directionOf)
    if (known && !isRepeated(known.rows, stretch)) return known
    const made = { rows: [], ...(direction ? { direction } : {}), from }
    parts.push(made)
    return made
  }
  let waiting: TableRow[] = []
  let before: Part | undefined
  for (const [index, row] of rows.entries()) {
    const direction = directionOf(row)
    if (row.kind === 'zero' && !direction) {
      waiting.push(row)
      continue
    }
    const part = partOf(direction, index)
    if (before && before !== part && waiting.length > 0) {
      // Of the zero rows between two runs the first ends the one, the last begins the other.
      const after = waiting.filter(({ which }) => which !== 'before')
      before.rows.push(
        ...(after.length > 0 ? after.slice(0, Math.max(1, Math.floor(waiting.length / 2))) : []),
      )
      waiting = waiting.filter((one) => !before?.rows.includes(one) || waiting.length === 1)
    }
    part.rows.push(...waiting, row)
    waiting = []
    before = part
  }
  before?.rows.push(...waiting)
  return parts
}

/** The readings from one row on that go on in its direction. */
function stretchFrom(
  rows: readonly TableRow[],
  index: number,
  directionOf: (row: TableRow) => Direction | undefined,
): TableRow[] {
  const own = directionOf(rows[index] as TableRow)
  const readings = rows.slice(index).filter(({ kind }) => kind === 'reading')
  const end = readings.findIndex((row) => directionOf(row) !== own)
  return end < 0 ? readings : readings.slice(0, end)
}

/** Fewer readings are no run. */
const FEWEST = 3

/** A direction that comes again behind the other, over most of the same pressures: a test was repeated, and the first run was whole. */
function isRepeated(known: readonly TableRow[], again: readonly TableRow[]): boolean {
  const sizes = (rows: readonly TableRow[]) =>
    rows.filter(({ kind }) => kind === 'reading').map(({ pressure }) => Math.abs(pressure.value))
  const [one, other] = [sizes(known), sizes(again)]
  if (one.length < FEWEST || other.length < FEWEST) return false
  const shared =
    Math.min(Math.max(...one), Math.max(...other)) - Math.max(Math.min(...one), Math.min(...other))
  return shared > (Math.max(...other) - Math.min(...other)) / 2
}

/** The direction that a heading or the nearest title above names. */
export function titleOf(
  { segment, pressure, carriers }: Block,
  above: number,
): { direction?: Direction; from: string } {
  const inHeading = [pressure, ...carriers]
    .map((column) => headingDirection(column.label.tokens, column.label) ?? besideDepress(segment, column))
    .find((one) => one)
  if (inHeading) return { direction: inHeading, from: 'its heading' }
  const { view, head, left, right } = segment
  const firstOfHead = head.columns.every(({ at }) => at >= left)
  let nearest: { direction: Direction; from: string } | undefined
  for (let row = head.first - 1; row >= Math.max(0, above, head.first - 24) && !nearest; row--)
    for (const column of columnsFrom(left, right, firstOfHead)) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 70) continue
      const label = readLabel(text)
      // "Press." over a column is short for pressure.
      const own = head.columns.some(({ headingCell }) => headingCell === view.address(row, column))
      const said = own ? headingDirection(label.tokens, label) : directionIn(label)
      const direction = label.tokens.length <= 7 ? said : undefined
      if (!direction || isOfList(view, row, column)) continue
      // A title merged or written over the neighbouring block is not this one's.
      if (column < left && view.right(row, column) < left && !firstOfHead) continue
      nearest = tickedIn(view, row) ?? { direction, from: `"${text}" in ${view.address(row, column)}` }
      break
    }
  if (nearest) return nearest
  if (isShortForRun(segment.view, pressure)) return { direction: 'pressurisation', from: 'its heading' }
  const sheet = directionIn(readLabel(view.name))
  return sheet ? { direction: sheet, from: `the name of sheet ${view.name}` } : { from: '' }
}

/** "Depressurisation | −1.4" over "Pressurisation | −0.8": a list with a line for each run, and no title. */
const isOfList = (view: View, row: number, column: number): boolean => {
  const at = (line: number) =>
    view.number(line, column + 1) === undefined
      ? undefined
      : directionIn(readLabel(view.text(line, column) ?? ''))
  const own = at(row)
  return own !== undefined && [at(row - 1), at(row + 1)].some((other) => other !== undefined && other !== own)
}

/** "Q dep | Q press": of two headings with the same other words one names the depressurisation. */
function besideDepress({ head }: Block['segment'], { at, label }: KnownColumn): Direction | undefined {
  const rest = (tokens: readonly string[]) => tokens.filter((token) => !OF_RUN.test(token)).join(' ')
  const isPair = (other: Pick<KnownColumn, 'at' | 'label'>) =>
    other.at !== at &&
    directionIn(other.label) === 'depressurisation' &&
    rest(other.label.tokens) === rest(label.tokens)
  return label.tokens.includes('press') && head.columns.some(isPair) ? 'pressurisation' : undefined
}

const OF_RUN = /^(?:press|dep|depr|depress)$/

/** "Press" over one table and "Depress" over another, with the same words below both: short for the direction, and not for pressure. */
function isShortForRun(view: View, { at, label, headingCell }: KnownColumn): boolean {
  if (label.tokens.length !== 1 || label.tokens[0] !== 'press') return false
  const places = [...formPlaces(view)]
  const own = places.find(([row, column]) => column === at && view.address(row, column) === headingCell)
  return (
    own !== undefined &&
    places.some(([row, column]) => {
      const text = view.text(row, column)
      return (
        text !== undefined &&
        (row === own[0] || column === own[1]) &&
        /^dep(?:r|ress)?\.?$/i.test(text) &&
        view.text(row + 1, column) === view.text(own[0] + 1, own[1])
      )
    })
  )
}

const BOXES = new Set(['☐', '□', '[ ]', '☒', '☑', '[x]'])
const TICKS = new Set(['x', '✓', '✔', '☒', '☑', '[x]', 'yes', 'ja', 'oui', 'true'])

/** "Depressurisation | | Pressurisation | x": of two directions named in a row, the one that is ticked. */
export function tickedIn(view: View, row: number): { direction: Direction; from: string } | undefined {
  const ticked: { direction: Direction; from: string }[] = []
  const texts = Array.from({ length: Math.min(view.columns, 40) }, (_, column) =>
    view.text(row, column)?.trim().toLowerCase(),
  )
  const [box, word] = [
    texts.findIndex((text) => text !== undefined && (TICKS.has(text) || BOXES.has(text))),
    texts.findIndex((text) => text !== undefined && directionIn(readLabel(text)) !== undefined),
  ]
  // "☐ | Pressurisation | ☒ | Depressurisation": a box stands in front of its words.
  const isInFront = box === word - 1 && texts.some((text) => text !== undefined && BOXES.has(text))
  for (const [column, mark] of texts.entries()) {
    const text =
      mark !== undefined && TICKS.has(mark) ? view.text(row, column + (isInFront ? 1 : -1)) : undefined
    const direction = text === undefined ? undefined : directionIn(readLabel(text))
    if (direction) ticked.push({ direction, from: `the mark in ${view.address(row, column)}` })
  }
  return ticked.length === 1 ? ticked[0] : undefined
}

/** Columns in which the title of a block may stand: its own first, then those to the left where no other block of the headings is. */
function columnsFrom(left: number, right: number, isFirst: boolean): number[] {
  const start = Math.max(0, left - 1)
  const own = Array.from({ length: right - start + 1 }, (_, index) => start + index)
  return isFirst ? [...own, ...Array.from({ length: start }, (_, index) => start - 1 - index)] : own
}

/** "press" in a heading is short for pressure; only whole words of a direction count there. */
function headingDirection(tokens: readonly string[], label: KnownColumn['label']): Direction | undefined {
  if (tokens.includes('press') || tokens.includes('p'))
    return tokens.some((token) => /^(dep|despres|unter|onder|podci)/.test(token))
      ? 'depressurisation'
      : undefined
  return directionIn(label)
}

function made(
  block: Block,
  rows: readonly TableRow[],
  direction: Direction | undefined,
  from: string,
  test: string | undefined,
  hidden: boolean,
): FoundRun {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const first = readings[0]?.row ?? 0
  const zeros = rows.filter(({ kind }) => kind === 'zero')
  const before = zeros.filter(({ which, row }) => which === 'before' || (which === undefined && row <= first))
  const after = zeros.filter((row) => !before.includes(row))
  // Two below the readings by the same words, "zero 1" and "zero 2": in their order.
  const inOrder = before.length === 0 && after.length === 2 && after.every(({ which }) => which === undefined)
  if (inOrder) before.push(...after.splice(0, 1))
  return {
    view: block.segment.view,
    top: block.segment.head.top,
    left: block.segment.left,
    bottom: block.walked.last,
    right: block.segment.right,
    ...(direction ? { direction } : {}),
    directionFrom: from,
    block,
    readings,
    zeroBefore: before.map(({ pressure }) => pressure),
    zeroAfter: after.map(({ pressure }) => pressure),
    ...(inOrder ? { zeroInOrder: true } : {}),
    ...(test ? { test } : {}),
    hidden,
  }
}
