import { HostError } from '../host/host.js'
import { type CellEdit, type KeptTest, newTest, type TestAbout } from './kept-test.js'
import type { KeptTests } from './kept-tests.js'

/** Where the id of the test on show is remembered: for this tab, and for the next one. */
export type Remembered = Pick<Storage, 'getItem' | 'setItem'>

const KEY = 'draughtbook.open'

/** The test on show, and its place among those kept. Without a database nothing is kept, and saving says so. */
export class OpenTest {
  #test: KeptTest

  constructor(
    readonly kept: KeptTests | undefined,
    private readonly empty: string,
    private readonly remembered: readonly Remembered[],
  ) {
    this.#test = newTest(empty)
  }

  get now(): KeptTest {
    return this.#test
  }

  /** Nothing was entered yet. */
  get untouched(): boolean {
    return this.#test.entries === this.empty
  }

  /** The test this tab or, for a new tab, this browser showed last; else the one changed last. */
  async find(): Promise<KeptTest | undefined> {
    for (const place of this.remembered) {
      const id = attempt(() => place.getItem(KEY))
      const test = id ? await this.kept?.get(id) : undefined
      if (test) return test
    }
    return (await this.kept?.list())?.[0]
  }

  /** Puts a test in the place of the one on show. */
  take(test: KeptTest = newTest(this.empty)): void {
    this.#test = test
    for (const place of this.remembered) attempt(() => place.setItem(KEY, test.id))
  }

  /** Keeps what was typed; what is kept already is not written again. */
  async save(entries: string, about: TestAbout): Promise<void> {
    const { entries: before, about: known } = this.#test
    if (entries === before && JSON.stringify(about) === JSON.stringify(known)) return
    // Nothing was entered yet: no test to keep.
    if (entries === this.empty && this.untouched && !this.#test.log) return
    await this.#put({ entries, about })
  }

  /** Keeps a log's file with the test; changes made to an earlier one no longer apply. */
  async takeLog(bytes: Uint8Array, name: string, date: string): Promise<void> {
    const test = { ...this.#test, log: { name, size: bytes.length, date }, edits: [], changed: Date.now() }
    this.#test = test
    await refusal(() => this.#base().putWhole(test, { log: bytes }))
  }

  /** Keeps a cell as typed; of the same cell only the last. */
  async edit(edit: CellEdit): Promise<void> {
    const others = this.#test.edits.filter(
      ({ sheet, row, column }) => sheet !== edit.sheet || row !== edit.row || column !== edit.column,
    )
    await this.#put({ edits: [...others, edit] })
  }

  /** Keeps a photo under the first free number. @returns its file name */
  async takePhoto(start: string, bytes: Uint8Array): Promise<string> {
    const { photos } = this.#test
    let number = 1
    while (photos.some((photo) => photo.name === `${start}-${number}.jpg`)) number += 1
    const name = `${start}-${number}.jpg`
    const test = { ...this.#test, photos: [...photos, { name, size: bytes.length }], changed: Date.now() }
    this.#test = test
    await refusal(() => this.#base().putWhole(test, { photos: { [name]: bytes } }))
    return name
  }

  /** Removes photos that nothing points to any more. Not at once: a removed row may be brought back with Undo. */
  async dropPhotos(wanted: readonly string[]): Promise<void> {
    const gone = this.#test.photos.filter(({ name }) => !wanted.includes(name))
    if (gone.length === 0) return
    this.#test = { ...this.#test, photos: this.#test.photos.filter(({ name }) => wanted.includes(name)) }
    for (const { name } of gone) await refusal(() => this.#base().removePhoto(this.#test, name))
  }

  photo(name: string): Promise<Uint8Array | undefined> {
    return refusal(() => this.#base().photo(this.#test.id, name))
  }

  async #put(part: Partial<KeptTest>): Promise<void> {
    this.#test = { ...this.#test, ...part, changed: Date.now() }
    await refusal(() => this.#base().put(this.#test))
  }

  #base(): KeptTests {
    if (!this.kept) throw new Error('the browser’s storage is switched off')
    return this.kept
  }
}

async function refusal<T>(action: () => Promise<T>): Promise<T> {
  try {
    return await action()
  } catch (cause) {
    throw new HostError(
      'failed',
      'The browser could not save your entries: its storage is full or switched off.',
      { cause },
    )
  }
}

/** Storage can be switched off; reading it then throws. */
function attempt<T>(action: () => T): T | undefined {
  try {
    return action()
  } catch {
    return undefined
  }
}
