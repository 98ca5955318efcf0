import { columnReasons } from '../../../catalogue/findings/log/runs.js'
import type { Direction } from '../../../contract/record/index.js'
import { bareUnit } from '../../cells/stated-unit.js'
import { writtenIn } from '../../cells/written.js'
import { directionIn, readLabel, says } from '../words/label.js'
import type { Block } from './choose.js'
import { directionWord, type KnownColumn, roleOf, writtenAt } from './columns.js'
import type { Column, Head } from './heads.js'
import { keyOf, type Pair, pairsOf, repeatedPairs } from './pairs.js'
import { PLAIN_CURVE, physicsScore, powerLaw } from './physics.js'
import { isSummary } from './row-labels.js'
import { type FoundRun, titleOf } from './runs.js'
import type { Figure, TableRow } from './table-row.js'

/** A list with one row a run: P1, Q1, P2, Q2 … or "Flow at 50 Pa", "Flow at 40 Pa" … as columns. Undefined where the headings are no such list. */
export function wideRuns(head: Head): { runs: FoundRun[]; last: number } | undefined {
  const { view } = head
  const given = withDirections(
    head.columns.map((column) =>
      withZeroFlow(roleOf(view, head.first, head.first + 40, withUnitBehind(head, column))),
    ),
  )
  const numbered = pairsOf(given)
  const stated = numbered.length < 3 ? statedPairs(head, given) : numbered
  // Nothing numbers the pairs: a direction over the first of several goes for all columns behind it.
  const named = new Set(given.flatMap(({ label }) => directionIn(label) ?? []))
  const columns = stated.length < 3 && named.size > 1 ? carried(given) : given
  const pairs = stated.length < 3 ? repeatedPairs(head, columns) : stated
  if (pairs.length < 3) return undefined
  const direction = columns.find(({ role }) => role === 'direction')
  const test = columns.find(({ role }) => role === 'test')
  const groups = groupsOf(pairs)
  const runs: FoundRun[] = []
  let last = head.first
  for (let row = head.first; row < view.rows; row++) {
    if (columns.every(({ at }) => !view.at(row, at))) break
    const lead = view.text(row, columns[0]?.at ?? 0)
    if (lead !== undefined && isSummary(lead)) continue
    last = row
    // Both runs of a line leave the same columns out: the first names them.
    let unused = unusedIn(head, columns, pairs, row)
    for (const group of groups) {
      const word = direction && view.text(row, direction.at)
      const run = runOf(
        head,
        columns,
        group,
        row,
        group.direction ?? (word && direction ? directionWord(word, direction.label) : undefined),
        test,
        unused,
      )
      if (run) {
        runs.push(run)
        unused = []
      }
    }
  }
  return runs.length > 0 ? { runs, last } : undefined
}

/** The pairs of one run, and which of several runs without a direction it is. */
interface Group {
  readonly pairs: readonly Pair[]
  readonly direction: Direction | undefined
  readonly turn: number
  readonly turns: number
}

function groupsOf(pairs: readonly Pair[]): Group[] {
  const found = new Map<string, Pair[]>()
  for (const pair of pairs) {
    const key = `${pair.direction}|${pair.turn ?? 0}`
    const own = found.get(key)
    if (own) own.push(pair)
    else found.set(key, [pair])
  }
  const groups = [...found.values()].map((own) => ({
    pairs: own,
    direction: own[0]?.direction,
    turn: own[0]?.turn ?? 0,
  }))
  return groups.map((group) => ({
    ...group,
    turns: groups.filter(({ direction }) => direction === group.direction).length,
  }))
}

/** Values so many columns away from their unit at most, in a list with a line a value and a column a test. */
const UNIT_BEHIND = 8

/** "Pressure 1 | −62.4 | Pa": in a list read across, the unit stands behind the value of its line. */
function withUnitBehind({ view, first }: Head, column: Column): Column {
  if (!view.turned || column.unit) return column
  for (let row = first; row < Math.min(view.rows, first + UNIT_BEHIND); row++) {
    const text = view.text(row, column.at)
    const unit = text === undefined ? undefined : bareUnit(text)
    if (unit) return { ...column, unit }
    if (text !== undefined && row > first) return column
  }
  return column
}

/**
 * "Depressurisation | | | Pressurisation" over "Pa 1 | m³/h 1 | … | Pa 1 | m³/h 1": a direction stands over the first of its columns
 * and goes for those behind it, where the same headings come again.
 */
function withDirections(columns: readonly KnownColumn[]): readonly KnownColumn[] {
  const keys = columns.flatMap((column) =>
    column.role === 'pressure' || column.role === 'induced' ? (keyOf(column) ?? []) : [],
  )
  if (new Set(keys).size === keys.length) return columns
  const lettered = withLetters(columns)
  if (lettered) return lettered
  return carried(columns)
}

