// Loaded into a service: once it is told to stop its event loop stands still, as where a write to a dead disk never returns.
import { isMainThread } from 'node:worker_threads'

if (isMainThread)
  process.on('SIGTERM', () => {
    const cell = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))
    // After the service has heard it too, and before it could have stopped.
    setImmediate(() => Atomics.wait(cell, 0, 0))
  })
