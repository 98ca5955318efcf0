import type { TestRecord } from '@draughtbook/shared-calc'
import { inventedRecord } from './invented-record'
import { seeded } from './seeded'

const SITES = ['Invented Green', 'Invented Quay', 'Invented Rise']
const CLIENTS = ['Sample Builder (invented)', 'Example Homes (invented)', 'Sample Builder (invented)']

/**
 * An invented month of `count` tests: houses of three sites, most tested as fabric and at acceptance, those that miss
 * retested or not. The same for the same count and seed.
 */
export function inventedMonth(count: number, seed = 1): TestRecord[] {
  const random = seeded(seed)
  const tests: TestRecord[] = []
  const day = (from: number) => `2026-10-${String(Math.min(28, from)).padStart(2, '0')}`
  for (let house = 1; tests.length < count; house += 1) {
    const site = house % SITES.length
    const about = { site: SITES[site] ?? '', plot: `Plot ${house}`, client: CLIENTS[site] ?? '' }
    const volume = Math.round(180 + 200 * random())
    const n50 = 0.38 + 0.34 * random()
    const exponent = 0.6 + 0.1 * random()
    const add = (stage: 'fabric' | 'acceptance' | 'retest', date: number, target: number, n: number) =>
      tests.push(
        inventedRecord(seed * 100_000 + house * 10 + tests.length, {
          ...about,
          stage,
          date: day(date),
          n50: target,
          volume,
          exponent: n,
          id: `INV-${house}-${stage}`,
        }),
      )
    const first = 1 + Math.floor(12 * random())
    if (random() < 0.7) add('fabric', first, n50 * 1.1, exponent + 0.04)
    add('acceptance', first + 8, n50, exponent)
    if (n50 > 0.6 && random() < 0.6) add('retest', first + 13, n50 * 0.85, exponent - 0.02)
  }
  return tests.slice(0, count)
}
