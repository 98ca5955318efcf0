import { mkdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { LibraryDevice, LibraryGauge, type PlanRequest, withFirmsEquipment } from '@draughtbook/shared-calc'
import { errorCode } from '../files/file-fault.js'
import { writeAtomically } from '../files/write-atomically.js'
import { History, type KeptVersion } from './history.js'
import { type Kind, kindNames } from './kinds.js'
import { type Entry, type EntryFault, readText, versionOf } from './read-entry.js'
import { Shelf } from './shelf.js'
import { withLock } from './with-lock.js'

/** The state a change was based on is no longer the state there is. */
export class Outdated extends Error {}

/** What a change expects to find: a version, or nothing. */
export type Expected = string | undefined

/** The firm's library: JSON files in one folder, which people may also edit by hand and several services may share. */
export class Library {
  private readonly history: History
  private readonly shelves: Readonly<Record<Kind, Shelf>>

  constructor(private readonly root: string) {
    this.history = new History(root)
    const shelves = kindNames.map((kind) => [kind, new Shelf(root, kind, this.history)])
    this.shelves = Object.fromEntries(shelves)
  }

  /** The entries of a kind, with what is wrong in its files. */
  async list(kind: Kind): Promise<{ entries: Entry[]; faults: EntryFault[] }> {
    const shelf = this.shelves[kind]
    await shelf.look()
    return { entries: shelf.entries, faults: shelf.faults }
  }

  async get(kind: Kind, id: string): Promise<Entry | undefined> {
    await this.shelves[kind].look()
    return this.shelves[kind].entry(id)
  }

  /** Saves an entry as it was written, in its own order of fields; it must have been checked. Throws Outdated when its state is not the expected one. Resolves to the new version. */
  put(kind: Kind, id: string, value: unknown, expected: Expected): Promise<string> {
    return this.change(kind, id, expected, async (path) => {
      const text = `${JSON.stringify(value, null, 2)}\n`
      // First the history, then the entry: whatever happens between, nothing is lost.
      await this.history.keep(kind, id, text)
      await writeAtomically(path, text)
      return versionOf(text)
    })
  }

  /** Removes an entry; its history stays. Throws Outdated. */
  async remove(kind: Kind, id: string, expected: Expected): Promise<void> {
    await this.change(kind, id, expected, (path) => rm(path))
  }

  kept(kind: Kind, id: string): Promise<KeptVersion[]> {
    return this.history.list(kind, id)
  }

  keptText(kind: Kind, id: string, version: string): Promise<string | undefined> {
    return this.history.text(kind, id, version)
  }

  /** Deletes the earlier states of an entry; the one there is stays. */
  async forget(kind: Kind, id: string): Promise<void> {
    await this.locked(kind, id, async (path) => {
      const text = await textOrNone(path)
      await this.history.forget(kind, id, text === undefined ? undefined : versionOf(text))
    })
  }

  private async change<T>(
    kind: Kind,
    id: string,
    expected: Expected,
    work: (path: string) => Promise<T>,
  ): Promise<T> {
    const result = await this.locked(kind, id, async (path) => {
      const text = await textOrNone(path)
      if ((text === undefined ? undefined : versionOf(text)) !== expected) throw new Outdated()
      if (text !== undefined) await this.history.keep(kind, id, text)
      return work(path)
    })
    await this.shelves[kind].look(true)
    return result
  }

  private async locked<T>(kind: Kind, id: string, work: (path: string) => Promise<T>): Promise<T> {
    // Without this, a folder that is gone would silently be made again somewhere else.
    await stat(this.root)
    await mkdir(join(this.root, kind), { recursive: true })
    return withLock(join(this.root, kind, `.${id}.lock`), () => work(join(this.root, kind, `${id}.json`)))
  }
}

async function textOrNone(path: string): Promise<string | undefined> {
  return readText(path).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return undefined
    throw error
  })
}

/** A plan that names no equipment, with the firm's put in. */
export async function firmsPlan(request: PlanRequest, library: Library): Promise<PlanRequest> {
  const [devices, gauges] = await Promise.all([library.list('devices'), library.list('gauges')])
  return withFirmsEquipment(
    request,
    devices.entries.map(({ value }) => LibraryDevice.parse(value)),
    gauges.entries.map(({ value }) => LibraryGauge.parse(value)),
  )
}
