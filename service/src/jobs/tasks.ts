import {
  estimateWhileReading,
  makePlan,
  measureTakeOff,
  type PlanRequest,
  parsePlan,
  parseRecord,
  parseTakeOff,
  reportLeaks,
} from '@draughtbook/shared-calc'
import { type Layout, readRanges } from '@draughtbook/shared-calc/log'
import { writePlanWorkbook, writeSummary, writeTakeOffWorkbook } from '@draughtbook/shared-calc/workbook'
import { archiveTasks } from '../archive/archive-tasks.js'
import { resultTasks } from '../archive/result-tasks.js'
import { jsonOf } from '../json/read-json.js'
import { type Kind, parseEntry } from '../library/kinds.js'
import { firmsPlan, Library } from '../library/library.js'
import { type EvaluationOrder, evaluation } from './evaluation.js'

interface PlanOrder {
  readonly body: Uint8Array
  /** Folder of the firm's library. */
  readonly library?: string | undefined
}

async function planOf({ body, library }: PlanOrder): Promise<PlanRequest> {
  const asked = parsePlan(jsonOf(body))
  return library === undefined ? asked : firmsPlan(asked, new Library(library))
}

/** Work that runs outside the event loop. A new task is one entry; its input and result must be cloneable. */
export const tasks = {
  /** Body of a record → the evaluation's JSON. */
  evaluation: async (order: EvaluationOrder) => evaluation(order),

  /** Body of a record → the summary workbook. */
  workbook: async ({ body, uncertainty }: { body: Uint8Array; uncertainty?: boolean }) => {
    const record = parseRecord(jsonOf(body))
    const { bytes, evaluation } = await writeSummary(record, { ...(uncertainty && { uncertainty }) })
    const { recordDigest, verdict } = evaluation
    const name = `${record.building.name} ${record.test.date}`
    return { bytes, name, digest: recordDigest, outcome: verdict.outcome }
  },

  /** Body of ranges of cells → the tests read from them, as JSON. */
  readings: async ({ body, layouts }: { body: Uint8Array; layouts: readonly Layout[] }) => ({
    json: JSON.stringify(readRanges(jsonOf(body), layouts)),
  }),

  /** Body of a plan, with the firm's equipment put in → the plan as JSON, or the workbook for the site. */
  plan: async (order: PlanOrder) => ({ json: JSON.stringify(makePlan(await planOf(order))) }),
  planWorkbook: async (order: PlanOrder) => ({ bytes: await writePlanWorkbook(await planOf(order)) }),

  /** Body of a take-off → volume and areas as JSON. */
  takeOff: async ({ body }: { body: Uint8Array }) => ({
    json: JSON.stringify(measureTakeOff(parseTakeOff(jsonOf(body)).takeOff)),
  }),

  /** Body of readings so far → the running estimate as JSON. */
  runningEstimate: async ({ body }: { body: Uint8Array }) => ({
    json: JSON.stringify(estimateWhileReading(jsonOf(body))),
  }),

  /** Body of a record → the report on its leaks as JSON. */
  leakReport: async ({ body }: { body: Uint8Array }) => ({
    json: JSON.stringify(reportLeaks(parseRecord(jsonOf(body)))),
  }),

  /** Body of an entry of the library → its checked text, in its own order of fields. */
  libraryEntry: async ({ body, kind }: { body: Uint8Array; kind: Kind }) => {
    const value = jsonOf(body)
    parseEntry(kind, value)
    return { value }
  },

  /** Body of a take-off → its workbook. */
  takeOffWorkbook: async ({ body }: { body: Uint8Array }) => ({
    bytes: await writeTakeOffWorkbook(parseTakeOff(jsonOf(body))),
  }),

  /** One archived file's tests for a register; what differs in one archived file. */
  registerFile: archiveTasks.register,
  recordsFile: archiveTasks.records,
  rerunFile: archiveTasks.rerun,
  ...resultTasks,
}

/** Runs a task by its name, on the calling thread. */
export const runTask = <Name extends TaskName>(
  name: Name,
  input: TaskInput<Name>,
): Promise<TaskResult<Name>> =>
  (tasks[name] as unknown as (input: TaskInput<Name>) => Promise<TaskResult<Name>>)(input)

export type TaskName = keyof typeof tasks
export type TaskInput<Name extends TaskName> = Parameters<(typeof tasks)[Name]>[0]
export type TaskResult<Name extends TaskName> = Awaited<ReturnType<(typeof tasks)[Name]>>
