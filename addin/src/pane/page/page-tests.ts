import { counted, dayInWords } from '@draughtbook/shared-calc'
import type { CellSheet, OpenedBook } from '../../host/cell-sheet.js'
import type { HostError } from '../../host/host.js'
import { type PageHost, sheetsWith } from '../../host/page/page-host.js'
import { forgetDevice } from '../../kept/forget-device.js'
import type { KeptTest } from '../../kept/kept-test.js'
import type { KeptTests } from '../../kept/kept-tests.js'
import { NOT_READ } from '../../kept/open-test.js'
import type { OtherTabs, Told } from '../../kept/other-tabs.js'
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

/** A database that takes longer is not waited for: some browsers never open one that they have damaged. */
const ANSWERS_WITHIN_ms = 4000

/** The tests of the page: which one is on show, and what is done with the others. */
export class PageTests {
  question: PageQuestion | undefined
  /** Rises with every test asked for. */
  #asked = 0
  readonly #listeners = new Set<() => void>()

  constructor(
    readonly host: PageHost,
    readonly store: TestStore,
    private readonly tabs?: Pick<OtherTabs, 'tell'>,
  ) {}

  /** Calls back when the list of tests or the question may have changed. */
  listen(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  async list(): Promise<KeptTest[]> {
    return (await this.#read((base) => base.list())) ?? []
  }

  #read<T>(action: (base: KeptTests) => Promise<T>): Promise<T | undefined> {
    return this.host.test.read(action)
  }

  /** Shows the test that was on show last. At the first visit nothing is waited for: there is hardly anything to show. */
  async begin(): Promise<void> {
    const { test } = this.host
    const shownBefore = test.hasShown
    const found = test.find().catch((error: HostError): undefined => {
      this.store.tell(error.message)
    })
    const early = shownBefore ? await withinTime(found, ANSWERS_WITHIN_ms) : { value: undefined }
    await this.#begin(early?.value)
    // Whoever has kept tests must not take the empty forms for all there is.
    if (!early || (shownBefore && !(await test.keeps()))) this.store.tell(NOT_READ)
    if (early?.value) return
    void found.then(async (kept) => {
      if (!kept || !isUntouched(this.store.state.entries) || this.host.hasWorkbook) return
      this.store.dismissFault()
      await this.#change(kept)
    })
  }

  /** Its log is read while the forms are drawn already. */
  async #begin(test: KeptTest | undefined): Promise<void> {
    this.host.test.take(test)
    // Of a log that is not kept itself there is nothing to wait for.
    if (test?.log?.size === 0) void this.store.attempt(() => this.#logOf(test))
    else if (test?.log) {
      const turn = this.#asked
      this.host.expect(
        this.store
          .attempt(() => this.#logOf(test))
          .then((log) => {
            if (turn !== this.#asked) return
            if (log) this.host.show(log.book, log.sheets)
            else this.host.close()
          }),
      )
    }
    await this.store.start()
    if (test) void this.store.attempt(() => this.host.test.dropPhotos(photosOf(test)))
  }

  async open(id: string): Promise<void> {
    if (id === this.host.test.now.id) return
    const test = await this.store.attempt(() => this.#read((base) => base.get(id)))
    if (test) await this.#change(test)
  }

  async create(): Promise<void> {
    await this.#change(undefined)
  }

  /** Takes up what another tab has changed in the test on show. */
  async takeUpChanges(): Promise<void> {
    const { id } = this.host.test.now
    const test = await this.#read((base) => base.get(id)).catch(() => undefined)
    const { now } = this.host.test
    if (!test || now.id !== id || test.changed <= now.changed) return
    this.host.test.takeFromOtherTab(test)
    if (!sameLog(test, now)) await this.#show(test, { saves: false })
    else if (test.entries !== now.entries) await this.store.restore()
    this.#tell()
  }

  /**
   * Hears what happened in another tab. A page that is not on show takes up changes when it comes back.
   * A test that was removed there goes here as well, or it would be kept once more.
   */
  async hear({ id, what }: Told, onShow: boolean): Promise<void> {
    if (id !== this.host.test.now.id) return this.#tell()
    if (what === 'removed') {
      await this.#show(undefined, { saves: false })
      this.store.tell('This test was removed from this device in another tab.')
      this.#tell()
    } else if (onShow) await this.takeUpChanges()
  }

  async copyAsRetest(id: string): Promise<void> {
    const retest = await this.store.attempt(async () => {
      const test = await this.#read((base) => base.get(id))
      const { retestOf } = await import('../../kept/retest.js')
      const made = test && retestOf(test)
      if (!test || !made) return undefined
      const photos = await this.#photosOf(test)
      await this.host.test.write((base) => base.putWhole(made, { photos }), 'the retest')
      return made
    })
    if (retest) await this.#change(retest)
  }

  async remove(id: string): Promise<void> {
    // First it goes from the page: nothing that is still being worked out may keep it once more.
    if (id === this.host.test.now.id) await this.#show(undefined, { saves: false })
    await this.store.attempt(() => this.host.test.write((base) => base.remove(id), 'this change'))
    this.tabs?.tell({ id, what: 'removed' })
    this.#tell()
  }

  /** Removes all tests, and whatever else this page keeps in the browser. */
  async removeAll(): Promise<void> {
    const all = await this.list()
    await this.#show(undefined, { saves: false })
    const removed = await this.store.attempt(async () => {
      await this.host.test.write((base) => base.removeAll(), 'this change')
      return true
    })
    if (removed) forgetDevice([window.sessionStorage, window.localStorage])
    for (const { id } of all) this.tabs?.tell({ id, what: 'removed' })
    this.#tell()
  }

  /** Hands a test over as one file. */
  async saveAsFile(id: string): Promise<void> {
    await this.store.attempt(async () => {
      const test = await this.#read((base) => base.get(id))
      if (!test) return
      const { packTest } = await import('../../kept/test-file.js')
      const log = await this.#read((base) => base.log(id))
      const { bytes, name } = packTest(test, log, await this.#photosOf(test))
      await this.host.download(bytes, name, 'application/zip')
    })
  }

  /** Takes a test from a file of {@link saveAsFile}; it becomes a test of its own. */
  async takeFile(bytes: Uint8Array, fileName: string): Promise<void> {
    const taken = await this.store.attempt(async () => {
      const { unpackTest } = await import('../../kept/test-file.js')
      const { test, log, photos } = unpackTest(bytes, fileName)
      await this.host.test.write(
        (base) => base.putWhole(test, { ...(log && { log }), photos }),
        `the test in ${fileName}`,
      )
      return test
    })
    if (!taken) return
    await this.#change(taken)
    this.store.dismissFault()
  }

  /** Puts a log read from disk into the test it belongs to, and asks where that is not plain. */
  async takeLog(log: ReadLog): Promise<void> {
    await this.store.save()
    const all = (await this.store.attempt(() => this.list())) ?? []
    const namesakes = all.filter(({ log: own }) => own?.name === log.name)
    for (const test of namesakes)
      if (test.log?.size === 0) return this.#attach(log, test)
      else if (same(await this.#read((base) => base.log(test.id)), log.bytes)) return this.#change(test)
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
    await this.store.restore('site')
    await this.store.attempt(() => this.host.test.takeLog(bytes, name, date))
    await this.store.save()
    this.#tell()
  }

  async #change(test: KeptTest | undefined): Promise<void> {
    await this.#show(test)
    this.#tell()
  }

  /**
   * Puts a test in the place of the one on show. Whatever takes time comes first: what is typed meanwhile goes into the test
   * that is still on show. Of several asked for in turn, the last is shown.
   * @param how `saves`: what is on show is kept before it goes
   */
  async #show(asked: KeptTest | undefined, { saves = true } = {}): Promise<void> {
    this.#asked += 1
    const turn = this.#asked
    const log = asked && (await this.store.attempt(() => this.#logOf(asked)))
    if (saves) await this.store.save()
    if (turn !== this.#asked) return
    const { now } = this.host.test
    const test = asked?.id === now.id ? now : asked
    if (test !== now) this.host.test.take(test)
    if (log) this.host.show(log.book, log.sheets)
    else this.host.close()
    await this.store.restore()
    if (test) await this.store.attempt(() => this.host.test.dropPhotos(photosOf(test)))
  }

  async #logOf({ id, log, edits }: KeptTest): Promise<{ book: OpenedBook; sheets: CellSheet[] } | undefined> {
    if (!log) return undefined
    const bytes = await this.#read((base) => base.log(id))
    if (!bytes) {
      this.store.tell(`The log ${log.name} itself is not kept here: open it again from its file.`)
      return undefined
    }
    const { readBook } = await import('../../worker/run-job.js')
    const book = await readBook(bytes, log.name)
    return {
      book: { ...book, ...(log.date !== undefined && { fileDate: log.date }) },
      sheets: await sheetsWith(edits, book),
    }
  }

  async #photosOf(test: KeptTest): Promise<Record<string, Uint8Array>> {
    const found = await Promise.all(
      photosOf(test).map(
        async (name) => [name, await this.#read((base) => base.photo(test.id, name))] as const,
      ),
    )
    return Object.fromEntries(found.flatMap(([name, bytes]) => (bytes ? [[name, bytes] as const] : [])))
  }

  #tell(): void {
    for (const listener of this.#listeners) listener()
  }
}

/** What a promise comes to, or undefined where that takes too long. */
const withinTime = <T>(coming: Promise<T>, most_ms: number): Promise<{ value: T } | undefined> =>
  Promise.race([
    coming.then((value) => ({ value })),
    new Promise<undefined>((resolve) => setTimeout(() => resolve(undefined), most_ms)),
  ])

/** Names of the photos that a test's entries point to. */
const photosOf = ({ entries }: KeptTest): string[] => photosIn(parseEntries(entries)?.lists)

/** A test by name and date, as people call it. */
export function titleOf({ about: { name, date }, log }: KeptTest): string {
  const called = name || log?.name || 'this test'
  return date === undefined ? called : `${called}, ${dayInWords(date)}`
}

const lostEdits = ({ edits }: KeptTest): string =>
  edits.length === 0 ? '' : ` ${counted(edits.length, 'cell')} changed on this page would be lost.`

const sameLog = (a: KeptTest, b: KeptTest): boolean =>
  JSON.stringify([a.log, a.edits]) === JSON.stringify([b.log, b.edits])

const same = (a: Uint8Array | undefined, b: Uint8Array): boolean =>
  a !== undefined && a.length === b.length && a.every((byte, i) => byte === b[i])
