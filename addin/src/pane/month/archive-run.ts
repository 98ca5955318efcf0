import type { Layout } from '@draughtbook/shared-calc/log'
import type { LeftOut } from '@draughtbook/shared-calc/register'
import { ArchiveHelper } from './archive-helper.js'

export interface RunState<Report> {
  readonly phase: 'idle' | 'working' | 'done'
  readonly done: number
  readonly of: number
  readonly report?: Report
  /** Why there is no report. */
  readonly fault?: string
}

/** What a run does with each file and with all of them. */
export interface RunSteps<Result, Report> {
  readonly each: (
    helper: ArchiveHelper,
    file: { file: string; bytes: Uint8Array; layouts: readonly Layout[]; keys: readonly string[] },
  ) => Promise<Result>
  /** Stands for a file that no worker could finish. */
  readonly setAside: (file: string, why: string) => Result
  readonly report: (helper: ArchiveHelper, results: Result[], others: LeftOut[]) => Promise<Report>
}

const TABLE = /\.(xlsx|xlsm|ods|csv|tsv)$/i
const LAYOUT = /\.json$/i
/** Public keys that signatures are checked against. */
const KEY = /\.pub$/i

/**
 * Works through files in workers, a few at a time, and keeps what came of it while the view is away. A file is in
 * memory only while it is worked on.
 */
export class ArchiveRun<Result, Report> {
  state: RunState<Report> = { phase: 'idle', done: 0, of: 0 }
  readonly #listeners = new Set<() => void>()
  #stopped = false
  #helpers: ArchiveHelper[] = []

  constructor(private readonly steps: RunSteps<Result, Report>) {}

  listen(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => void this.#listeners.delete(listener)
  }

  async start(chosen: readonly File[]): Promise<void> {
    if (this.state.phase === 'working') return
    const tables = chosen.filter(({ name }) => TABLE.test(name) && !name.startsWith('~$'))
    const others = chosen
      .filter((file) => !tables.includes(file) && !LAYOUT.test(file.name) && !KEY.test(file.name))
      .map(
        (file): LeftOut => ({
          file: pathOf(file),
          why: 'not a workbook or a CSV file',
          expected: true,
        }),
      )
    this.#stopped = false
    this.#set({ phase: 'working', done: 0, of: tables.length })
    const threads = Math.min(2, navigator.hardwareConcurrency || 1)
    this.#helpers = Array.from({ length: threads }, () => new ArchiveHelper())
    try {
      const layouts = await this.#layouts(chosen.filter(({ name }) => LAYOUT.test(name)))
      const keys = await Promise.all(chosen.filter(({ name }) => KEY.test(name)).map((file) => file.text()))
      const results = await this.#all(tables, layouts, keys)
      const report = await this.#first().then((helper) => this.steps.report(helper, results, others))
      this.#set({ phase: 'done', done: tables.length, of: tables.length, report })
    } catch (error) {
      const fault = error instanceof Error ? error.message : String(error)
      this.#set({ phase: 'idle', done: 0, of: 0, ...(this.#stopped ? {} : { fault }) })
    } finally {
      for (const helper of this.#helpers) helper.end()
      this.#helpers = []
    }
  }

  cancel(): void {
    this.#stopped = true
    for (const helper of this.#helpers) helper.end()
  }

  /** A helper for something after the run, such as writing the workbook. */
  async after<T>(work: (helper: ArchiveHelper) => Promise<T>): Promise<T> {
    const helper = new ArchiveHelper()
    try {
      return await work(helper)
    } finally {
      helper.end()
    }
  }

  async #layouts(files: readonly File[]): Promise<Layout[]> {
    const helper = await this.#first()
    const layouts: Layout[] = []
    for (const file of files) {
      const text = await file.text()
      layouts.push(
        await helper.ask<'layout'>({ kind: 'layout', text }).catch((error: Error) => {
          throw new Error(`${file.name}: ${error.message}`)
        }),
      )
    }
    return layouts
  }

  async #all(files: readonly File[], layouts: readonly Layout[], keys: readonly string[]): Promise<Result[]> {
    const results = new Array<Result>(files.length)
    let next = 0
    let done = 0
    const take = async (helper: ArchiveHelper): Promise<void> => {
      while (next < files.length) {
        if (this.#stopped) throw new Error('stopped')
        const index = next
        next += 1
        const chosen = files[index]
        if (!chosen) return
        const file = pathOf(chosen)
        results[index] = await chosen
          .arrayBuffer()
          .then((buffer) => this.steps.each(helper, { file, bytes: new Uint8Array(buffer), layouts, keys }))
          .catch((error: Error) => {
            if (this.#stopped) throw error
            return this.steps.setAside(file, error.message)
          })
        done += 1
        this.#set({ phase: 'working', done, of: files.length })
      }
    }
    await Promise.all(this.#helpers.map(take))
    return results
  }

  async #first(): Promise<ArchiveHelper> {
    const [helper] = this.#helpers
    if (!helper) throw new Error('stopped')
    return helper
  }

  #set(state: RunState<Report>): void {
    this.state = state
    for (const listener of this.#listeners) listener()
  }
}

/** Path below the folder chosen, or the name. */
const pathOf = (file: File): string => file.webkitRelativePath || file.name
