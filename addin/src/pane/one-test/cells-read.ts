import type { Grid } from '@draughtbook/shared-calc/log'
import type { UnderstoodTest } from '../../calc/understand.js'
import type { Host } from '../../host/host.js'
import { referencesOf, type TestEntries } from './entries.js'

/** Cells as they were read, and how the log in them was understood. */
export interface ReadCells {
  grid: Grid
  understood: UnderstoodTest | undefined
}

/** The workbook's cells that entries point to: read once for the same references, until the workbook changes. */
export class CellsRead {
  #kept: ({ key: string } & ReadCells) | undefined
  /** Rises with every change of the workbook's cells. */
  #edition = 0

  /** @param attempt runs what the host may refuse; the refusal is shown */
  constructor(
    private readonly host: Host,
    private readonly attempt: <T>(action: () => Promise<T>) => Promise<T | undefined>,
  ) {}

  /** What was read for these entries: undefined where they point to no cell, `unknown` where it must be read first. */
  known(entries: TestEntries): ReadCells | undefined | 'unknown' {
    const key = keyOf(entries)
    if (key === undefined) return undefined
    return this.#kept?.key === key ? this.#kept : 'unknown'
  }

  /** Undefined where the entries point to no cell, no workbook is open, or the host refuses. */
  async of(entries: TestEntries): Promise<ReadCells | undefined> {
    const known = this.known(entries)
    if (known !== 'unknown') return known
    if ((await this.attempt(() => this.host.workbookName())) === undefined) return undefined
    const edition = this.#edition
    const read = await this.attempt(() => this.#read(entries))
    // Cells read before an edit are shown until the reading that the edit has set going is there, but not kept.
    if (read && edition === this.#edition) this.#kept = { key: keyOf(entries) as string, ...read }
    return read
  }

  async #read({ log, ...entries }: TestEntries): Promise<ReadCells> {
    if (!log) return { grid: await this.host.grid(referencesOf(entries)), understood: undefined }
    const [{ acceptedTest }, grid] = await Promise.all([import('../../calc/understand.js'), this.host.grid()])
    return { grid, understood: acceptedTest(grid, log.answers, this.host.fileDate, log.layout) }
  }

  forget(): void {
    this.#edition += 1
    this.#kept = undefined
  }
}

/** Names the cells that entries are read from; undefined where they need none. */
function keyOf(entries: TestEntries): string | undefined {
  const references = referencesOf(entries)
  if (references.length === 0 && !entries.log) return undefined
  return JSON.stringify([entries.log, references])
}
