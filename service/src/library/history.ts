import { mkdir, readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { errorCode } from '../files/file-fault.js'
import { writeAtomically } from '../files/write-atomically.js'
import type { Kind } from './kinds.js'
import { readText, versionOf } from './read-entry.js'

/** One kept state of an entry. */
export interface KeptVersion {
  readonly version: string
  /** When it was kept. */
  readonly saved: string
}

const NAME = /^(\d{8}T\d{9}Z)-([0-9a-f]{16})\.json$/

/** Every state an entry has had, as files under `.history/<kind>/<id>/`, named by time and version. */
export class History {
  constructor(private readonly root: string) {}

  private folder(kind: Kind, id: string): string {
    return join(this.root, '.history', kind, id)
  }

  /** Keeps a state, unless it is the newest kept already. */
  async keep(kind: Kind, id: string, text: string, now = new Date()): Promise<void> {
    const version = versionOf(text)
    const [newest] = await this.list(kind, id)
    if (newest?.version === version) return
    const folder = this.folder(kind, id)
    await mkdir(folder, { recursive: true })
    await writeAtomically(join(folder, `${now.toISOString().replace(/[-:.]/g, '')}-${version}.json`), text)
  }

  /** What was kept, newest first. */
  async list(kind: Kind, id: string): Promise<KeptVersion[]> {
    const names = await this.names(kind, id)
    return names.flatMap((name) => {
      const [, time = '', version = ''] = NAME.exec(name) ?? []
      return version ? [{ version, saved: isoTime(time) }] : []
    })
  }

  /** Deletes what was kept, but for one state. */
  async forget(kind: Kind, id: string, but?: string): Promise<void> {
    const folder = this.folder(kind, id)
    if (but === undefined) return rm(folder, { recursive: true, force: true })
    for (const name of await this.names(kind, id))
      if (NAME.exec(name)?.[2] !== but) await rm(join(folder, name), { force: true })
  }

  /** The text of a kept state; undefined when there is none. */
  async text(kind: Kind, id: string, version: string): Promise<string | undefined> {
    const name = (await this.names(kind, id)).find((one) => NAME.exec(one)?.[2] === version)
    return name === undefined ? undefined : readText(join(this.folder(kind, id), name))
  }

  private async names(kind: Kind, id: string): Promise<string[]> {
    const names = await readdir(this.folder(kind, id)).catch((error: unknown) => {
      if (errorCode(error) === 'ENOENT') return []
      throw error
    })
    return names
      .filter((name) => NAME.test(name))
      .sort()
      .reverse()
  }
}

/** 20261125T095901123Z → 2026-11-25T09:59:01.123Z. */
const isoTime = (text: string): string =>
  text.replace(/^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)(\d{3})Z$/, '$1-$2-$3T$4:$5:$6.$7Z')
