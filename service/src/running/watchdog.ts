import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'

/** How long the event loop may be blocked: a longer block never ends. */
const LIMIT_s = 60

/** Cells of the memory shared with the watching thread. */
export const BEATS = 0
export const SECONDS_LEFT = 1

export interface Watched {
  readonly cells: Int32Array<SharedArrayBuffer>
  readonly limit_s: number
  readonly pid: number
}

const ENTRY = fileURLToPath(new URL('./watchdog-thread.js', import.meta.url))

export interface Watchdog {
  /** From now on the process has so many seconds to end. */
  endWithin(seconds: number): void
  end(): void
}

/**
 * Ends the process, with a sentence on standard error, when its event loop stands still for too long or it does not stop in time:
 * a process that answers nothing and cannot be told to stop helps nobody, and one that has ended is started again.
 */
export function startWatchdog(limit_s = LIMIT_s): Watchdog {
  const cells = new Int32Array(new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT))
  const watched: Watched = { cells, limit_s, pid: process.pid }
  const thread = new Worker(ENTRY, { workerData: watched })
  thread.unref()
  const timer = setInterval(() => void Atomics.add(cells, BEATS, 1), 500)
  timer.unref()
  return {
    endWithin: (seconds) => void Atomics.store(cells, SECONDS_LEFT, seconds),
    end: () => {
      clearInterval(timer)
      void thread.terminate()
    },
  }
}
