import { inSheet } from './grid/lines.js'
import { leadOf, turned, type View } from './grid/view.js'
import type { Answers } from './interpretation.js'
import type { Stopped } from './not-searched.js'
import { bareHeads } from './tables/bare-heads.js'
import { type Block, chooseColumns } from './tables/choose.js'
import type { Segment } from './tables/columns.js'
import { findHeads, type Head } from './tables/heads.js'
import { headsBeside } from './tables/heads-beside.js'
import { housesBeside } from './tables/houses-beside.js'
import { PLAIN_CURVE, physicsScore } from './tables/physics.js'
import { isSummary } from './tables/row-labels.js'
import { type FoundRun, runsOf } from './tables/runs.js'
import { type Preferred, segmentsOf } from './tables/segments.js'
import type { Figure } from './tables/table-row.js'
import { wideRuns } from './tables/wide.js'
import type { FoundSeries } from './tests/test-group.js'
import { namesNoValue } from './zero-flow/headings.js'

/** The tables of readings on one sheet. */
export interface SheetTables {
  readonly view: View
  readonly runs: readonly FoundRun[]
  readonly series: readonly FoundSeries[]
  /** Cells that belong to a table, in the upright sheet. */
  isTaken(row: number, column: number): boolean
}

/** Blocks that are looked into on one sheet. */
const MOST_TRIED = 160

/** Fewer readings are taken for a run only where the method asks for no more. */
const SHORTEST = 2

/** More rows than anyone reads by hand: a gauge's own log. */
const SERIES_FROM = 150

/** As many rows are one where a clock wrote them. */
const SHORT_SERIES = 40

/** Seconds between two rows that a person could have written. */
const FASTEST_BY_HAND = 5

/**
 * Finds runs and raw series on a sheet: down the columns, or else along the lines.
 * @param fewest - readings that the method of the test asks of a run
 */
export function findSheetTables(
  view: View,
  answers: Answers,
  stopped: Stopped,
  fewest: number,
  heads: (view: View, stopped: Stopped) => Head[] = findHeads,
): SheetTables {
  const upright = tablesOf(view, answers, stopped, fewest, headsBeside(heads(view, stopped)))
  const lines = turned(view)
  const across =
    upright.runs.length + upright.series.length > 0
      ? undefined
      : tablesOf(lines, answers, stopped, fewest, heads(lines, stopped))
  const found = across && across.runs.length > 0 ? across : upright
  const boxes = found.runs.map((run) =>
    run.view.turned
      ? { ...linesOf(run), left: run.block.segment.head.top, right: run.bottom }
      : { top: run.row ?? run.block.segment.head.top, left: run.left, bottom: run.bottom, right: run.right },
  )
  for (const run of found.runs) if (run.row !== undefined) boxes.push(...headingsOf(run))
  for (const { top } of found.series)
    boxes.push({ top, left: 0, bottom: view.sheet.rows, right: view.columns })
  return {
    view,
    runs: found.runs.map((run) => ({ ...run, hidden: run.hidden || view.sheet.hidden })),
    series: found.series,
    isTaken: (row, column) =>
      boxes.some((box) => row >= box.top && row <= box.bottom && column >= box.left && column <= box.right),
  }
}

/** Headings of the readings and zero-flow values of a list with one row a test: "Zero before 2 Pa" is no value. */
function headingsOf({ block }: FoundRun) {
  const { head, columns } = block.segment
  return columns
    .filter(({ role }) => OF_READINGS.includes(role))
    .map(({ at }) => ({ top: head.top, bottom: head.first - 1, left: at, right: at }))
}

/** Columns that hold words. */
const OF_WORDS = ['range', 'remark', 'test', 'direction', 'index', 'time']

const OF_READINGS = ['pressure', 'induced', 'flow', 'corrected', 'zeroBefore', 'zeroAfter']

