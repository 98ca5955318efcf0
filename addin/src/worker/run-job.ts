import type { OpenedBook } from '../host/cell-sheet.js'
import { HostError } from '../host/host.js'
import { MISSING_PART } from '../pane/missing-part.js'
import type { Done, Job } from './messages.js'

/** A worker that has done its job, kept for the next: its code needs no fetching, which the service may be too far away for. */
let spare: Worker | undefined

function release(worker: Worker): void {
  if (spare) worker.terminate()
  else spare = worker
}

function take(): Worker {
  const worker = spare ?? new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
  spare = undefined
  return worker
}

/**
 * Runs one job in a worker that has no other meanwhile. One that takes too long is ended, so that no file can hold the page up.
 * @param limit_ms after which the job is given up
 */
export function runJob(job: Job, limit_ms = 60_000): Promise<Exclude<Done, { kind: 'failed' }>> {
  return new Promise((resolve, reject) => {
    const worker = take()
    const stop = setTimeout(
      () =>
        finish(() =>
          reject(new HostError('too-large', 'The file took too long to read, so reading was stopped.')),
        ),
      limit_ms,
    )
    const finish = (then: () => void): void => {
      clearTimeout(stop)
      worker.terminate()
      then()
    }
    worker.onmessage = ({ data }: MessageEvent<Done>) => {
      clearTimeout(stop)
      release(worker)
      if (data.kind === 'failed') reject(new HostError('failed', sentences(data.problems)))
      else resolve(data)
    }
    worker.onerror = (event) =>
      finish(() =>
        reject(
          new HostError(
            'failed',
            event.message ? `The work could not be done: ${event.message}` : MISSING_PART,
          ),
        ),
      )
    worker.postMessage(job)
  })
}

const sentences = (problems: readonly { path: string; cell?: string; message: string }[]): string =>
  problems.map(({ cell, message }) => (cell ? `${cell}: ${message}` : message)).join('; ')

/** Reads a log in a worker, which is given up after 20 s. Rejects with HostError. */
export async function readBook(bytes: Uint8Array, fileName: string): Promise<OpenedBook> {
  const done = await runJob({ kind: 'open', bytes, fileName }, 20_000).catch((cause: unknown) => {
    // Whoever chose the file may have gone on to something else: its name comes first.
    throw cause instanceof HostError
      ? new HostError(cause.code, `${fileName}: ${cause.message}`, { cause })
      : cause
  })
  if (done.kind !== 'opened') throw new Error(`the worker answered ${done.kind}`)
  return done.book
}
