import { describe, expect, it } from 'vitest'
import { inventHouse } from './house'
import { randomFrom } from './random'
import { generatedLogs } from './recipes'
import { moistAirDensity, standardPressure } from './truth/air'
import { fitRun } from './truth/fit'

describe('the truth of the generated logs', () => {
  it('fits an exact power law back to its exponent', () => {
    const zeroFlow_Pa = -1.3
    const readings = [62, 55, 47, 40, 31, 22].map((induced) => ({
      pressure_Pa: -induced + zeroFlow_Pa,
      flow_m3_h: 31.7 * induced ** 0.643,
    }))
    const air = { indoor_C: 20, outdoor_C: 20, barometer_Pa: 101325 }
    const { exponent, q50_m3_h } = fitRun({ direction: 'depressurisation', zeroFlow_Pa, readings }, air)
    expect(exponent).toBeCloseTo(0.643, 12)
    // Same air on both sides: only the step to reference air is left, and at 20 °C that is the vapour's share of density.
    expect(q50_m3_h / (31.7 * 50 ** 0.643)).toBeCloseTo((moistAirDensity(20, 101325) / 1.2041) ** 0.357, 9)
  })

  it('has the densities of the psychrometric and standard atmosphere tables', () => {
    // Dry air at 20 °C and 101 325 Pa: 1.2041 kg/m³, as ISO 9972 prints it.
    expect(moistAirDensity(20, 101325, 0)).toBeCloseTo(1.2041, 4)
    // US Standard Atmosphere 1976: 898.76 hPa at 1000 m.
    expect(standardPressure(1000) / 100).toBeCloseTo(898.76, 1)
  })

  it('stays near the leakage each house was invented with', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const house = inventHouse(randomFrom(seed), { n50: 1 })
      const fitted = house.runs.map(({ direction, before_Pa, after_Pa, readings }) =>
        fitRun({ direction, zeroFlow_Pa: ((before_Pa[0] ?? 0) + (after_Pa[0] ?? 0)) / 2, readings }, house),
      )
      const n50 = fitted.reduce((sum, { q50_m3_h }) => sum + q50_m3_h, 0) / fitted.length / house.volume_m3
      // 1.01 times 0.95 to 1.05, density of the site's air, and the noise of the readings.
      expect(n50).toBeGreaterThan(0.92)
      expect(n50).toBeLessThan(1.1)
    }
  })
})

describe('the generated logs', () => {
  it('are many, in two halves of about the same size, each with a name of its own', () => {
    expect(generatedLogs.length).toBeGreaterThanOrEqual(80)
    const tune = generatedLogs.filter(({ half }) => half === 'tune').length
    expect(Math.abs(tune / generatedLogs.length - 0.5)).toBeLessThan(0.1)
    expect(new Set(generatedLogs.map(({ fileName }) => fileName)).size).toBe(generatedLogs.length)
  })

  it.each(generatedLogs.map((log) => [log.name, log] as const))(
    '%s holds a plausible test',
    (_, { tests }) => {
      for (const { n50_1_h, runs } of tests) {
        expect(n50_1_h).toBeGreaterThan(0.3)
        expect(n50_1_h).toBeLessThan(4.5)
        for (const { exponent, readings } of runs) {
          expect(exponent).toBeGreaterThan(0.52)
          expect(exponent).toBeLessThan(0.78)
          expect(readings).toBeGreaterThanOrEqual(7)
        }
      }
    },
  )
})
