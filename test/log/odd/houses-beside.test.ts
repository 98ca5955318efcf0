import { describe, expect, it } from 'vitest'
import { book, day } from '../support/book'
import { HOUSE, n50Of, type OddRun, read, runOf } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const first = runOf('depressurisation')
const second: OddRun = {
  ...first,
  before: -1.4,
  after: 1.2,
  readings: first.readings.map(([p, q]): [number, number] => [p, Number((1.3 * q).toFixed(1))]),
}
const VOLUME = 508.4
const close = (value: number | undefined, truth: number) => {
  expect(value).toBeDefined()
  expect(Math.abs((value as number) / truth - 1)).toBeLessThan(0.0008)
}
const sheet = (
  volumes: readonly (number | null)[],
  zeros: readonly (number | null)[][] = [
    [first.before, second.before],
    [first.after, second.after],
  ],
) =>
  book({
    Test: [
      ['House', 'Pear Barn', 'Apple Barn'],
      ['Date', day('2026-04-22'), day('2026-04-23')],
      ['Volume (m³)', ...volumes],
      ['Inside (°C)', HOUSE.indoor_C, HOUSE.indoor_C],
      ['Outside (°C)', HOUSE.outdoor_C, HOUSE.outdoor_C],
      ['Barometer (hPa)', HOUSE.barometer_Pa / 100, HOUSE.barometer_Pa / 100],
      ['Zero flow before (Pa)', ...(zeros[0] ?? [])],
      ['Zero flow after (Pa)', ...(zeros[1] ?? [])],
      ['Δp (Pa)', 'Flow A (m³/h)', 'Flow B (m³/h)'],
      ...first.readings.map(([p, q], at) => [p, q, second.readings[at]?.[1] ?? null]),
    ],
  })

describe('flows of two houses below one column of pressures', () => {
  it('are a test each, with the values above their own flows', async () => {
    const bytes = await sheet([HOUSE.volume_m3, VOLUME])
    const { asked, tests, n50, record } = read(bytes)
    expect(asked).toEqual([])
    expect(tests).toBe(2)
    expect(record?.building.name).toBe('Pear Barn')
    close(n50, n50Of([first]))
    const other = read(bytes, { test: 'Apple Barn' })
    expect(other.record?.test.date).toBe('2026-04-23')
    close(other.n50, (n50Of([second]) * HOUSE.volume_m3) / VOLUME)
  })

  it('share one set of zero-flow pressures', async () => {
    const bytes = await sheet([HOUSE.volume_m3, VOLUME], [[first.before], [first.after]])
    const { asked, n50 } = read(bytes, { test: 'Apple Barn' })
    expect(asked).toEqual([])
    const shared = { ...second, before: first.before, after: first.after }
    close(n50, (n50Of([shared]) * HOUSE.volume_m3) / VOLUME)
  })

  it('stay one test where one volume stands above them', async () => {
    expect(read(await sheet([HOUSE.volume_m3, null])).tests).toBe(1)
  })
})
