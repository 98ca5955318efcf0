// Loaded into a service: reading an uploaded file does not go on until a file is there, as with a workbook that takes long.
import fs, { existsSync } from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'
import { isMainThread } from 'node:worker_threads'

if (!isMainThread) {
  const { open } = fs.promises
  const cell = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))
  fs.promises.open = (path, ...more) => {
    if (String(path).includes('draughtbook-uploads-'))
      while (!existsSync(process.env.HELD_UNTIL)) Atomics.wait(cell, 0, 0, 20)
    return open(path, ...more)
  }
  syncBuiltinESMExports()
}
