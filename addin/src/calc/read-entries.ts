import {
  type Direction,
  fewestReadings,
  formatNeeded,
  type Method,
  methods,
  type Problem,
  RECORD_FORMAT,
  type Run,
  runDirections,
} from '@draughtbook/shared-calc'
import {
  fieldKind,
  findUnit,
  type Grid,
  interpret,
  type PickedQuestion,
  pageText,
  setPath,
} from '@draughtbook/shared-calc/log'
import type { TestEntries } from '../pane/one-test/entries.js'
import type { TakenStations } from '../pane/one-test/taken-stations.js'
import { type AskedValue, askAbout } from './ask-about.js'
import { picksIn } from './picked-cells.js'
import { readLists } from './read-lists.js'
import { readTyped } from './read-typed.js'
import { Told, withoutLayout } from './told.js'
import type { UnderstoodTest } from './understand.js'
import { UnderstoodLog } from './understood-log.js'

/** A record under construction, with where each of its values came from. */
export interface ReadEntries {
  /** In the shape of a record, but perhaps with fewer readings and fields than a record needs. */
  draft: Record<string, unknown>
  /** Runs with as many readings as the method needs, as they are in the record. */
  runs: Run[]
  /** Runs with too few readings so far; not part of the record. */
  unfinished: Run[]
  /** Field path → cell address. */
  cells: Record<string, string>
  told: Told
  /** What unfinished lists lack, by path. */
  faults: Problem[]
  /** Runs with a pressure or flow still to come, by direction: the cell that waits. */
  waiting: Partial<Record<Direction, string>>
  /** Values typed into fields that are asked about before they are used, by path. */
  asked: Record<string, AskedValue>
  /** What is wrong with values of runs typed by hand, by their place: `depressurisation.readings[3].pressure`. */
  typedFaults: Record<string, string>
  /** What the picked cells leave open. */
  questions: readonly PickedQuestion[]
}

/**
 * Turns what was typed and picked into a record. Cells are read by the log reader; conversions, omissions and faults become
 * findings that name the cell.
 * @param grid cells the entries point to; undefined where no workbook is open
 * @param understood the test of the log that was accepted, as its cells are understood now
 */
export function readEntries(
  entries: TestEntries,
  grid: Grid | undefined,
  understood?: UnderstoodTest,
): ReadEntries {
  const told = new Told()
  const log = understood && new UnderstoodLog(understood)
  const picked = picksIn(entries, grid, told, log)
  const draft: Record<string, unknown> = { format: RECORD_FORMAT, building: {}, test: {}, conditions: {} }
  const cells: Record<string, string> = {}
  const asked: Record<string, AskedValue> = {}
  for (const [path, entry] of Object.entries(entries.fields)) {
    if ('text' in entry) {
      const value = typed(entry, path, told, asked)
      if (value !== undefined) setPath(draft, path, value)
      continue
    }
    const own = log?.field(path, entry) ?? picked.field(path)
    if (own?.cell !== undefined) cells[path] = own.cell
    if (own?.value !== undefined) setPath(draft, path, own.value)
  }
  dropBlankRanges(draft)
  if (draft.plan) completePlan(draft.plan, (draft.test as { date?: unknown }).date)
  const faults = readLists(draft, entries.lists ?? {}, told)
  const fewest = fewestReadings(methodOf(draft))
  const waiting: ReadEntries['waiting'] = {}
  const typedFaults: Record<string, string> = {}
  const runs: Run[] = []
  const unfinished: Run[] = []
  for (const direction of runDirections) {
    const picks = entries.runs[direction]
    if (!picks) continue
    const own: Record<string, string> = {}
    const index = runs.length
    const read = picks.typed
      ? readTyped({ direction, index, typed: picks.typed, told, faults: typedFaults })
      : picks.understood && log
        ? log.run(direction, index, own)
        : picks.stations
          ? { run: { direction, ...takenRun(picks.stations, { index, cells: own, told }) } }
          : picked.run(direction, index, own)
    if (!read) continue
    const { run } = read
    if (read.waiting !== undefined) waiting[direction] = read.waiting
    if (run.readings.length < fewest) {
      unfinished.push(run)
      continue
    }
    runs.push({ ...run, ...averagingOf(run, draft, told), ...flowStatedOf(run, draft) })
    Object.assign(cells, own)
  }
  draft.runs = runs
  picked.tell(told)
  log?.tell(told, draft)
  delete draft.averagingTime_s
  delete draft.flowStatedAt
  draft.format = formatNeeded(draft)
  const questions = picked.questions
  return { draft, runs, unfinished, cells, told, faults, waiting, asked, typedFaults, questions }
}

