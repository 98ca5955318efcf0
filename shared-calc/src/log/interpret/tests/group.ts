import type { Direction } from '../../../contract/record/index.js'
import type { FoundField } from '../fields/found-field.js'
import type { View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import { directionIn, readLabel, says, wordsOf } from '../words/label.js'
import { endAbove, lineAbove, ofOtherKind, refusalOf } from './refused.js'
import { directionOf, type FoundSeries, type TestGroup } from './test-group.js'

/** Parts the runs of a log into tests. */
export function groupTests(
  runs: readonly FoundRun[],
  series: readonly FoundSeries[],
  fields: readonly FoundField[],
  lines: LinesOfList,
): TestGroup[] {
  const groups: TestGroup[] = []
  const keys = new Map<FoundRun, string>()
  for (const [index, run] of runs.entries()) {
    const before = runs[index - 1]
    const own = run.test ?? lines.keyOf(run)
    const isNext = before !== undefined && goesOn(before, run)
    const key = isNext && (own === undefined || lines.isOfSame(before, run)) ? (keys.get(before) ?? own) : own
    if (key) keys.set(run, key)
  }
  const named = runs.filter((run) => keys.has(run))
  for (const run of named) {
    const key = keys.get(run) as string
    const known = groups.find((group) => group.key === key && group.hidden === run.hidden && room(group, run))
    if (known) known.runs.push(run)
    else groups.push({ key, runs: [run], series: [], hidden: run.hidden })
  }
  const rest = runs.filter((run) => !named.includes(run))
  const bySheetName = sheetGroups(rest)
  const strange = rest.filter((run) => isOfOtherKind(run, rest))
  if (bySheetName) groups.push(...bySheetName)
  else
    groups.push(
      ...inOrder(
        rest.filter((run) => !strange.includes(run)),
        fields,
      ),
      ...strange.map((run) => ({
        key: lineAbove(run)?.title ?? '',
        runs: [run],
        series: [],
        hidden: run.hidden,
      })),
    )
  if (series.length > 0) {
    const hidden = series.every((one) => one.hidden)
    const [only] = groups
    if (only && groups.length === 1 && runs.length === 0) only.series.push(...series)
    else groups.push({ key: '', runs: [], series: [...series], hidden })
  }
  for (const group of groups) {
    const [first] = group.runs
    const refusal =
      first && strange.includes(first) && group.runs.length === 1
        ? lineAbove(first)
        : (refusalOf(group, groups) ?? ofOtherKind(group, groups))
    if (refusal) group.refusedBy = refusal
    if (group.key === '' && groups.length > 1) group.key = titleOf(group, groups)
  }
  makeUnique(groups)
  return groups
}

/** What the lines of a list say of their runs. */
interface LinesOfList {
  /** The name of the test that a line gives. */
  keyOf(run: FoundRun): string | undefined
  /** Both lines are of one house: "26-3a" and "26-3b" number its two runs. */
  isOfSame(one: FoundRun, other: FoundRun): boolean
}

/** The next line of a list, in the other direction: without a name of its own, or with the same house, it is of the same test. */
const goesOn = (before: FoundRun, run: FoundRun): boolean =>
  run.row !== undefined &&
  before.row === run.row - 1 &&
  before.view === run.view &&
  directionOf(before) !== undefined &&
  directionOf(run) !== undefined &&
  directionOf(before) !== directionOf(run)

const room = (group: TestGroup, run: FoundRun): boolean => {
  const direction = directionOf(run)
  return (
    group.runs.length < 2 &&
    !group.runs.some((one) => direction !== undefined && directionOf(one) === direction)
  )
}

/** Sheets whose names differ only in the direction: "Plot 1 dep", "Plot 1 pres". */
function sheetGroups(runs: readonly FoundRun[]): TestGroup[] | undefined {
  const sheets = [...new Set(runs.map(({ view }) => view.name))]
  if (sheets.length < 3) return undefined
  const keys = sheets.map((name) => ({
    name,
    direction: directionIn(readLabel(name)),
    key: wordsOf(name)
      .filter((word) => !directionIn(readLabel(word)))
      .join(' '),
  }))
  if (keys.some(({ key, direction }) => key === '' || !direction)) return undefined
  const names = [...new Set(keys.map(({ key }) => key))]
  if (names.length === sheets.length) return undefined
  return names.map((key) => {
    const own = keys.filter((one) => one.key === key).map(({ name }) => name)
    const mine = runs.filter(({ view }) => own.includes(view.name))
    return { key, runs: mine, series: [], hidden: mine.every(({ hidden }) => hidden) }
  })
}

/**
 * Runs in reading order: a direction that comes again, or a new house between, begins the next test. Where each direction has its
 * sheet, the first run of the one goes with the first of the other.
 */
function inOrder(runs: readonly FoundRun[], fields: readonly FoundField[]): TestGroup[] {
  const sheets = [...new Set(runs.map(({ view }) => view.name))]
  const sorted = [...runs].sort(
    (a, b) =>
      sheets.indexOf(a.view.name) - sheets.indexOf(b.view.name) ||
      (Math.abs(a.top - b.top) <= 3 ? a.left - b.left : a.top - b.top),
  )
  const groups: TestGroup[] = []
  for (const run of sorted) {
    const takes = (group: TestGroup): boolean => {
      const before = group.runs.at(-1)
      return (
        before !== undefined &&
        room(group, run) &&
        group.hidden === run.hidden &&
        !isOtherHouse(before, run, fields)
      )
    }
    const last = groups.at(-1)
    const onSheet = groups.filter(
      ({ runs: [first] }) => first?.view.name === (last?.runs[0]?.view.name ?? ''),
    )
    // Of tests side by side each goes on below its own readings.
    const below = onSheet.filter((group) => isBelow(group.runs.at(-1), run) && takes(group))
    const isBeside = last !== undefined && below.length > 0 && !below.includes(last)
    const own =
      last?.runs[0]?.view.name !== run.view.name ? onSheet : isBeside ? below.slice(-1) : last ? [last] : []
    const group = own.find(takes)
    if (group) group.runs.push(run)
    else groups.push({ key: '', runs: [run], series: [], hidden: run.hidden })
  }
  return groups
}

const isBelow = (before: FoundRun | undefined, run: FoundRun): boolean =>
  before !== undefined && before.left === run.left && before.view === run.view && before.bottom < run.top

/** A house's own values begin again between two runs. */
function isOtherHouse(before: FoundRun, run: FoundRun, fields: readonly FoundField[]): boolean {
  const same = before.view.name === run.view.name
  // A sheet for each direction of one house: that their volumes differ is asked about, and makes no two houses.
  const isOfOne = !same && areSheetsOfOne(before, run, fields)
  for (const name of ['volume', 'name', 'address', 'testId'] as const) {
    if (isOfOne && name === 'volume') continue
    const own = fields.filter((field) => field.name === name && field.view.name === run.view.name)
    if (same) {
      if (run.top <= before.bottom) continue
      const between = own.filter(({ row }) => row > before.bottom && row < run.top)
      const above = own.filter(({ row }) => row <= before.bottom)
      if (
        between.length > 0 &&
        above.length > 0 &&
        !between.some((one) => above.some((other) => valueText(other) === valueText(one)))
      )
        return true
    } else {
      const earlier = fields.filter((field) => field.name === name && field.view.name === before.view.name)
      const values = earlier.map(valueText)
      if (own.length > 0 && values.length > 0 && !own.some((one) => values.includes(valueText(one))))
        return true
    }
  }
  return false
}

/** Two sheets named by the two directions, with the same name of the building. */
function areSheetsOfOne(before: FoundRun, run: FoundRun, fields: readonly FoundField[]): boolean {
  const [first, second] = [before, run].map(({ view }) => directionIn(readLabel(view.name)))
  const [one = [], other = []] = [before, run].map(({ view }) =>
    fields.filter((field) => field.name === 'name' && field.view.name === view.name).map(valueText),
  )
  return (
    first !== undefined &&
    second !== undefined &&
    first !== second &&
    one.some((name) => other.includes(name))
  )
}

export const valueText = ({ content }: FoundField): string =>
  content.kind === 'number'
    ? String(content.written.value)
    : content.kind === 'text'
      ? content.text
      : content.kind === 'date'
        ? content.dates.join()
        : ''

/**
 * "Check with a known opening" over pressures and flows without a direction, on a sheet where the directions of a whole test stand over
 * their readings: it is none of them.
 */
function isOfOtherKind(run: FoundRun, runs: readonly FoundRun[]): boolean {
  const onSheet = runs.filter(({ view }) => view === run.view)
  const of = (direction: Direction) => onSheet.filter((one) => one.direction === direction).length
  return (
    directionOf(run) === undefined &&
    run.row === undefined &&
    of('depressurisation') > 0 &&
    of('depressurisation') === of('pressurisation') &&
    lineAbove(run) !== undefined
  )
}

/** A title above the first run of a test: "Test 2 after sealing", or the name of its sheet. */
function titleOf({ runs, series }: TestGroup, groups: readonly TestGroup[]): string {
  const [first] = runs
  if (!first) return series[0]?.view.name ?? ''
  const ownSheet = !groups.some(
    (group) => group.runs !== runs && group.runs.some(({ view }) => view.name === first.view.name),
  )
  if (ownSheet) return first.view.name
  const above = endAbove(first, groups)
  const beside = groups.some(
    (group) =>
      group.runs !== runs &&
      group.runs.some((one) => one.view.name === first.view.name && Math.abs(one.top - first.top) <= 3),
  )
  const left = Math.min(...runs.map((run) => run.left))
  const right = Math.max(...runs.map((run) => run.right))
  const year = beside ? yearOver(first.view, first.top, above, left, right) : undefined
  if (year !== undefined) return year
  for (const wanted of [(text: string) => says(readLabel(text), 'test'), () => true])
    for (let row = isTitle(first) ? first.top : first.top - 1; row > above; row--)
      for (let column = beside ? left : 0; column <= right; column++) {
        const text = first.view.text(row, column)
        if (text === undefined || text.length > 60) continue
        const label = readLabel(text)
        if (says(label, 'zero') || label.unit || !wanted(text)) continue
        // "House 1 – depressurisation" names a house too.
        if (directionIn(label) && !(says(label, 'name') && label.tokens.some((token) => /\d/.test(token))))
          continue
        const next = first.view.at(row, column + 1)
        if (next === undefined) return text
        if (says(label, 'name') && next.kind === 'text') return next.text
      }
  return ''
}

/** "Zone A" alone in the first line of the headings of a run. */
function isTitle({ view, top, block, left, right }: FoundRun): boolean {
  if (view.turned || block.segment.head.first - top < 2) return false
  return (
    Array.from({ length: right - left + 1 }, (_, index) => view.at(top, left + index)).filter((one) => one)
      .length === 1
  )
}

/** "2025" over last year's readings, beside those of this year. */
function yearOver(view: View, top: number, above: number, left: number, right: number): string | undefined {
  for (let row = top; row > Math.max(above, top - YEAR_ROWS); row--)
    for (let column = left; column <= right; column++) {
      const value = view.number(row, column)
      if (value !== undefined && Number.isInteger(value) && value > 1990 && value < 2100) return String(value)
    }
  return undefined
}

const YEAR_ROWS = 4

/** Numbers for tests without a name, and for names that come twice. */
function makeUnique(groups: readonly TestGroup[]): void {
  for (const [index, group] of groups.entries()) {
    if (group.key === '') group.key = String(index + 1)
    const same = groups.filter((one) => one !== group && one.key === group.key)
    if (same.length > 0) group.key = `${group.key} (${index + 1})`
  }
}
