import { open, rm, stat } from 'node:fs/promises'
import { setTimeout as wait } from 'node:timers/promises'
import { errorCode } from '../files/file-fault.js'

/** A lock older than this was left by a process that died: writing an entry takes milliseconds. */
const STALE_MS = 10_000
const PATIENCE_MS = 3000

/** Another process holds an entry for too long. */
export class Locked extends Error {}

/**
 * Does work while no other process that shares the folder does its own under the same name. Between reading an entry's
 * state and writing the next there must be nobody else.
 */
export async function withLock<T>(path: string, work: () => Promise<T>): Promise<T> {
  const deadline = performance.now() + PATIENCE_MS
  while (!(await taken(path))) {
    if (performance.now() > deadline) throw new Locked(`${path} is held by another process`)
    await wait(20 + 30 * Math.random())
  }
  try {
    return await work()
  } finally {
    await rm(path, { force: true })
  }
}

async function taken(path: string): Promise<boolean> {
  try {
    await (await open(path, 'wx')).close()
    return true
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error
    const { mtimeMs } = await stat(path).catch(() => ({ mtimeMs: Date.now() }))
    if (Date.now() - mtimeMs > STALE_MS) await rm(path, { force: true })
    return false
  }
}
