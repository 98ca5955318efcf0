// Loaded into a service: its threads do not begin until a file is there, as on a machine that is busy with other work.
import { existsSync } from 'node:fs'
import { isMainThread } from 'node:worker_threads'

if (!isMainThread) {
  const cell = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))
  while (!existsSync(process.env.HELD_UNTIL)) Atomics.wait(cell, 0, 0, 20)
}