/** Columns of a run with the direction that stands over the first of them. */
function carried(columns: readonly KnownColumn[]): readonly KnownColumn[] {
  let current: Direction | undefined
  return columns.map((column) => {
    const own = directionIn(column.label)
    current = own ?? current
    return own || !current || !OF_A_RUN.includes(column.role)
      ? column
      : { ...column, label: readLabel(`${current} ${column.label.text}`) }
  })
}

/** "Ruhe vor (Pa)": a pressure of a list before or after all readings, in words nobody knows, is zero flow: nothing else is logged so. */
function withZeroFlow(column: KnownColumn): KnownColumn {
  const { label, role, unit } = column
  const [before, after] = [says(label, 'before'), says(label, 'after')]
  if (role !== 'pressure' || unit?.kind !== 'pressure' || before === after || keyOf(column)) return column
  return { ...column, role: before ? 'zeroBefore' : 'zeroAfter' }
}

/** Columns that are of one direction; results behind them may be of both. */
const OF_A_RUN = ['pressure', 'induced', 'flow', 'corrected', 'device', 'target', 'zeroBefore', 'zeroAfter']

/** "D 1 Pa | D 1 m³/h | … | P 1 Pa | P 1 m³/h": two letters or short words in front of the numbers, of which one at least names a direction. */
function withLetters(
  columns: readonly KnownColumn[],
  isLettered: (column: KnownColumn) => boolean = ({ role }) => role === 'pressure' || role === 'induced',
): readonly KnownColumn[] | undefined {
  const firstOf = ({ label }: KnownColumn) =>
    label.tokens.length > 1 && /^\p{L}{1,6}$/u.test(label.tokens[0] ?? '') ? label.tokens[0] : undefined
  const letters = [...new Set(columns.filter(isLettered).map(firstOf))]
  const [one, other] = letters
  if (letters.length !== 2 || one === undefined || other === undefined) return undefined
  const [first, second] = [directionWord(one), directionWord(other)]
  if (first === second) return undefined
  const opposite = (direction: Direction | undefined): Direction =>
    direction === 'depressurisation' ? 'pressurisation' : 'depressurisation'
  const directions = new Map([
    [one, first ?? opposite(second)],
    [other, second ?? opposite(first)],
  ])
  return columns.map((column) => {
    const direction = directions.get(firstOf(column) ?? '')
    return direction ? { ...column, label: readLabel(`${direction} ${column.label.text}`) } : column
  })
}

/** Fewer flows at a pressure each may be results read off the curve: at 4, 10 and 50 Pa. */
const FEWEST_STATED = 4
const STATED = /(?<![\d.,])(\d{1,3}(?:[.,]\d)?)\s*Pa\b/i

/** A heading that is a pressure and nothing else: "50 Pa". */
const ONLY_STATED = /^[-−–+]?\d{1,3}(?:[.,]\d)?\s?Pa$/i

/**
 * "60 Pa | 50 Pa | 40 Pa" over flows whose unit stands elsewhere. Measured pressures below such headings are near them, and flows follow the
 * leakage curve.
 */
function withPlainFlows({ view, first }: Head, columns: readonly KnownColumn[]): readonly KnownColumn[] {
  const plain = columns.filter(
    ({ label, role, numbers }) => role === 'pressure' && numbers > 0 && ONLY_STATED.test(label.text.trim()),
  )
  const stated = plain.map(({ label }) => writtenIn(label.text.trim(), undefined)?.value ?? 0)
  const rows = [first, first + 1].map((row) => plain.map(({ at }) => Math.abs(view.number(row, at) ?? 0)))
  const isMeasured = rows.some((values) =>
    values.every(
      (value, index) => value > 0 && Math.abs(value / Math.abs(stated[index] as number) - 1) < NEAR,
    ),
  )
  const law = powerLaw(stated, rows[0] ?? [])
  if (plain.length < FEWEST_STATED || isMeasured || physicsScore(law) < PLAIN_CURVE) return columns
  return columns.map((column): KnownColumn => {
    if (!plain.includes(column)) return column
    const { unit: _, ...rest } = column
    return { ...rest, role: 'flow' }
  })
}

/** A measured pressure differs from the one aimed at by so much at most. */
const NEAR = 0.25

/** Flows whose headings state the pressure: "Flow at 50 Pa (m³/h)". */
function statedPairs(head: Head, given: readonly KnownColumn[]): Pair[] {
  const plain = withPlainFlows(head, given)
  // "D 60 Pa | D 50 Pa | … | P 60 Pa | P 50 Pa": the letter is that of the direction.
  const isStated = ({ role, label }: KnownColumn) => role === 'flow' && STATED.test(label.text)
  const columns = withLetters(plain, isStated) ?? plain
  const pairs = columns.flatMap((flow): Pair[] => {
    const text =
      flow.unit?.kind === 'flow' || flow.role === 'flow' ? STATED.exec(flow.label.text)?.[0] : undefined
    const stated = text === undefined ? undefined : writtenIn(text, undefined)
    if (!stated || flow.numbers === 0) return []
    const direction = directionIn(flow.label)
    const index = `${direction ?? ''}${stated.value}`
    return [
      {
        index,
        pressure: flow,
        flow,
        stated: { ...stated, cell: flow.headingCell },
        ...(direction ? { direction } : {}),
      },
    ]
  })
  const isOwn = ({ index }: Pair) => pairs.filter((other) => other.index === index).length === 1
  return pairs.length >= FEWEST_STATED && pairs.every(isOwn) ? pairs : []
}