/** Sheet rows of a table across: of its lines only those with a number for most readings, not the labels above. */
function linesOf({ block, readings }: FoundRun): { top: number; bottom: number } {
  const used = block.segment.columns.filter(
    (column) =>
      column === block.pressure ||
      block.carriers.includes(column) ||
      // A line of the form above with several values, or with labels and values by turns, is none of the table.
      (column.role !== 'other' &&
        Math.min(column.numbers, column.texts) < 2 &&
        column.numbers + (OF_WORDS.includes(column.role) ? column.texts : 0) > readings.length / 2),
  )
  const lines = new Set(used.map(({ at }) => at))
  const own = [block.pressure, ...block.carriers].map(({ at }) => at)
  let [top, bottom] = [Math.min(...own), Math.max(...own)]
  // Labels of a form further up may be as many as the readings.
  while (lines.has(top - 1)) top--
  while (lines.has(bottom + 1)) bottom++
  return { top, bottom }
}

function tablesOf(
  view: View,
  answers: Answers,
  stopped: Stopped,
  fewest: number,
  heads: readonly Head[],
): { runs: FoundRun[]; series: FoundSeries[] } {
  const runs: FoundRun[] = []
  const series: FoundSeries[] = []
  let tried = 0
  const done: { top: number; bottom: number; left: number; right: number }[] = []
  const isDone = (head: Head) =>
    done.some(
      ({ top, bottom, left, right }) =>
        head.first >= top &&
        head.first <= bottom &&
        head.columns.every(({ at }) => at >= left && at <= right),
    )
  for (const head of heads) {
    if (isDone(head)) continue
    if (!view.turned && isSeries(head)) {
      series.push({ view, top: head.top, hidden: view.sheet.hidden })
      done.push({ top: head.top, bottom: view.rows, left: 0, right: view.columns })
      continue
    }
    const wide = wideRuns(head)
    if (wide) {
      runs.push(...wide.runs)
      done.push({ top: head.top, bottom: wide.last, left: 0, right: view.columns })
      continue
    }
    for (const segment of segmentsOf(head, preferredOf(answers))) {
      if (
        done.some(
          ({ top, bottom, left, right }) =>
            head.first >= top && head.first <= bottom && segment.left >= left && segment.right <= right,
        )
      )
        continue
      if (++tried > MOST_TRIED) {
        stopped(view.address(head.top, segment.left))
        return { runs, series }
      }
      const block = chooseColumns(segment, preferredOf(answers))
      const count = block?.walked.rows.filter(({ kind }) => kind === 'reading').length ?? 0
      // A run too short for its method is still a run, but one reading may be a result.
      if (!block || count < Math.min(fewest, SHORTEST)) continue
      if (done.some((box) => overlaps(box, head, block))) continue
      const above = Math.max(
        -1,
        ...runs
          .filter((run) => run.bottom < head.top && run.left <= segment.right && run.right >= segment.left)
          .map(({ bottom }) => bottom),
      )
      const own = runsOfHouses(block, above + 1, answers) ?? runsOf(block, above + 1)
      runs.push(...own.map((run) => (own.length === 1 ? withZeroColumns(run, segment) : run)))
      done.push({ top: head.top, bottom: block.walked.last, left: segment.left, right: segment.right })
    }
  }
  if (series.length === 0) runs.push(...continuedRuns(view, runs, done, answers))
  return { runs, series }
}

/** The runs of several houses that share the pressures of a block; undefined where it is of one house. */
function runsOfHouses(block: Block, above: number, answers: Answers): FoundRun[] | undefined {
  return housesBeside(block)?.flatMap(({ name, column, segment }) => {
    const own = chooseColumns(segment, preferredOf(answers))
    return own ? runsOf(own, above).map((run) => ({ ...run, test: name, houseColumn: column })) : []
  })
}

/** Blocks of numbers without headings in the columns of a table further up: most likely the other direction. */
function continuedRuns(
  view: View,
  runs: readonly FoundRun[],
  done: readonly { top: number; bottom: number; left: number; right: number }[],
  answers: Answers,
): FoundRun[] {
  if (runs.length === 0) return []
  return bareHeads(view).flatMap((head) => {
    if (done.some(({ top, bottom }) => head.first >= top && head.first <= bottom)) return []
    const model = runs.find(({ block, bottom, row }) => {
      const used = [block.pressure, ...block.carriers]
      return (
        row === undefined &&
        bottom < head.first &&
        used.every(({ at }) => head.columns.some((one) => one.at === at))
      )
    })
    if (!model || isHeaded(view, head, model.block)) return []
    const known = model.block.segment.columns
    const named = head.columns.flatMap((column) => known.find(({ at }) => at === column.at) ?? [])
    const segment: Segment = {
      view,
      head: { ...head, columns: named },
      columns: named,
      left: Math.min(...named.map(({ at }) => at)),
      right: Math.max(...named.map(({ at }) => at)),
    }
    const block = chooseColumns(segment, preferredOf(answers))
    if (!block || block.walked.rows.length < 3 || physicsScore(block.law) < PLAIN_CURVE) return []
    return runsOf({ ...block, unnamed: [block.pressure, ...block.carriers] }, model.bottom + 1)
  })
}

