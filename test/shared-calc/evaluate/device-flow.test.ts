import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { reading, recordWith, run } from '../support/records'

const RANGES = [
  { label: 'wide', coefficient: 40, exponent: 0.5 },
  { label: 'narrow', coefficient: 12, exponent: 0.49 },
]
/** Flows of the first run by the device's own pressure: three readings on each range. */
const byDevice = (change: (record: TestRecord) => void = () => undefined) =>
  recordWith((record) => {
    record.flowDevice = { ...record.flowDevice, ranges: RANGES }
    const of = run(record)
    of.readings = of.readings.map(({ pressure_Pa, flow_m3_h = 0 }, i) => {
      const { label, coefficient, exponent } = RANGES[i < 3 ? 0 : 1] ?? {
        label: '',
        coefficient: 1,
        exponent: 1,
      }
      return { pressure_Pa, devicePressure_Pa: (flow_m3_h / coefficient) ** (1 / exponent), range: label }
    })
    change(record)
  })

describe('flow from the pressure of the device', () => {
  it('is coefficient times pressure to the exponent of the range, in air of the reference density', () => {
    const [measured] = evaluate(byDevice()).runs
    const [indicated] = evaluate(recordWith(() => undefined)).runs
    expect(measured?.q50.value).toBeCloseTo(indicated?.q50.value ?? Number.NaN, 9)
    expect(measured?.airFlowExponent.value).toBeCloseTo(0.65, 12)
  })

  it('does not depend on the sign of the device pressure', () => {
    const negative = byDevice((record) => {
      for (const one of run(record).readings) one.devicePressure_Pa = -(one.devicePressure_Pa ?? 0)
    })
    expect(evaluate(negative).results).toEqual(evaluate(byDevice()).results)
  })

  it('may stand beside indicated flows in one run', () => {
    const mixed = byDevice((record) => {
      const { pressure_Pa } = reading(record, 2)
      run(record).readings[2] = { pressure_Pa, flow_m3_h: 20 * Math.abs(pressure_Pa) ** 0.65 }
    })
    expect(evaluate(mixed).results.q50.value).toBeCloseTo(evaluate(byDevice()).results.q50.value, 9)
  })

  it('goes by the square root of the densities: calibrated at ρ_cal, used in ρ_d', () => {
    const densities = byDevice((record) => {
      record.flowDevice = { ...record.flowDevice, referenceDensity_kg_m3: 1.35 }
    })
    const ratio = evaluate(densities).runs[0]?.q50.value ?? 0
    expect(ratio / (evaluate(byDevice()).runs[0]?.q50.value ?? 0)).toBeCloseTo(Math.sqrt(1.35 / 1.2041), 12)
  })

  it.each([
    ['depressurised, the air in the device comes from indoors', 'indoor', 0],
    ['pressurised, from outdoors', 'outdoor', 1],
  ] as const)('%s', (_, side, index) => {
    const winter = byDevice((record) => {
      record.conditions.outdoorTemperature_C = -10
      if (index === 1) {
        const [first] = record.runs
        if (!first) return
        record.runs = [
          {
            ...first,
            direction: 'pressurisation',
            readings: first.readings.map((one) => ({ ...one, pressure_Pa: -one.pressure_Pa })),
          },
        ]
        delete record.target
      }
    })
    const { air, runs } = evaluate(winter)
    const inDevice = air[`${side}Density_kg_m3`]
    const inLeaks = air[side === 'indoor' ? 'outdoorDensity_kg_m3' : 'indoorDensity_kg_m3']
    const flow = runs[0]?.readings[0]?.envelopeFlow_m3_h ?? Number.NaN
    const measured = 20 * 60 ** 0.65 * Math.sqrt(1.2041 / inDevice)
    expect(flow).toBeCloseTo((measured * inDevice) / inLeaks, 9)
  })
})

// A device that is told no density shows the flow of reference air for its pressure: the true flow is that times
// √(ρ_ref/ρ_d), by the square-root law of a throttling device. Worked out here from the densities of the evaluation.
describe('what a typed flow is a flow of', () => {
  const stated = (flowStatedAt?: 'device air' | 'reference air') =>
    evaluate(
      recordWith((record) => {
        record.format = 'draughtbook/record@3'
        record.conditions.outdoorTemperature_C = -10
        record.conditions.barometricPressure_Pa = 83_000
        for (const one of record.runs) if (flowStatedAt) one.flowStatedAt = flowStatedAt
      }),
    )

  it('of the air in the device: it is the flow', () => {
    expect(stated('device air').results).toEqual(stated().results)
  })

  it.each([0, 1])('for reference air: the flow of run %i is larger by √(ρ_ref/ρ_d)', (index) => {
    const { air, runs } = stated('reference air')
    const inDevice = index === 0 ? air.indoorDensity_kg_m3 : air.outdoorDensity_kg_m3
    const factor = (runs[index]?.q50.value ?? 0) / (stated().runs[index]?.q50.value ?? 0)
    expect(factor).toBeCloseTo(Math.sqrt(1.2041 / inDevice), 12)
  })

  it('is asked for where it was not logged, with what the answer changes in this test', () => {
    const { air, findings } = stated()
    const asked = findings.filter(({ rule }) => rule === 'flow-stated-at')
    expect(asked.map(({ severity, where }) => [severity, where])).toEqual([
      ['caution', ['runs[0].flowStatedAt', 'runs[1].flowStatedAt']],
    ])
    const [out, into] = [air.indoorDensity_kg_m3, air.outdoorDensity_kg_m3].map(
      (density) => Math.sqrt(1.2041 / density) - 1,
    ) as [number, number]
    expect(asked[0]?.value).toBeCloseTo(Math.abs(out) > Math.abs(into) ? out : into, 12)
    const percent = (change: number) =>
      `${Number((100 * Math.abs(change)).toFixed(1))} % ${change > 0 ? 'higher' : 'lower'}`
    expect(asked[0]?.message).toContain(
      `${percent(out)} (depressurisation) and ${percent(into)} (pressurisation)`,
    )
    for (const answer of ['device air', 'reference air'] as const)
      expect(stated(answer).findings.filter(({ rule }) => rule === 'flow-stated-at')).toEqual([])
  })

  it('is not asked where the flow comes from the pressure of the device', () => {
    const winter = byDevice((record) => {
      record.conditions.outdoorTemperature_C = -10
      record.runs = record.runs.slice(0, 1)
    })
    expect(evaluate(winter).findings.filter(({ rule }) => rule === 'flow-stated-at')).toEqual([])
  })
})

describe('a device pressure without its range', () => {
  it.each([
    [
      'names a range that the device lacks',
      (r: TestRecord) => {
        reading(r, 1).range = 'other'
      },
      'runs[0].readings[1].range: the flow device has no range "other" (its ranges: "wide", "narrow")',
    ],
    [
      'the range has no coefficient',
      (r: TestRecord) => {
        r.flowDevice = { ranges: [{ label: 'wide' }, { label: 'narrow', coefficient: 1, exponent: 1 }] }
      },
      'flowDevice.ranges[0]: range "wide" has no coefficient and exponent',
    ],
    [
      'there is no device',
      (r: TestRecord) => {
        delete r.flowDevice
      },
      'runs[0].readings[0].range: the flow device has no range "wide" (its ranges: none)',
    ],
  ])('is an error: %s', (_, change, message) => {
    expect(() => evaluate(byDevice(change))).toThrow(message)
  })
})
