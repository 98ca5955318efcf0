import { readdirSync, rmSync } from 'node:fs'
import { mkdtemp, readdir, rm, stat, utimes } from 'node:fs/promises'
import { hostname, tmpdir } from 'node:os'
import { join } from 'node:path'
import { errorCode, fileFault } from '../files/file-fault.js'

/** What the folder of a service is called: machine and process, so that the next start knows what was left behind. */
const PREFIX = 'draughtbook-uploads-'
const OWN_NAME = /^draughtbook-uploads-(.+)-(\d+)-\w{6}$/
/** A running service touches its folder this often; one of another machine, untouched for {@link DEAD_MS}, was left behind. */
const SIGN_MS = 60_000
const DEAD_MS = 10 * SIGN_MS
/** The same of this machine, where a process with its number runs: most likely the service itself, suspended, or before a clock put ahead. */
const DOUBTFUL_MS = 24 * 3600_000

const machine = hostname().replace(/[^\w.-]/g, '_')

let made: Promise<string> | undefined
/** This process's own folder, with random letters in its name, so that nobody can have made it before. */
function ownFolder(): Promise<string> {
  made ??= mkdtemp(join(tmpdir(), `${PREFIX}${machine}-${process.pid}-`)).catch((error: unknown) => {
    made = undefined
    throw error
  })
  return made
}

/** A new folder for the files of one request, only for this user. Rejects with the system's error. */
export async function uploadFolder(): Promise<string> {
  try {
    return await mkdtemp(join(await ownFolder(), 'request-'))
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw error
    // Whoever tidies the disk up has removed the service's own folder.
    made = undefined
    return mkdtemp(join(await ownFolder(), 'request-'))
  }
}

let removing: Promise<void> = Promise.resolve()

/** Removes the folder of a request, after those before it: where hundreds of senders leave at once, other work goes on meanwhile. */
export function removeUpload(folder: string): Promise<void> {
  removing = removing.then(() => remove(folder))
  return removing
}

/** Where that cannot be done now, the end of the service or its next start does it. */
async function remove(folder: string): Promise<void> {
  try {
    await rm(folder, { recursive: true, force: true })
  } catch (error) {
    const why = fileFault(error) ?? String(error)
    process.stderr.write(`draughtbook: uploaded files stay in ${folder} until the service ends: ${why}\n`)
  }
}

export interface Sweeping {
  /** Removes this process's own folder and stops looking for others. */
  end(): Promise<void>
}

/**
 * Removes what services that were killed left of their uploads: now, and while this one runs. A disk that cannot be written is
 * no reason not to start: uploads will say so.
 */
export async function startSweeping(): Promise<Sweeping> {
  await sweep()
  const timer = setInterval(() => void sweep(), SIGN_MS)
  timer.unref()
  process.once('exit', removeOwn)
  return {
    end: async () => {
      clearInterval(timer)
      process.off('exit', removeOwn)
      const own = await made?.catch(() => undefined)
      made = undefined
      if (own) await rm(own, { recursive: true, force: true }).catch(() => undefined)
    },
  }
}

/** Where the process ends without being stopped in order: told twice, or without a log. */
function removeOwn(): void {
  for (const name of namesIn(tmpdir()))
    if (name.startsWith(`${PREFIX}${machine}-${process.pid}-`)) removeNow(join(tmpdir(), name))
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
  } catch {
    return []
  }
}

function removeNow(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true })
  } catch {
    // A write may be under way in it: the next start removes it.
  }
}

async function sweep(): Promise<void> {
  const own = await giveSign().catch(() => undefined)
  for (const name of await readdir(tmpdir()).catch(() => [])) {
    const [, host, pid] = OWN_NAME.exec(name) ?? []
    const folder = join(tmpdir(), name)
    if (host === undefined || folder === own) continue
    if (await isLeft(folder, host, Number(pid)))
      await rm(folder, { recursive: true, force: true }).catch(() => undefined)
  }
}

async function giveSign(): Promise<string> {
  const own = await ownFolder()
  const now = new Date()
  await utimes(own, now, now)
  return own
}

/** Of this machine: its process is gone, or has this one's number. Else, and of another that shares the disk: no sign of life. */
async function isLeft(folder: string, host: string, pid: number): Promise<boolean> {
  const isHere = host === machine
  if (isHere && (pid === process.pid || !isRunning(pid))) return true
  const seen = await stat(folder).catch(() => undefined)
  return seen !== undefined && Date.now() - seen.mtimeMs > (isHere ? DOUBTFUL_MS : DEAD_MS)
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    // It runs, but belongs to somebody else.
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}