/** Averaging time is one field of the form and stands with each run of the record; a series was averaged over its own. */
function averagingOf(
  { direction, averagingTime_s: own }: Run,
  { averagingTime_s: typed }: Record<string, unknown>,
  told: Told,
): { averagingTime_s?: number } {
  if (own !== undefined && typed !== undefined && typed !== own)
    told.tell(
      pageText('averaging-time', { direction, series_s: own, typed_s: String(typed) }),
      '',
      'averagingTime_s',
    )
  const used = own ?? typed
  return typeof used === 'number' ? { averagingTime_s: used } : {}
}

/** Whether flows are for device air or reference air is asked once; a log that says it of its own run is believed. Device pressures need no answer. */
function flowStatedOf(
  { flowStatedAt: own, readings }: Run,
  { flowStatedAt: given }: Record<string, unknown>,
): Pick<Run, 'flowStatedAt'> {
  const used = own ?? given
  const flows = readings.some(({ flow_m3_h }) => flow_m3_h !== undefined)
  return flows && (used === 'device air' || used === 'reference air') ? { flowStatedAt: used } : {}
}

function typed(
  { text, unit, kept }: { text: string; unit?: string; kept?: true },
  path: string,
  told: Told,
  asked: Record<string, AskedValue>,
): string | number | undefined {
  if (text.trim() === '') return undefined
  const known = unit === undefined ? undefined : findUnit(unit)
  const read = interpret({ kind: 'text', value: text.trim() }, fieldKind(path), known ? { unit: known } : {})
  if ('refused' in read) {
    told.problem('', withoutLayout(read), path)
    return undefined
  }
  for (const { severity, rule, message } of read.remarks)
    if (!['log-text-number', 'log-text-date', 'log-word'].includes(rule))
      told.add(severity, rule, message, '', undefined, path)
  const question = kept || typeof read.value !== 'number' ? undefined : askAbout(path, text, read.value)
  if (!question) return read.value
  asked[path] = question
  told.problem(
    '',
    question.words,
    path,
    question.canKeep ? 'Correct the entry, or keep it as it is.' : undefined,
  )
  return undefined
}

/** A range of the device of which nothing is filled in is not a range. */
function dropBlankRanges(draft: Record<string, unknown>): void {
  const device = draft.flowDevice as { ranges?: (object | undefined)[] } | undefined
  if (!device?.ranges) return
  device.ranges = device.ranges.filter((range) => range && Object.keys(range).length > 0)
  if (device.ranges.length === 0) delete device.ranges
}

interface PlanDraft {
  day?: unknown
  forecast?: { windSpeed_m_s?: unknown; windAt?: unknown }
}

/** What the plan takes from what is asked elsewhere: its day is the test's, and wind is forecast for weather stations. */
function completePlan(plan: PlanDraft, testDate: unknown): void {
  if (plan.day === undefined && testDate !== undefined) plan.day = testDate
  if (plan.forecast?.windSpeed_m_s !== undefined) plan.forecast.windAt ??= 'meteorological'
}

/** Where the run is in the record, and what takes its cells and findings. */
interface Target {
  index: number
  cells: Record<string, string>
  told: Told
}

/** The readings of a run that were taken from a raw series, with their cells and findings. */
function takenRun(
  { source, run, cells, findings, changed }: TakenStations,
  { index, cells: into, told }: Target,
): Omit<Run, 'direction'> {
  const path = (within: string): string => `runs[${index}]${within ? `.${within}` : ''}`
  for (const [within, cell] of Object.entries(cells)) into[path(within)] = cell
  for (const finding of findings) told.take({ ...finding, where: finding.where.map(path) })
  if (changed) told.tell(pageText('series-changed'), source)
  return run
}

/** The method a draft names; undefined where it names none that is known. */
export function methodOf(draft: Readonly<Record<string, unknown>>): Method | undefined {
  const { method } = (draft.test ?? {}) as { method?: unknown }
  return methods.find(({ id }) => id === method)
}
