import { writeSync } from 'node:fs'
import { workerData } from 'node:worker_threads'
import { BEATS, SECONDS_LEFT, type Watched } from './watchdog.js'

// Seconds are counted here, not read off a clock: a laptop that slept has not stood still.
const { cells, limit_s, pid } = workerData as Watched
let last = -1
let still = 0

setInterval(() => {
  const beats = Atomics.load(cells, BEATS)
  still = beats === last ? still + 1 : 0
  last = beats
  if (still >= limit_s) end(`the service did not respond for ${limit_s} s`)
  const left = Atomics.load(cells, SECONDS_LEFT)
  if (left === 1) end('it did not stop in time')
  if (left > 1) Atomics.store(cells, SECONDS_LEFT, left - 1)
}, 1000)

function end(why: string): void {
  try {
    writeSync(2, `draughtbook: ended at once: ${why}\n`)
  } catch {
    // Standard error may be what cannot be written.
  }
  process.kill(pid, 'SIGKILL')
}
