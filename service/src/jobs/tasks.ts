import { evaluate, parseRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { jsonOf } from '../http/read-body.js'

/** Work that runs outside the event loop. A new task is one line; its input and result must be cloneable. */
export const tasks = {
  /** Body of a record → the evaluation's JSON. For bodies too large to evaluate between two requests. */
  evaluation: async ({ body, trace }: { body: Uint8Array; trace: boolean }) => {
    const evaluation = evaluate(parseRecord(jsonOf(body)), { trace })
    return { json: JSON.stringify(evaluation), digest: evaluation.recordDigest }
  },
  /** Body of a record → the summary workbook. */
  workbook: async ({ body }: { body: Uint8Array }) => {
    const record = parseRecord(jsonOf(body))
    const { recordDigest } = evaluate(record)
    const { building, test } = record
    return {
      bytes: await writeSummaryWorkbook(record),
      digest: recordDigest,
      name: `${building.name} ${test.date}`,
    }
  },
}

export type TaskName = keyof typeof tasks
export type TaskInput<Name extends TaskName> = Parameters<(typeof tasks)[Name]>[0]
export type TaskResult<Name extends TaskName> = Awaited<ReturnType<(typeof tasks)[Name]>>
