import { readdir, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { InputError } from '@draughtbook/shared-calc'
import { errorCode, fileFault } from '../files/file-fault.js'
import type { History } from './history.js'
import { isEntryId, type Kind } from './kinds.js'
import { type Entry, type EntryFault, entryOf, faultsOf, readText } from './read-entry.js'

interface Known {
  /** Shows whether the file has changed since it was read. */
  readonly mark: string
  readonly entry: Entry | undefined
  readonly faults: readonly EntryFault[]
}

/** How long a look at the folder counts. */
const FRESH_MS = 1000
const MOST_ENTRIES = 2000

/** The entries of one kind as their files have them now, or as they last were when a file is wrong or gone from reach. */
export class Shelf {
  private readonly known = new Map<string, Known>()
  private trouble: EntryFault | undefined
  private looked = Number.NEGATIVE_INFINITY

  constructor(
    private readonly root: string,
    private readonly kind: Kind,
    private readonly history: History,
  ) {}

  private get folder(): string {
    return join(this.root, this.kind)
  }

  get entries(): Entry[] {
    return [...this.known.values()]
      .flatMap(({ entry }) => (entry ? [entry] : []))
      .sort((a, b) => (a.id < b.id ? -1 : 1))
  }

  get faults(): EntryFault[] {
    return [
      ...(this.trouble ? [this.trouble] : []),
      ...[...this.known.values()].flatMap(({ faults }) => faults),
    ]
  }

  entry(id: string): Entry | undefined {
    return this.known.get(id)?.entry
  }

  /** Looks at the folder again, unless that was just done. Never rejects: what cannot be read is a fault. */
  async look(atOnce = false): Promise<void> {
    // Not by the time of day: after a clock was put back, nothing would be read until it has caught up.
    const now = performance.now()
    if (!atOnce && now - this.looked < FRESH_MS) return
    this.looked = now
    try {
      await this.readFolder()
      this.trouble = undefined
    } catch (error) {
      const message = fileFault(error) ?? String(error)
      this.trouble = { file: this.kind, path: '', message, lastGood: this.known.size > 0 }
    }
  }

  private async readFolder(): Promise<void> {
    // A library that is out of reach is not an empty library.
    await stat(this.root)
    const files = (await readdir(this.folder).catch(none)).filter((name) => name.endsWith('.json'))
    const here = new Set(files.map((name) => name.slice(0, -'.json'.length)))
    for (const id of this.known.keys()) if (!here.has(id)) this.known.delete(id)
    for (const id of [...here].sort().slice(0, MOST_ENTRIES)) await this.readFile(id)
  }

  private async readFile(id: string): Promise<void> {
    const file = `${this.kind}/${id}.json`
    const path = join(this.folder, `${id}.json`)
    const mark = await stat(path).then(
      ({ mtimeMs, size, ino }) => `${mtimeMs} ${size} ${ino}`,
      () => 'none',
    )
    const before = this.known.get(id)
    if (before?.mark === mark) return
    if (!isEntryId(id)) {
      const message = 'names of library files may use only lower-case letters, digits and hyphens'
      this.known.set(id, { mark, entry: undefined, faults: [{ file, path: '', message, lastGood: false }] })
      return
    }
    let text = ''
    try {
      text = await readText(path)
      const entry = entryOf(this.kind, id, text)
      this.known.set(id, { mark, entry, faults: [] })
      // So that an edit by hand has its history too. A folder that is read only has none.
      await this.history.keep(this.kind, id, text).catch(() => undefined)
    } catch (error) {
      const entry = before?.entry ?? (await this.lastGood(id))
      this.known.set(id, { mark, entry, faults: describe(error, file, text, entry !== undefined) })
    }
  }

  private async lastGood(id: string): Promise<Entry | undefined> {
    for (const { version } of await this.history.list(this.kind, id).catch(() => [])) {
      const text = await this.history.text(this.kind, id, version).catch(() => undefined)
      try {
        if (text !== undefined) return entryOf(this.kind, id, text)
      } catch {
        // An older program kept what this one does not take: try the state before.
      }
    }
    return undefined
  }
}

function describe(error: unknown, file: string, text: string, lastGood: boolean): EntryFault[] {
  if (error instanceof InputError) return faultsOf(error, file, text, lastGood)
  return [{ file, path: '', message: fileFault(error) ?? String(error), lastGood }]
}

/** A kind without a folder has no entries. */
function none(error: unknown): string[] {
  if (errorCode(error) === 'ENOENT') return []
  throw error
}
