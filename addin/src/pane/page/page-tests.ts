import { dayInWords } from '@draughtbook/shared-calc'
import type { OpenedBook } from '../../host/cell-sheet.js'
import type { PageHost } from '../../host/page/page-host.js'
import type { KeptTest } from '../../kept/kept-test.js'
import { isUntouched, parseEntries } from '../one-test/entries.js'
import { photosIn } from '../one-test/lists.js'
import type { TestStore } from '../one-test/store.js'

/** Asked before something is done with a file. */
export interface PageQuestion {
  words: string
  answers: readonly { label: string; act: () => Promise<void> }[]
}

/** A log read from disk, with its file. */
export interface ReadLog {
  bytes: Uint8Array
  name: string
  date: string
  book: OpenedBook
}

/** The tests of the page: which one is on show, and what is done with the others. */
export class PageTests {
  question: PageQuestion | undefined
  readonly #listeners = new Set<() => void>()

  constructor(
    readonly host: PageHost,
    readonly store: TestStore,
  ) {}

  /** Calls back when the list of tests or the question may have changed. */
  listen(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  list(): Promise<KeptTest[]> {
    return this.host.test.kept?.list() ?? Promise.resolve([])
  }

  /** Shows the test that was on show last. */
  async begin(): Promise<void> {
    await this.#show(await this.host.test.find().catch(() => undefined))
  }

  async open(id: string): Promise<void> {
    const test = await this.host.test.kept?.get(id)
    if (test) await this.#change(test)
  }

  async create(): Promise<void> {
    await this.#change(undefined)
    this.store.show('before')
  }

  /** Takes up what another tab has changed in the test on show. */
  async takeUpChanges(): Promise<void> {
    const { now, kept } = this.host.test
    const test = await kept?.get(now.id)
    if (test && test.changed > now.changed) await this.#change(test, false)
  }

  async copyAsRetest(id: string): Promise<void> {
    const { kept } = this.host.test
    const test = await kept?.get(id)
    const { retestOf } = await import('../../kept/retest.js')
    const retest = test && retestOf(test)
    if (!kept || !test || !retest) return
    await this.#keep(retest, { photos: await this.#photosOf(test) })
    await this.open(retest.id)
    this.store.show('before')
  }

  async remove(id: string): Promise<void> {
    await this.store.attempt(async () => this.host.test.kept?.remove(id))
    if (id === this.host.test.now.id) {
      await this.#show(undefined)
      await this.store.restore()
    }
    this.#tell()
  }

  /** Hands a test over as one file. */
  async saveAsFile(id: string): Promise<void> {
    await this.store.attempt(async () => {
      const { kept } = this.host.test
      const test = await kept?.get(id)
      if (!kept || !test) return
      const { packTest } = await import('../../kept/test-file.js')
      const { bytes, name } = packTest(test, await kept.log(id), await this.#photosOf(test))
      await this.host.download(bytes, name, 'application/zip')
    })
  }

  /** Takes a test from a file of {@link saveAsFile}; it becomes a test of its own. */
  async takeFile(bytes: Uint8Array, fileName: string): Promise<void> {
    const taken = await this.store.attempt(async () => {
      const { unpackTest } = await import('../../kept/test-file.js')
      const { test, log, photos } = unpackTest(bytes, fileName)
      await this.host.test.kept?.putWhole(test, { ...(log && { log }), photos })
      return test
    })
    if (!taken) return
    await this.#change(taken)
    this.store.dismissFault()
  }

  /** Puts a log read from disk into the test it belongs to, and asks where that is not plain. */
  async takeLog(log: ReadLog): Promise<void> {
    await this.store.save()
    const namesakes = (await this.list()).filter(({ log: own }) => own?.name === log.name)
    for (const test of namesakes)
      if (test.log?.size === 0) return this.#attach(log, test)
      else if (same(await this.host.test.kept?.log(test.id), log.bytes)) return this.#change(test)
    const { entries } = this.store.state
    const [namesake] = namesakes
    if (namesake)
      this.#ask(
        `A log of the same name is kept with ${titleOf(namesake)}; the file has changed since.${lostEdits(namesake)}`,
        `Use it for ${titleOf(namesake)}`,
        () => this.#attach(log, namesake),
        () => this.#attach(log),
      )
    else if (isUntouched(entries)) await this.#attach(log, this.host.test.now)
    else if (Object.keys(entries.runs).length === 0 && !this.host.hasWorkbook)
      this.#ask(
        `Is this the log of ${titleOf(this.host.test.now)}?`,
        'Yes, add it to this test',
        () => this.#attach(log, this.host.test.now),
        () => this.#attach(log),
      )
    else await this.#attach(log)
  }

