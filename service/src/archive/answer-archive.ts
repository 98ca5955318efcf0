import type { Request, Response } from 'express'
import { goneSignal } from '../http/gone.js'
import { HttpFault } from '../http/http-fault.js'
import { faultOf, problemBody } from '../http/problem-body.js'
import { admitted } from '../http/read-body.js'
import type { Jobs } from '../jobs/jobs.js'
import { XLSX } from '../routes/workbooks.js'
import type { ArchiveResult, ArchiveTask } from './archive-tasks.js'
import { jobRunner } from './job-runner.js'
import type { SignatureWish } from './orders.js'
import { runArchive } from './run-archive.js'
import { takeUpload } from './take-upload.js'

export const NDJSON = 'application/x-ndjson'

/** The result of a request on an archive, as data and as a workbook. */
export interface ArchiveAnswer<Task extends ArchiveTask> {
  readonly task: Task
  /** The service's own keys, and whether a signature is required; keys of the request come on top. */
  readonly signatures?: SignatureWish
  /** Name of the result in the last line. */
  readonly name: string
  readonly fileName: string
  /** The result as JSON text. It and the workbook are made by a worker: a year's archive takes seconds. */
  readonly result: (results: ArchiveResult<Task>[], signal: AbortSignal) => Promise<string>
  readonly workbook: (results: ArchiveResult<Task>[], signal: AbortSignal) => Promise<Uint8Array>
}

/**
 * Works on the workbooks of a request. Answers in JSON lines, `{"progress":{"done":3,"of":40}}` and at last the result
 * under its name, or with the workbook, whichever the client accepts first. The work ends when the client goes.
 */
export async function answerArchive<Task extends ArchiveTask>(
  request: Request,
  response: Response,
  { jobs, workers }: { readonly jobs: Jobs; readonly workers: number },
  { task, signatures = {}, name, fileName, result, workbook }: ArchiveAnswer<Task>,
): Promise<void> {
  const wanted = request.accepts([NDJSON, XLSX])
  if (wanted === false)
    throw new HttpFault(406, 'Only JSON lines or a workbook can be sent back', {
      detail: `ask for ${NDJSON} or ${XLSX} in Accept`,
    })
  const runner = jobRunner(jobs, workers)
  const { keys = [], requireSignature = false } = signatures
  const orders = (await takeUpload(request, response, jobs)).map((order) => ({
    ...order,
    keys: [...order.keys, ...keys],
    ...(requireSignature && { requireSignature }),
  }))
  await admitted(request, response)
  const signal = goneSignal(response)
  if (wanted === XLSX) {
    const bytes = await workbook(await runArchive(runner, task, orders, { signal }), signal)
    response.attachment(fileName).type(XLSX).send(Buffer.from(bytes))
    return
  }
  response.status(200).type(NDJSON).set('cache-control', 'no-store')
  const line = (value: object): void => void response.write(`${JSON.stringify(value)}\n`)
  try {
    const results = await runArchive(runner, task, orders, {
      signal,
      onProgress: (progress) => line({ progress }),
    })
    response.write(`{${JSON.stringify(name)}:${await result(results, signal)}}\n`)
  } catch (error) {
    // The status has been sent already, so an error comes as the last line.
    if (!signal.aborted) line({ problem: problemBody(faultOf(error)) })
  }
  response.end()
}
