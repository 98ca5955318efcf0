import type { Layout } from '@draughtbook/shared-calc/log'
import type { LeftOut } from '@draughtbook/shared-calc/register'
import { type ArchiveHelper, giveBack, takeHelper } from './archive-helper.js'

export interface RunState<Report> {
  readonly phase: 'idle' | 'working' | 'done'
  readonly done: number
  readonly of: number
  /** Names of the files chosen. */
  readonly names: readonly string[]
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
  readonly report: (
    helper: ArchiveHelper,
    results: readonly Result[],
    others: readonly LeftOut[],
  ) => Promise<Report>
  /** Whether records (.json) and tests handed over as one file (.zip) are tests too, beside workbooks. */
  readonly records?: true
}

const TABLE = /\.(xlsx|xlsm|ods|csv|tsv)$/i
const LAYOUT = /\.json$/i
/** A test of the page, handed over as one file. */
const HANDED_OVER = /\.zip$/i
const RECORD = /"format"\s*:\s*"draughtbook\/record@/
/** Public keys that signatures are checked against. */
const KEY = /\.pub$/i

/**
 * Works through files in workers, a few at a time, and keeps what came of it while the view is away. A file is in
 * memory only while it is worked on.
 */
export class ArchiveRun<Result, Report> {
  state: RunState<Report> = { phase: 'idle', done: 0, of: 0, names: [] }
  readonly #listeners = new Set<() => void>()
  #stopped = false
  #helpers: ArchiveHelper[] = []
  /** What the files held, for a report with other wishes. */
  #read: { results: readonly Result[]; others: readonly LeftOut[] } | undefined
  /** What comes after the run is done one thing after the other. */
  #last: Promise<unknown> = Promise.resolve()

  constructor(private readonly steps: RunSteps<Result, Report>) {}

  listen(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => void this.#listeners.delete(listener)
  }

  async start(chosen: readonly File[]): Promise<void> {
    if (this.state.phase === 'working') return
    const names = chosen.map(({ name }) => name)
    this.#stopped = false
    this.#read = undefined
    this.#set({ phase: 'working', done: 0, of: 0, names })
    const threads = Math.min(2, navigator.hardwareConcurrency || 1)
    this.#helpers = Array.from({ length: threads }, takeHelper)
    try {
      const { tests, layouts, keys, others } = await this.#sorted(chosen)
      const results = await this.#all(tests, layouts, keys, names)
      this.#read = { results, others }
      const report = await this.#first().then((helper) => this.steps.report(helper, results, others))
      this.#set({ phase: 'done', done: tests.length, of: tests.length, names, report })
    } catch (error) {
      this.#set({ phase: 'idle', done: 0, of: 0, names, ...(this.#stopped ? {} : { fault: wordsOf(error) }) })
    } finally {
      // Whoever was to ask one next, of a run that was stopped, must not ask it any more.
      for (const helper of this.#helpers) this.#stopped ? helper.end() : giveBack(helper)
      this.#helpers = []
    }
  }

  /** Makes the report again from what was read: something that it depends on has changed. */
  async remake(): Promise<void> {
    const read = this.#read
    if (!read) return
    const { names } = this.state
    const count = read.results.length
    try {
      const report = await this.after((helper) => this.steps.report(helper, read.results, read.others))
      if (this.#read === read) this.#set({ phase: 'done', done: count, of: count, names, report })
    } catch (error) {
      if (this.#read === read)
        this.#set({ phase: 'done', done: count, of: count, names, fault: wordsOf(error) })
    }
  }

  cancel(): void {
    this.#stopped = true
    for (const helper of this.#helpers) helper.end()
  }

  /** A helper for something after the run, such as writing the workbook. */
  after<T>(work: (helper: ArchiveHelper) => Promise<T>): Promise<T> {
    const next = this.#last.then(async () => {
      const helper = takeHelper()
      return work(helper).finally(() => giveBack(helper))
    })
    this.#last = next.catch(() => undefined)
    return next
  }

  /** Which of the files are tests, which help to read them, and which are neither. */
  async #sorted(chosen: readonly File[]): Promise<{
    tests: File[]
    layouts: Layout[]
    keys: string[]
    others: LeftOut[]
  }> {
    const helper = await this.#first()
    const tests: File[] = []
    const layouts: Layout[] = []
    const keys: string[] = []
    const others: LeftOut[] = []
    for (const file of chosen) {
      const { name } = file
      if (KEY.test(name)) keys.push(await file.text())
      else if (LAYOUT.test(name)) {
        const text = await file.text()
        if (RECORD.test(text) && this.steps.records) tests.push(file)
        else if (RECORD.test(text))
          others.push({ file: pathOf(file), why: 'a record of a test, not a workbook', expected: true })
        else
          layouts.push(
            await helper.ask<'layout'>({ kind: 'layout', text }).catch((error: Error) => {
              throw new Error(`${name}: ${error.message}`)
            }),
          )
      } else if (
        (TABLE.test(name) && !name.startsWith('~$')) ||
        (this.steps.records && HANDED_OVER.test(name))
      )
        tests.push(file)
      else others.push({ file: pathOf(file), why: 'not a workbook or a CSV file', expected: true })
    }
    return { tests, layouts, keys, others }
  }

  async #all(
    files: readonly File[],
    layouts: readonly Layout[],
    keys: readonly string[],
    names: readonly string[],
  ): Promise<Result[]> {
    this.#set({ phase: 'working', done: 0, of: files.length, names })
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
        this.#set({ phase: 'working', done, of: files.length, names })
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

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))
