import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { KeptTest } from './kept-test.js'

interface Schema extends DBSchema {
  tests: { key: string; value: KeptTest }
  /** Files of the logs, by the test's id. */
  logs: { key: string; value: Uint8Array }
  photos: { key: [test: string, name: string]; value: Uint8Array }
}

const STORES = ['tests', 'logs', 'photos'] as const

/** The tests kept in the browser's database. Every method rejects where the browser refuses. */
export class KeptTests {
  private constructor(private readonly base: IDBPDatabase<Schema>) {}

  static async open(name = 'draughtbook'): Promise<KeptTests> {
    return new KeptTests(
      await openDB<Schema>(name, 1, {
        upgrade: (base) => {
          base.createObjectStore('tests', { keyPath: 'id' })
          base.createObjectStore('logs')
          base.createObjectStore('photos')
        },
        // A newer page waits for this one to let go of the database.
        blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
      }),
    )
  }

  /** All tests, the one changed last first. */
  async list(): Promise<KeptTest[]> {
    return (await this.base.getAll('tests')).toSorted((a, b) => b.changed - a.changed)
  }

  get(id: string): Promise<KeptTest | undefined> {
    return this.base.get('tests', id)
  }

  /** Hands the test to the browser before anything else runs: a tab that dies later loses nothing of it. */
  async put(test: KeptTest): Promise<void> {
    const change = this.base.transaction('tests', 'readwrite')
    const written = change.store.put(test)
    change.commit()
    await Promise.all([written, change.done])
  }

  /**
   * Keeps a test, unless one that was changed after `known_ms` is kept already: another tab has been quicker.
   * @returns whether it was kept
   */
  async putUnlessOvertaken(test: KeptTest, known_ms: number): Promise<boolean> {
    const change = this.base.transaction('tests', 'readwrite')
    const kept = await change.store.get(test.id)
    const overtaken = kept !== undefined && kept.changed > known_ms
    if (!overtaken) await change.store.put(test)
    await change.done
    return !overtaken
  }

  log(id: string): Promise<Uint8Array | undefined> {
    return this.base.get('logs', id)
  }

  photo(id: string, name: string): Promise<Uint8Array | undefined> {
    return this.base.get('photos', [id, name])
  }

  /** Keeps a test with its log and photos: all of it or nothing. What is not given stays as it was. */
  async putWhole(
    test: KeptTest,
    parts: { log?: Uint8Array; photos?: Readonly<Record<string, Uint8Array>> },
  ): Promise<void> {
    const change = this.base.transaction(STORES, 'readwrite')
    const { log, photos = {} } = parts
    await Promise.all([
      change.objectStore('tests').put(test),
      ...(log ? [change.objectStore('logs').put(log, test.id)] : []),
      ...Object.entries(photos).map(([name, bytes]) =>
        change.objectStore('photos').put(bytes, [test.id, name]),
      ),
      change.done,
    ])
  }

  /**
   * Removes photos that `test` no longer names, unless one that was changed after `known_ms` is kept already: in another tab
   * a row may name them again. All of it or nothing.
   * @returns whether they were removed
   */
  async removePhotosUnlessOvertaken(
    test: KeptTest,
    names: readonly string[],
    known_ms: number,
  ): Promise<boolean> {
    const change = this.base.transaction(['tests', 'photos'], 'readwrite')
    const kept = await change.objectStore('tests').get(test.id)
    const overtaken = kept !== undefined && kept.changed > known_ms
    if (!overtaken)
      await Promise.all([
        change.objectStore('tests').put(test),
        ...names.map((name) => change.objectStore('photos').delete([test.id, name])),
      ])
    await change.done
    return !overtaken
  }

  /** Removes a test with its log and photos. */
  async remove(id: string): Promise<void> {
    const change = this.base.transaction(STORES, 'readwrite')
    const all = IDBKeyRange.bound([id], [id, []])
    await Promise.all([
      change.objectStore('tests').delete(id),
      change.objectStore('logs').delete(id),
      change.objectStore('photos').delete(all),
      change.done,
    ])
  }

  /** Removes all tests with their logs and photos. */
  async removeAll(): Promise<void> {
    const change = this.base.transaction(STORES, 'readwrite')
    await Promise.all([...STORES.map((store) => change.objectStore(store).clear()), change.done])
  }

  close(): void {
    this.base.close()
  }
}
