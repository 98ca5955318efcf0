import { HostError } from '../host/host.js'
import { type CellEdit, type KeptTest, newTest, type TestAbout } from './kept-test.js'
import type { KeptTests } from './kept-tests.js'
import type { OtherTabs } from './other-tabs.js'

/** Where the id of the test on show is remembered: for this tab, and for the next one. */
export type Remembered = Pick<Storage, 'getItem' | 'setItem'>

const KEY = 'draughtbook.open'

/** The test on show, and its place among those kept. Without a database nothing is kept, and saving says so. */
export class OpenTest {
  #test: KeptTest
  #kept: KeptTests | undefined
  #opened: Promise<KeptTests | undefined>
  /** What is on show came from another tab and was not changed here since. */
  #ofOtherTab = false
  /** The browser has refused to keep what is on show, so it must be handed over again. */
  #refused = false

  /** @param open the database with the tests kept; never rejects, undefined where the browser keeps none */
  constructor(
    private readonly open: () => Promise<KeptTests | undefined>,
    private readonly empty: string,
    private readonly remembered: readonly Remembered[],
    private readonly tabs?: Pick<OtherTabs, 'tell'>,
  ) {
    this.#test = newTest(empty)
    this.#opened = this.#open()
  }

  #open(): Promise<KeptTests | undefined> {
    const opened = this.open()
    void opened.then((kept) => {
      this.#kept = kept
    })
    return opened
  }

  /** Settles once the browser has opened the tests kept, with whether it keeps any. */
  async keeps(): Promise<boolean> {
    return (await this.#opened) !== undefined
  }

  get now(): KeptTest {
    return this.#test
  }

  /** Nothing was entered yet. */
  get untouched(): boolean {
    return this.#test.entries === this.empty
  }

  /** Whether this browser has shown a test before. */
  get hasShown(): boolean {
    return this.#shown().length > 0
  }

  /** The test this tab or, for a new tab, this browser showed last; else the one changed last. */
  async find(): Promise<KeptTest | undefined> {
    const shown = this.#shown()
    return this.read(async (base) => {
      for (const id of shown) {
        const test = await base.get(id)
        if (test) return test
      }
      return (await base.list())[0]
    })
  }

  #shown(): string[] {
    return this.remembered.flatMap((place) => attempt(() => place.getItem(KEY)) ?? [])
  }

  /** Puts a test in the place of the one on show. */
  take(test: KeptTest = newTest(this.empty)): void {
    this.#test = test
    this.#ofOtherTab = false
    this.#refused = false
    for (const place of this.remembered) attempt(() => place.setItem(KEY, test.id))
  }

  /** Takes the test on show as another tab has kept it; that tab keeps what follows from it. */
  takeFromOtherTab(test: KeptTest): void {
    this.#test = test
    this.#ofOtherTab = true
  }

  /** Keeps what was typed; what is kept already is not written again. */
  async save(entries: string, about: TestAbout): Promise<void> {
    const { entries: before, about: known } = this.#test
    const same = entries === before && (this.#ofOtherTab || JSON.stringify(about) === JSON.stringify(known))
    if (same && !this.#refused) return
    // Nothing was entered yet: no test to keep.
    if (entries === this.empty && this.untouched && !this.#test.log) return
    const { changed: known_ms } = this.#test
    // What follows from entries may be worked out long after them: meanwhile another tab may have changed the test.
    if (entries === before && !this.#refused)
      await this.#keep({ about }, (base, test) => base.putUnlessOvertaken(test, known_ms))
    else await this.#keep({ entries, about })
  }

  /** Keeps a log's file with the test; changes made to an earlier one no longer apply. */
  async takeLog(bytes: Uint8Array, name: string, date: string): Promise<void> {
    try {
      await this.#keep({ log: { name, size: bytes.length, date }, edits: [] }, (base, test) =>
        base.putWhole(test, { log: bytes }),
      )
    } catch (cause) {
      // The entries may still find room; without its file the log is listed as one that is not kept.
      const { log } = this.#test
      if (log?.name === name) this.#test = { ...this.#test, log: { ...log, size: 0 } }
      throw notKept(`the log ${name}`, cause, ' Keep the file: it has to be opened again next time.')
    }
  }

  /** Keeps a cell as typed; of the same cell only the last. */
  async edit(edit: CellEdit): Promise<void> {
    const others = this.#test.edits.filter(
      ({ sheet, row, column }) => sheet !== edit.sheet || row !== edit.row || column !== edit.column,
    )
    await this.#keep({ edits: [...others, edit] })
  }

  /** Keeps a photo under the first free number. @returns its file name */
  async takePhoto(start: string, bytes: Uint8Array): Promise<string> {
    const { photos } = this.#test
    let number = 1
    while (photos.some((photo) => photo.name === `${start}-${number}.jpg`)) number += 1
    const name = `${start}-${number}.jpg`
    try {
      await this.#keep({ photos: [...photos, { name, size: bytes.length }] }, (base, test) =>
        base.putWhole(test, { photos: { [name]: bytes } }),
      )
    } catch (cause) {
      this.#test = { ...this.#test, photos: this.#test.photos.filter((photo) => photo.name !== name) }
      throw notKept('this photo', cause)
    }
    return name
  }

  /** Removes photos that nothing points to any more. Not at once: a removed row may be brought back with Undo. */
  async dropPhotos(wanted: readonly string[]): Promise<void> {
    const { photos, changed: known_ms } = this.#test
    const gone = photos.flatMap(({ name }) => (wanted.includes(name) ? [] : [name]))
    if (gone.length === 0) return
    const left = photos.filter(({ name }) => wanted.includes(name))
    await this.#keep({ photos: left }, (base, test) => base.removePhotosUnlessOvertaken(test, gone, known_ms))
  }

  photo(name: string): Promise<Uint8Array | undefined> {
    return this.read((base) => base.photo(this.#test.id, name))
  }

  /** @param put tells by `false` that it has kept nothing, because another tab has changed the test since */
  async #keep(
    part: Partial<KeptTest>,
    put: (base: KeptTests, test: KeptTest) => Promise<unknown> = (base, test) => base.put(test),
  ): Promise<void> {
    const before = this.#test
    // A clock that is set back must not make this look older than what it follows.
    const test = { ...before, ...part, changed: Math.max(Date.now(), before.changed + 1) }
    this.#test = test
    this.#ofOtherTab = false
    try {
      if ((await this.write((base) => put(base, test))) === false) {
        if (this.#test === test) this.#test = before
        return
      }
    } catch (error) {
      this.#refused ||= this.#test.id === test.id
      throw error
    }
    if (this.#test === test) this.#refused = false
    this.tabs?.tell({ id: test.id, what: 'changed' })
  }

  /** Reads from the tests kept; undefined where the browser keeps none. Rejects with HostError. */
  async read<T>(action: (base: KeptTests) => Promise<T>): Promise<T | undefined> {
    try {
      return await this.#whileOpen(async (base) => base && action(base))
    } catch (cause) {
      throw new HostError('failed', NOT_READ, { cause })
    }
  }

  /**
   * Changes what is kept. Rejects with HostError.
   * @param what for the message: what could not be saved
   */
  async write<T>(action: (base: KeptTests) => Promise<T>, what = 'your entries'): Promise<T> {
    try {
      return await this.#whileOpen((base) => {
        if (!base) throw new Error('the browser’s storage is switched off')
        return action(base)
      })
    } catch (cause) {
      throw notKept(what, cause)
    }
  }

  /** Once the database is open, nothing is waited for: a tab that dies later has handed over what was typed. */
  async #whileOpen<T>(act: (base: KeptTests | undefined) => Promise<T>): Promise<T> {
    try {
      return await act(this.#kept ?? (await this.#opened))
    } catch (error) {
      if (!wasClosed(error)) throw error
      this.#opened = this.#open()
      return await act(await this.#opened)
    }
  }
}

export const NOT_READ =
  'The tests kept in this browser could not be read: its storage does not answer, or is switched off. ' +
  'Save what you enter now as a file or a workbook.'

const notKept = (what: string, cause: unknown, more = ''): HostError =>
  new HostError('failed', `The browser could not save ${what}: its storage is full or switched off.${more}`, {
    cause,
  })

/** The browser closes a database by itself, for instance when its data are cleared or the page lay in the background. */
const wasClosed = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'InvalidStateError'

/** Storage can be switched off; reading it then throws. */
function attempt<T>(action: () => T): T | undefined {
  try {
    return action()
  } catch {
    return undefined
  }
}
