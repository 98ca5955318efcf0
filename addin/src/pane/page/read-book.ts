import type { OpenedBook } from '../../host/cell-sheet.js'
import { runJob } from '../../worker/run-job.js'

/** Reads a log in a worker, which is given up after 20 s. Rejects with HostError. */
export async function readBook(bytes: Uint8Array, fileName: string): Promise<OpenedBook> {
  const done = await runJob({ kind: 'open', bytes, fileName }, 20_000)
  if (done.kind !== 'opened') throw new Error(`the worker answered ${done.kind}`)
  return done.book
}