  /** Puts a log that was just made into the test on show. */
  startWith(log: ReadLog): Promise<void> {
    return this.#attach(log, this.host.test.now)
  }

  #ask(words: string, label: string, own: () => Promise<void>, apart: () => Promise<void>): void {
    const then = (act: () => Promise<void>) => async () => {
      this.#put(undefined)
      await act()
    }
    this.#put({
      words,
      answers: [
        { label, act: then(own) },
        { label: 'Start a new test with it', act: then(apart) },
        { label: 'Cancel', act: then(async () => undefined) },
      ],
    })
  }

  #put(question: PageQuestion | undefined): void {
    this.question = question
    this.#tell()
  }

  async #attach({ bytes, name, date, book }: ReadLog, test?: KeptTest): Promise<void> {
    this.host.test.take(test)
    this.host.show({ ...book, fileDate: date })
    this.store.dismissFault()
    await this.store.restore()
    await this.store.attempt(() => this.host.test.takeLog(bytes, name, date))
    this.store.show('site')
    this.#tell()
  }

  /** @param saveFirst what is on show is kept before it goes */
  async #change(test: KeptTest | undefined, saveFirst = true): Promise<void> {
    if (saveFirst) await this.store.save()
    await this.#show(test)
    await this.store.restore()
    this.#tell()
  }

  async #show(test: KeptTest | undefined): Promise<void> {
    this.host.test.take(test)
    this.host.close()
    if (test) await this.store.attempt(() => this.host.test.dropPhotos(photosOf(test)))
    if (!test?.log) return
    const { log, edits, id } = test
    await this.store.attempt(async () => {
      const bytes = await this.host.test.kept?.log(id)
      if (!bytes)
        return this.store.tell(`The log ${log.name} itself is not kept here: open it again from its file.`)
      const { readBook } = await import('../../worker/run-job.js')
      const book = await readBook(bytes, log.name)
      this.host.show({ ...book, ...(log.date !== undefined && { fileDate: log.date }) })
      await this.host.retype(edits)
    })
  }

  async #keep(test: KeptTest, parts: { photos: Record<string, Uint8Array> }): Promise<void> {
    await this.store.attempt(async () => this.host.test.kept?.putWhole(test, parts))
  }

  async #photosOf(test: KeptTest): Promise<Record<string, Uint8Array>> {
    const found = await Promise.all(
      photosOf(test).map(async (name) => [name, await this.host.test.kept?.photo(test.id, name)] as const),
    )
    return Object.fromEntries(found.flatMap(([name, bytes]) => (bytes ? [[name, bytes] as const] : [])))
  }

  #tell(): void {
    for (const listener of this.#listeners) listener()
  }
}

/** Names of the photos that a test's entries point to. */
const photosOf = ({ entries }: KeptTest): string[] => photosIn(parseEntries(entries)?.lists)

/** A test by name and date, as people call it. */
export function titleOf({ about: { name, date }, log }: KeptTest): string {
  const called = name || log?.name || 'this test'
  return date === undefined ? called : `${called}, ${dayInWords(date)}`
}

const lostEdits = ({ edits }: KeptTest): string =>
  edits.length === 0
    ? ''
    : ` ${edits.length} cell${edits.length === 1 ? '' : 's'} changed on this page would be lost.`

const same = (a: Uint8Array | undefined, b: Uint8Array): boolean =>
  a !== undefined && a.length === b.length && a.every((byte, i) => byte === b[i])