/** Numbers of a line that are in no pair, with why: a pressure or flow without the other may be a reading that is lost. */
const unusedIn = (
  { view }: Head,
  columns: readonly KnownColumn[],
  pairs: readonly Pair[],
  row: number,
): Block['ignored'] => {
  const used = new Set(pairs.flatMap(({ pressure, flow }) => [pressure.at, flow.at]))
  return columns
    .filter(({ role, at }) => !used.has(at) && !NAMING.includes(role) && view.number(row, at) !== undefined)
    .map((column) => ({
      column,
      why: OF_A_RUN.includes(column.role) ? columnReasons.unpaired : columnReasons.notNeeded,
    }))
}

/** Columns that are read otherwise. */
const NAMING = ['direction', 'test', 'zeroBefore', 'zeroAfter']

/** Samples of one station, not readings of a run: their pressures hardly differ. */
function isOneStation(readings: readonly TableRow[]): boolean {
  const sizes = readings.map(({ pressure }) => Math.abs(pressure.value))
  return Math.max(...sizes) < 1.2 * Math.min(...sizes)
}

function runOf(
  head: Head,
  columns: readonly KnownColumn[],
  { pairs, turn, turns }: Group,
  row: number,
  direction: Direction | undefined,
  test: KnownColumn | undefined,
  ignored: Block['ignored'],
): FoundRun | undefined {
  const { view } = head
  const figure = ({ at, unit }: KnownColumn): Figure | undefined => {
    const written = writtenAt(view, row, at)
    return written ? { ...(unit ? { unit } : {}), ...written, cell: view.address(row, at) } : undefined
  }
  const readings = pairs.flatMap(({ pressure, flow, stated }): TableRow[] => {
    const p = stated ?? figure(pressure)
    const q = figure(flow)
    if (!p || !q) return []
    return [
      { row, kind: 'reading', pressure: p, carriers: [q], ranges: [], hidden: view.hidden(row, pressure.at) },
    ]
  })
  const [first] = pairs
  if (!first || readings.length < 2 || isOneStation(readings)) return undefined
  const zeros = (role: 'zeroBefore' | 'zeroAfter') => {
    const own = columns.filter((column) => column.role === role)
    // Where one names this direction, the others are of the other run, in words nobody knows.
    const named = own.filter(({ label }) => direction !== undefined && directionIn(label) === direction)
    const free = own.filter(({ label }) => directionIn(label) === undefined)
    const of = named.length > 0 ? named : free
    // Each of several runs without a direction has its own.
    const mine = turns > 1 && of.length === turns ? of.slice(turn, turn + 1) : of
    return mine.flatMap((column) => figure(column) ?? [])
  }
  const left = Math.min(...columns.map(({ at }) => at))
  const right = Math.max(...columns.map(({ at }) => at))
  const block: Block = {
    segment: { view, head, columns, left, right },
    pressure: first.pressure,
    carriers: [first.flow],
    ranges: [],
    walked: { rows: readings, leftOut: [], last: row },
    law: powerLaw(
      readings.map(({ pressure }) => pressure.value),
      readings.map(({ carriers }) => (carriers[0] as Figure).value),
    ),
    tried: [],
    doubts: [],
    ignored,
    unnamed: [],
  }
  const signs = new Set(readings.map(({ pressure }) => Math.sign(pressure.value)))
  const bySign: Direction | undefined = signs.size === 1 && signs.has(-1) ? 'depressurisation' : undefined
  const titled = (direction ?? bySign) ? undefined : titleOf(block, 0)
  const named = direction ?? bySign ?? titled?.direction
  const name = test && (view.text(row, test.at) ?? view.number(row, test.at)?.toString())
  return {
    view,
    top: row,
    left,
    bottom: row,
    right,
    ...(named ? { direction: named } : {}),
    directionFrom: direction ? 'its row or heading' : (titled?.from ?? 'the sign of its pressures'),
    block,
    readings,
    zeroBefore: zeros('zeroBefore'),
    zeroAfter: zeros('zeroAfter'),
    ...(name ? { test: name } : {}),
    hidden: view.hidden(row, first.pressure.at),
    row,
    ...(first.stated && { pressuresIn: pairs.map(({ pressure }) => pressure.headingCell) }),
  }
}
