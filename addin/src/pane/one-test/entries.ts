import { type Direction, runDirections } from '@draughtbook/shared-calc'
import type { LayoutInput } from '@draughtbook/shared-calc/log'
import { type Lists, listColumns } from './lists.js'
import { isStations, type TakenStations } from './taken-stations.js'
import { isTypedRun, type TypedRun } from './typed/typed-run.js'

/** What stands behind a field: text as typed, or the cell it is taken from, with its unit where the cell names none. */
export type FieldEntry =
  | {
      text: string
      /** Unit of a number typed without one; else that of the record. */
      unit?: string
      /** The value was asked about and is right as it stands. */
      kept?: true
    }
  | { cell: string; unit?: string }

/** Cells picked for one list of values. `unit` is that of cells which do not say their own. */
export interface Pick {
  reference: string
  unit?: string
}

export const RUN_ROLES = ['zeroFlowBefore', 'pressure', 'flow', 'devicePressure', 'zeroFlowAfter'] as const
export type RunRole = (typeof RUN_ROLES)[number]
/**
 * `ranges`: cells that name the device's range of each reading; `range`: one for all; `stations`: figures taken over from a
 * raw series, `typed`: readings typed by hand; either then stands in place of all cells picked.
 */
export type RunPicks = Partial<Record<RunRole, Pick>> & {
  range?: string
  ranges?: Pick
  stations?: TakenStations
  /** How the zero-flow pressures of readings without a minus count: the answer to a question. */
  zeroFlowSign?: string
  /** Read as the log was understood and accepted; the cells picked then only show where it stands. */
  understood?: true
  typed?: TypedRun
}

/** Answers to what a log leaves open, by path, as the command line takes them with `--set`. */
export interface AcceptedLog {
  answers: Record<string, string>
  /** The layout of the firm's library it was read by. */
  layout?: LayoutInput
}

/** Everything the user typed and picked for one test. Kept with the workbook as it is; nothing computed. */
export interface TestEntries {
  version: 1
  /** By field path of the record, as in `building.volume_m3`. */
  fields: Record<string, FieldEntry>
  runs: Partial<Record<Direction, RunPicks>>
  /** The log was accepted as it was understood, with these answers. */
  log?: AcceptedLog
  /** Rows of the lists: rooms, devices, openings, leaks. */
  lists?: Lists
}

export const emptyEntries = (): TestEntries => ({
  version: 1,
  fields: { 'test.method': { text: 'iso-9972:2015' } },
  runs: {},
})

/** Whether nothing was typed or picked yet. */
export const isUntouched = ({ fields, runs, lists = {} }: TestEntries): boolean =>
  Object.keys(runs).length === 0 &&
  Object.values(lists).every((rows) => rows.length === 0) &&
  Object.keys(fields).every((path) => path === 'test.method')

/** Reads what was kept. Undefined for anything that is no such text: the user then starts afresh and is told. */
export function parseEntries(text: string): TestEntries | undefined {
  try {
    const kept: unknown = JSON.parse(text)
    return isEntries(kept) ? kept : undefined
  } catch {
    return undefined
  }
}

function isEntries(value: unknown): value is TestEntries {
  if (typeof value !== 'object' || value === null) return false
  const { version, fields, runs, log, lists = {} } = value as Partial<TestEntries>
  return (
    version === 1 &&
    (log === undefined || isAcceptedLog(log)) &&
    isObject(fields) &&
    isObject(runs) &&
    Object.entries(runs).every(([direction, run]) => isDirection(direction) && isRun(run)) &&
    Object.values(fields).every(isField) &&
    isObject(lists) &&
    Object.entries(lists).every(([name, rows]) => name in listColumns && isRows(rows))
  )
}

const isAcceptedLog = ({ answers, layout }: AcceptedLog): boolean =>
  (layout === undefined || isObject(layout)) &&
  isObject(answers) &&
  Object.values(answers).every((answer) => typeof answer === 'string')

const isRun = (run: RunPicks): boolean =>
  isObject(run) &&
  [...RUN_ROLES, 'ranges' as const].every((role) => isPick(run[role])) &&
  [run.range, run.zeroFlowSign].every(isTextIfAny) &&
  (!run.stations || isStations(run.stations)) &&
  (run.typed === undefined || isTypedRun(run.typed))

const isDirection = (word: string): boolean => (runDirections as readonly string[]).includes(word)

const isPick = (pick: unknown): boolean =>
  pick === undefined ||
  (isObject(pick) &&
    typeof (pick as Partial<Pick>).reference === 'string' &&
    isTextIfAny((pick as Partial<Pick>).unit))

const isTextIfAny = (value: unknown): boolean => value === undefined || typeof value === 'string'

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isRows = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.every((row) => isObject(row) && Object.values(row).every((text) => typeof text === 'string'))

const isField = (value: unknown): boolean =>
  isObject(value) &&
  isTextIfAny((value as { unit?: unknown }).unit) &&
  (typeof (value as { text?: unknown }).text === 'string' ||
    typeof (value as { cell?: unknown }).cell === 'string')

/** Every reference the entries point to, in the order of the form. */
export function referencesOf(entries: TestEntries): string[] {
  const cells = Object.values(entries.fields).flatMap((entry) => ('cell' in entry ? [entry.cell] : []))
  const picks = runDirections.flatMap((direction) => {
    const run = entries.runs[direction]
    return run ? [...RUN_ROLES, 'ranges' as const].flatMap((role) => run[role]?.reference ?? []) : []
  })
  return [...new Set([...cells, ...picks])]
}