const preferredOf = (answers: Answers): Preferred => ({
  ...(answers['pressure.column'] ? { pressure: answers['pressure.column'] } : {}),
  ...(answers['flow.column'] ? { flow: answers['flow.column'] } : {}),
})

/** Headings over a gauge's own time log. */
export function isSeries({ view, first, columns }: Head): boolean {
  const time = columns.find(
    ({ unit, label }) =>
      unit?.kind === 'time' ||
      label.tokens.some((token) => /^(time|zeit|temps|uhrzeit|tijd|czas|tid|timestamp|elapsed)$/.test(token)),
  )
  if (!time) return false
  const rows = view.sheet.rows - inSheet(view.lines.rows, first)
  const least = rows < SERIES_FROM && isClocked(view, first, time.at) ? SHORT_SERIES : SERIES_FROM
  if (rows < least) return false
  let filled = 0
  for (let row = first; row < Math.min(view.rows, first + least); row++)
    if (columns.filter(({ at }) => view.number(row, at) !== undefined).length >= 2) filled++
  return filled >= least * 0.9
}

/** Numbers of a time that go on by the same few seconds from row to row: nobody takes readings so fast. */
function isClocked(view: View, first: number, column: number): boolean {
  const times = Array.from({ length: SHORT_SERIES }, (_, index) => view.number(first + index, column))
  const steps = times.slice(1).map((time, index) => (time ?? Number.NaN) - (times[index] ?? Number.NaN))
  const [step = 0] = steps
  return step > 0 && step <= FASTEST_BY_HAND && steps.every((one) => Math.abs(one - step) < 1e-6 * step)
}

/** Whether words of their own stand over the columns: a table that was not read for what its headings say. */
const isHeaded = (view: View, { first }: Head, { pressure, carriers }: Block): boolean =>
  [pressure, ...carriers].every(({ at }) => view.text(first - 1, at) !== undefined)

/** Whether a block's flows begin inside a table that is read already: no flow belongs to two readings. */
const overlaps = (
  box: { top: number; bottom: number; left: number; right: number },
  head: Head,
  { carriers }: Block,
): boolean =>
  head.first >= box.top &&
  head.first <= box.bottom &&
  carriers.every(({ at }) => at >= box.left && at <= box.right)

/** Zero-flow lists that stand as columns beside the readings. */
function withZeroColumns(run: FoundRun, { view, head, columns, left }: Segment): FoundRun {
  const list = (role: 'zeroBefore' | 'zeroAfter'): Figure[] =>
    columns
      .filter((column) => column.role === role && !namesNoValue(column.label))
      .flatMap(({ at, unit }) => {
        const figures: Figure[] = []
        for (let row = head.first, blanks = 0; row < view.rows && blanks < 2; row++) {
          const content = view.at(row, at)
          const lead = leadOf(view, row, at) ?? view.text(row, left)
          if (content?.kind === 'text' || (lead !== undefined && isSummary(lead))) break
          if (content?.kind !== 'number') {
            blanks++
            continue
          }
          blanks = 0
          figures.push({
            ...(unit ? { unit, unitBy: 'heading' } : {}),
            ...content.written,
            cell: view.address(row, at),
          })
        }
        return figures
      })
  const before = list('zeroBefore')
  const after = list('zeroAfter')
  return {
    ...run,
    zeroBefore: run.zeroBefore.length > 0 ? run.zeroBefore : before,
    zeroAfter: run.zeroAfter.length > 0 ? run.zeroAfter : after,
  }
}
