import { evaluate } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { recordWith, run } from '../support/records'

describe('500 random tests at each of the limits', () => {
  // Mulberry32, so that the houses are the same in every run.
  let state = 20261014
  const random = () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }

  it('the target is met, with a margin of 0, and missed a hundred-millionth above', () => {
    for (let i = 0; i < 500; i += 1) {
      const [volume, exponent, limit] = [100 + 900 * random(), 0.5 + 0.5 * random(), 0.2 + 5 * random()]
      const judged = (share: number) =>
        evaluate(
          recordWith((record) => {
            record.building.volume_m3 = volume
            record.target = { quantity: 'n50', limit, volumeBasis: 'net' }
            delete record.flowDevice
            const coefficient = (share * limit * volume) / 50 ** exponent
            for (const { readings } of record.runs)
              for (const reading of readings)
                reading.flow_m3_h = coefficient * Math.abs(reading.pressure_Pa) ** exponent
          }),
        ).verdict
      expect(judged(1), `test ${i}`).toMatchObject({ outcome: 'meets', margin: 0 })
      expect(judged(1 + 1e-8).outcome, `test ${i}`).toBe('misses')
    }
  })

  it.each([0.5, 1])('an exponent of %d exactly is inside the range of the method', (exponent) => {
    for (let i = 0; i < 500; i += 1) {
      const coefficient = 1 + 100 * random()
      const pressures = [60, 52, 44, 36, 28, 20, 12].map((pressure) => pressure + random())
      const { findings } = evaluate(
        recordWith((record) => {
          const one = run(record)
          one.readings = pressures.map((pressure) => ({
            pressure_Pa: -pressure,
            flow_m3_h: coefficient * pressure ** exponent,
          }))
          record.runs = [one]
          delete record.target
        }),
      )
      expect(findings.map(({ rule }) => rule)).not.toContain('exponent-range')
    }
  })
})
