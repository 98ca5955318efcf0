import { randomUUID } from 'node:crypto'
import { open, readFile, rm, stat } from 'node:fs/promises'
import { hostname } from 'node:os'
import { setTimeout as wait } from 'node:timers/promises'
import { errorCode } from '../files/file-fault.js'

/** A lock older than this was left by a process that died, on whatever machine: writing an entry takes milliseconds. */
const STALE_MS = 10_000
const PATIENCE_MS = 3000

/** Another process holds an entry for too long. */
export class Locked extends Error {}

/**
 * Does work while no other process that shares the folder does its own under the same name. Between reading an entry's
 * state and writing the next there must be nobody else.
 * @param path - the lock's file, which says who holds it
 * @throws Locked when another process holds it for more than {@link PATIENCE_MS}
 */
export async function withLock<T>(path: string, work: () => Promise<T>): Promise<T> {
  const own = `${hostname()} ${process.pid} ${randomUUID()}`
  const deadline = performance.now() + PATIENCE_MS
  while (!(await taken(path, own))) {
    await removeStale(path)
    if (performance.now() > deadline)
      throw new Locked(
        `another process is changing the same file (its lock is ${path}): try again in ${STALE_MS / 1000} s`,
      )
    await wait(20 + 30 * Math.random())
  }
  try {
    return await work()
  } finally {
    // Whoever was suspended for so long that its lock was taken over must not remove the next one's.
    if ((await holderOf(path)) === own) await rm(path, { force: true })
  }
}

async function taken(path: string, own: string): Promise<boolean> {
  const file = await open(path, 'wx').catch((error: unknown) => {
    if (errorCode(error) !== 'EEXIST') throw error
    return undefined
  })
  if (file === undefined) return false
  try {
    await file.writeFile(own)
    return true
  } catch (error) {
    // On a full disk there is room for its name alone. Left there, it would keep out whoever comes once there is room again.
    await rm(path, { force: true })
    throw error
  } finally {
    await file.close()
  }
}

const holderOf = (path: string): Promise<string | undefined> => readFile(path, 'utf8').catch(() => undefined)

/**
 * Removes a lock that was left behind. Two processes may find the same one: only the one that may clear it removes it, and only
 * while it is still the lock that was judged, so that the next one's is not lost.
 */
async function removeStale(path: string): Promise<void> {
  const holder = await holderOf(path)
  if (holder === undefined || !(await isLeft(path, holder))) return
  const clearing = `${path}.clearing`
  if (!(await taken(clearing, holder))) {
    if (await isOld(clearing)) await rm(clearing, { force: true })
    return
  }
  try {
    if ((await holderOf(path)) === holder) await rm(path, { force: true })
  } finally {
    await rm(clearing, { force: true })
  }
}

/** Whether its process has ended, as far as that can be seen from here, or its time is long over. */
async function isLeft(path: string, holder: string): Promise<boolean> {
  const [host, pid] = holder.split(' ')
  return (host === hostname() && hasEnded(Number(pid))) || isOld(path)
}

const isOld = (path: string): Promise<boolean> =>
  stat(path).then(
    ({ mtimeMs }) => Date.now() - mtimeMs > STALE_MS,
    () => false,
  )

function hasEnded(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return false
  } catch (error) {
    return errorCode(error) === 'ESRCH'
  }
}
