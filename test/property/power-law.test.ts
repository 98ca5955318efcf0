import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { between } from './support/ordinary-records'

const RHO_0 = 1.2041

const weather = fc.record({
  indoorTemperature_C: between(5, 30),
  outdoorTemperature_C: between(-20, 38),
  barometricPressure_Pa: between(80_000, 104_000),
  indoorRelativeHumidity: between(0, 1),
  outdoorRelativeHumidity: between(0, 1),
})
const record = (conditions: TestRecord['conditions'], runs: TestRecord['runs']): TestRecord => ({
  format: 'draughtbook/record@1',
  building: { name: 'power law', volume_m3: 300 },
  test: { date: '2026-10-14', method: 'iso-9972:2015' },
  conditions,
  runs,
})

const close = (actual: number, expected: number, what: string) =>
  expect(Math.abs(actual / expected - 1), `${what}: ${actual}, true ${expected}`).toBeLessThanOrEqual(1e-10)

describe('a power law without noise', () => {
  // The readings are made by walking the chain of the calculation reference backwards: from the leakage coefficient in
  // reference air to that of the day, through the leaks to the device, and from the induced to the logged pressure.
  it('is recovered to 1e-10: exponent, coefficients and leakage rates, whatever the air and the zero-flow pressure', () => {
    const truth = fc.record({ n: between(0.5, 1), C_L: between(1, 5000), zero: between(-4, 4) })
    const pressures = fc.uniqueArray(fc.integer({ min: 10, max: 100 }), { minLength: 3, maxLength: 12 })
    const direction = fc.constantFrom('depressurisation' as const, 'pressurisation' as const)
    fc.assert(
      fc.property(weather, truth, pressures, direction, (conditions, { n, C_L, zero }, induced, of) => {
        const runOf = (readings: TestRecord['runs'][number]['readings']) => [
          { direction: of, zeroFlowBefore_Pa: [zero - 0.5, zero + 0.5], zeroFlowAfter_Pa: [zero], readings },
        ]
        const any = induced.map((pressure) => ({ pressure_Pa: pressure + 10, flow_m3_h: pressure }))
        const { indoorDensity_kg_m3: indoor, outdoorDensity_kg_m3: outdoor } = evaluate(
          record(conditions, runOf(any)),
        ).air
        const [inDevice, inLeaks] = of === 'depressurisation' ? [indoor, outdoor] : [outdoor, indoor]
        const C_env = C_L * (inLeaks / RHO_0) ** (n - 1)
        const readings = induced.map((pressure) => ({
          pressure_Pa: (of === 'depressurisation' ? -pressure : pressure) + zero,
          flow_m3_h: (C_env * pressure ** n * inLeaks) / inDevice,
        }))
        const { runs } = evaluate(record(conditions, runOf(readings)))
        const [run] = runs
        if (!run) throw new Error('no run')
        close(run.airFlowExponent.value, n, 'n')
        close(run.airFlowCoefficient.value, C_env, 'C_env')
        close(run.airLeakageCoefficient.value, C_L, 'C_L')
        close(run.q50.value, C_L * 50 ** n, 'q50')
        close(run.q10.value, C_L * 10 ** n, 'q10')
        close(run.q4.value, C_L * 4 ** n, 'q4')
        close(run.ela4.value, ((C_L * 4 ** n) / 3600) * Math.sqrt(RHO_0 / 8) * 1e4, 'ELA at 4 Pa')
        close(run.ela10.value, ((C_L * 10 ** n) / 3600) * Math.sqrt(RHO_0 / 20) * 1e4, 'ELA at 10 Pa')
        close(run.n50?.value ?? Number.NaN, (C_L * 50 ** n) / 300, 'n50')
      }),
    )
  })
})
