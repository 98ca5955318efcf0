import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findStations } from '../../shared-calc/src/log/series/stations'
import { type GaugeSeries, gaugeSeries, gusts, type Hold } from './support/gauge-series'

const REST = (hold_s: number): Hold => ({ pressure_Pa: -1, flow: 0, hold_s })
const levels = [-70, -60, -50, -40, -30, -20]
const flowAt = (pressure: number) => 60 * Math.abs(pressure) ** 0.65
const test = (hold_s: number) => [
  REST(60),
  ...levels.map((pressure_Pa): Hold => ({ pressure_Pa, flow: flowAt(pressure_Pa), hold_s })),
  REST(60),
]
const asSeries = (made: GaugeSeries) => ({ ...made, flowKind: 'flow_m3_h' as const })
const OPTIONS = { averagingTime_s: 20 }

describe('stations of a series', () => {
  it('are the levels of the fan, with zero flow before and after', () => {
    const next = gusts(4, 0.9)
    const found = findStations(
      asSeries(gaugeSeries(test(40), { rate_Hz: 10, noise: () => 0.5 * next() })),
      OPTIONS,
    )
    expect(found.map(({ kind }) => kind)).toEqual(['zero-flow', ...levels.map(() => 'reading'), 'zero-flow'])
    for (const [index, level] of levels.entries()) {
      const { pressure, rejected } = found[index + 1] ?? { pressure: undefined }
      expect(rejected).toBeUndefined()
      expect(pressure?.samples).toBe(200)
      expect(Math.abs((pressure?.mean ?? 0) - level)).toBeLessThan(5 * (pressure?.standardUncertainty ?? 0))
    }
  })

  it('are found at any rate, in wind and calm, for any length a tester may hold', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.constantFrom(1, 2, 5, 10),
        fc.constantFrom(0.05, 0.3, 1),
        fc.integer({ min: 32, max: 90 }),
        (seed, rate_Hz, deviation, hold_s) => {
          const next = gusts(seed, Math.exp(-1 / (rate_Hz * 2)))
          const made = gaugeSeries(test(hold_s), { rate_Hz, noise: () => deviation * next() })
          const readings = findStations(asSeries(made), OPTIONS).filter(
            ({ kind, rejected }) => kind === 'reading' && !rejected,
          )
          // In strong gusts a station may be rejected or parted; none may be made up or misplaced.
          if (deviation < 1) expect(readings).toHaveLength(levels.length)
          for (const { pressure, flow } of readings) {
            const near = levels.reduce((a, b) =>
              Math.abs(b - pressure.mean) < Math.abs(a - pressure.mean) ? b : a,
            )
            expect(Math.abs(pressure.mean - near)).toBeLessThan(5 * deviation)
            expect(flow.mean / flowAt(near)).toBeCloseTo(1, 1)
          }
        },
      ),
      { numRuns: 120, seed: 20261014 },
    )
  })

  it('reject a level that slides away', () => {
    const made = gaugeSeries(test(40), { rate_Hz: 5, noise: (index) => (index % 2 === 0 ? 0.1 : -0.1) })
    // The third level (from 60 + 4 + 2·44 s on) slides by 0.15 Pa each second: 3 Pa over 20 s.
    for (let index = 0; index < made.time_s.length; index++) {
      const into = (made.time_s[index] as number) - (60 + 4 + 2 * 44)
      if (into > 0 && into < 40)
        made.pressure_Pa[index] = (made.pressure_Pa[index] as number) + 0.15 * (into - 20)
    }
    const found = findStations(asSeries(made), OPTIONS)
    expect(found.map(({ rejected }) => rejected)).toEqual([
      undefined,
      undefined,
      undefined,
      'drift',
      undefined,
      undefined,
      undefined,
      undefined,
    ])
    expect(found[3]?.pressure.drift).toBeCloseTo(3, 1)
  })

  it('reject a level held for less than the averaging time', () => {
    const holds = test(40).map((hold, index) => (index === 2 ? { ...hold, hold_s: 15 } : hold))
    const found = findStations(
      asSeries(gaugeSeries(holds, { rate_Hz: 5, noise: (index) => (index % 2 ? 0.1 : -0.1) })),
      OPTIONS,
    )
    expect(found.map(({ rejected }) => rejected)).toEqual([
      undefined,
      undefined,
      'short',
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
    ])
  })

  it('do not span a gap in time', () => {
    const made = gaugeSeries(test(60), { rate_Hz: 2, noise: (index) => (index % 2 ? 0.1 : -0.1) })
    const cut = made.time_s.findIndex((time) => time > 60 + 4 + 30)
    const late = made.time_s.map((time, index) => (index >= cut ? time + 100 : time))
    const stations = findStations(asSeries({ ...made, time_s: late }), OPTIONS)
    for (const { window } of stations) expect(window.first >= cut || window.last < cut).toBe(true)
    expect(stations.filter(({ pressure }) => Math.abs(pressure.mean + 70) < 1)).toHaveLength(2)
  })
})
