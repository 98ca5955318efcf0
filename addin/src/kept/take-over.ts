import { type KeptTest, newTest } from './kept-test.js'
import type { KeptTests } from './kept-tests.js'

/** Earlier versions kept one test for each log's file name, and one for none, as text in the browser's storage. */
const START = 'draughtbook.test:'

type Old = Pick<Storage, 'getItem' | 'key' | 'length' | 'removeItem'>

/**
 * Takes over what earlier versions kept, one test for each entry; what was taken over is removed there.
 * @param nameOf the building's name in entries, undefined where they cannot be read
 */
export async function takeOver(kept: KeptTests, old: Old, nameOf: (entries: string) => string | undefined) {
  const keys = Array.from({ length: old.length }, (_, i) => old.key(i) ?? '').filter((key) =>
    key.startsWith(START),
  )
  // The test typed without a log comes last, so that it is the one on show.
  for (const key of keys.toSorted((a, b) => b.length - a.length)) {
    const entries = old.getItem(key) ?? ''
    const name = nameOf(entries)
    if (name !== undefined) await kept.put(asTest(key.slice(START.length), entries, name))
    old.removeItem(key)
  }
}

const asTest = (log: string, entries: string, name: string): KeptTest => ({
  ...newTest(entries),
  about: { name, standing: '' },
  ...(log !== '' && { log: { name: log, size: 0 } }),
})
