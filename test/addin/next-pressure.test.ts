import { methodById, type Run } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nextPressure } from '../../addin/src/calc/next-pressure.js'

const method = methodById('iso-9972:2015')
const run = (pressures: number[]): Run => ({
  direction: 'depressurisation',
  readings: pressures.map((pressure_Pa) => ({ pressure_Pa, flow_m3_h: 100 })),
})

describe('next pressure to set', () => {
  it('asks for a start above the highest pressure the method wants', () => {
    expect(nextPressure(run([-35]), method, 10).pressure_Pa).toBe(-60)
  })

  it('fills the first gap from the top', () => {
    expect(nextPressure(run([-60, -51, -24]), method, 10).pressure_Pa).toBe(-42)
  })

  it('ends when the range is covered', () => {
    expect(nextPressure(run([60, 50, 40, 30, 20, 12]), method, 10).pressure_Pa).toBeUndefined()
  })

  it('never leaves the method’s limits, and taking every proposal ends soon with no gap left', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 51, max: 95, noNaN: true }),
        fc.double({ min: 0, max: 25, noNaN: true }),
        (first, lowest) => {
          const taken = [-first]
          const floor = Math.max(10, lowest)
          for (let step = 0; step < 25; step++) {
            const { pressure_Pa } = nextPressure(run(taken), method, lowest)
            if (pressure_Pa === undefined) break
            expect(-pressure_Pa).toBeGreaterThanOrEqual(Math.floor(floor))
            expect(-pressure_Pa).toBeLessThanOrEqual(100)
            taken.push(pressure_Pa)
          }
          expect(nextPressure(run(taken), method, lowest).pressure_Pa).toBeUndefined()
          const sorted = taken.map(Math.abs).toSorted((a, b) => a - b)
          for (const [i, pressure] of sorted.entries())
            if (i > 0) expect(pressure - (sorted[i - 1] ?? 0)).toBeLessThanOrEqual(12.5)
          expect(sorted.length).toBeGreaterThanOrEqual(5)
        },
      ),
    )
  })
})
