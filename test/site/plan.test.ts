import { type Finding, makePlan, type PlanRequest } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { byRule, Calculation } from '../../shared-calc/src/engine/index.js'
import { moistAir } from '../../shared-calc/src/formulas/air.js'
import { stackPressure } from '../../shared-calc/src/formulas/stack-pressure.js'
import { planRequest } from './support/plan-request.js'

const plan = makePlan(planRequest)
const withPlan = (more: Partial<PlanRequest['plan']>): PlanRequest => ({
  ...planRequest,
  plan: { ...planRequest.plan, ...more },
})
const rules = (request: PlanRequest) => makePlan(request).findings.map(({ rule }: Finding) => rule)

/** Moist-air density at 50 % humidity and the pressure of 120 m, reckoned here from the ideal gas law. */
const density = (celsius: number): number => {
  const kelvin = celsius + 273.15
  const barometer = 101_325 * (1 - 2.25577e-5 * 120) ** 5.25588
  const vapour = 0.5 * Math.exp(59.484085 - 6790.4985 / kelvin - 5.02802 * Math.log(kelvin))
  return (barometer - 0.37802 * vapour) / (287.055 * kelvin)
}

/** The project's own chapters, fed with dry air. */
function dryStack(barometer: number, height: number, inside: number, outside: number): number {
  const calculation = new Calculation()
  const given = (value: number) => byRule(value, 'given by the test')
  const air = (id: string, theta: number) =>
    calculation
      .add(id, id, moistAir, { theta: given(theta), phi: given(0), p_bar: given(barometer) })
      .ref('rho')
  return calculation
    .add('stack', 'stack', stackPressure, {
      h_b: given(height),
      rho_i: air('inside', inside),
      rho_e: air('outside', outside),
    })
    .value('dp_st')
}

describe('flows to expect', () => {
  it('a house of 320 m³ may leak 192 m³/h at 50 Pa to keep 0.6 1/h', () => {
    expect(plan.allowedLeakage).toStrictEqual({ flow_m3_h: 192, referencePressure_Pa: 50 })
  })

  it('follow the power law with each exponent, turned from reference to actual air (arithmetic of this test)', () => {
    const [inside, outside] = [density(20), density(4)]
    for (const { direction, readings } of plan.runs) {
      const [device, leaks] = direction === 'depressurisation' ? [inside, outside] : [outside, inside]
      for (const { pressureDifference_Pa, expectedFlows_m3_h } of readings)
        for (const { exponent, flow } of expectedFlows_m3_h) {
          const coefficient = (192 / 50 ** exponent) * (1.2041 / leaks) ** (1 - exponent)
          const expected = (coefficient * pressureDifference_Pa ** exponent * leaks) / device
          expect(Math.abs(flow / expected - 1)).toBeLessThan(1e-12)
        }
    }
  })

  it('are 192 m³/h at 50 Pa whatever the exponent where no temperature is forecast', () => {
    const still = makePlan(withPlan({ forecast: {}, devices: [] }))
    const flows = still.runs.flatMap(({ readings }) =>
      readings.flatMap((reading) => reading.expectedFlows_m3_h),
    )
    const atExponents = new Set(flows.map(({ exponent }) => exponent))
    expect([...atExponents]).toStrictEqual([0.55, 0.65, 0.75])
    for (const { readings } of still.runs)
      for (const { pressureDifference_Pa: dp, expectedFlows_m3_h } of readings)
        for (const { exponent, flow } of expectedFlows_m3_h)
          expect(flow).toBeCloseTo(192 * (dp / 50) ** exponent, 9)
    expect(rules(withPlan({ forecast: {} }))).toContain('assumed-densities')
  })
})

describe('pressures to set', () => {
  it('run from 60 Pa down to 12 Pa in steps of at most 10 Pa, seven readings', () => {
    for (const { readings } of plan.runs) {
      const set = readings.map(({ pressureDifference_Pa }) => pressureDifference_Pa)
      expect(set).toHaveLength(7)
      expect(set[0]).toBe(60)
      expect(set.at(-1)).toBeCloseTo(12, 9)
      for (const [i, pressure] of set.slice(1).entries())
        expect((set[i] as number) - pressure).toBeLessThan(10)
    }
  })

  it('are read on the gauge with the zero-flow pressure in them: −60 − 1.2 Pa and 60 − 1.2 Pa', () => {
    expect(plan.runs.map(({ readings }) => readings[0]?.gaugePressure_Pa)).toStrictEqual([-61.2, 58.8])
  })

  it('start at five times the zero-flow pressure where that is more than 10 Pa: 4 Pa gives 20 Pa', () => {
    expect(makePlan(withPlan({ zeroFlowPressure_Pa: 4 })).lowestPressure_Pa).toBe(20)
  })

  it('are not proposed at all where the zero-flow pressure is beyond 5 Pa', () => {
    const windy = makePlan(withPlan({ zeroFlowPressure_Pa: -6.5 }))
    expect(windy.runs).toStrictEqual([])
    expect(windy.findings[0]).toMatchObject({ rule: 'zero-flow-limit', severity: 'invalidates', limit: 5 })
  })
})

describe('devices', () => {
  it('the small fan reaches with its two ranges, and is chosen', () => {
    expect(plan.chosenDevice).toBe('small fan')
    expect(plan.devices.map(({ name, reaches }) => [name, reaches])).toStrictEqual([
      ['small fan', true],
      ['large fan', false],
    ])
  })

  it('a device that covers nothing is said to, without a list of all pressures', () => {
    const [small = [], large = []] = plan.devices.map(({ inWords }) => inWords)
    expect(small).toContain('Its ranges together cover every planned pressure.')
    expect(large).toContain('It covers none of the planned pressures if the building just meets the target.')
  })

  it('the large fan starts at 230 · 25^0.5 = 1150 m³/h: the plan says that this house needs a smaller one', () => {
    const [direction] = plan.devices[1]?.directions ?? []
    const [range] = direction?.ranges ?? []
    expect(range?.lowestFlow_m3_h).toBeCloseTo(1150 * Math.sqrt(1.2041 / density(20)), 9)
    expect(plan.devices[1]?.inWords[0]).toContain('Use a smaller device.')
  })

  it('smallest n50 that a range proves: 15 m³/h at 12 Pa with exponent 0.75, by the arithmetic of this test', () => {
    const [leaks, device] = [density(4), density(20)]
    const atReference = ((15 * device) / leaks) * (leaks / 1.2041) ** (1 - 0.75)
    const [direction] = plan.devices[0]?.directions ?? []
    expect(direction?.ranges[0]?.smallestN50_1_h).toBeCloseTo((atReference * (50 / 12) ** 0.75) / 320, 9)
  })

  it('equipment whose calibration lapses before the day is named', () => {
    const lapsing = plan.findings.filter(({ rule }) => rule === 'calibration-lapses')
    expect(lapsing.map(({ message }) => message)).toStrictEqual([
      'Calibration of "large fan" expires on 1 November 2026, before the test on 30 November 2026.',
    ])
  })

  it('a range without limits is left out, and the finding names it', () => {
    const devices = [{ name: 'unknown fan', ranges: [{ label: 'A', minimumFlow_m3_h: 10 }] }]
    const found = makePlan(withPlan({ devices })).findings.find(
      ({ rule }) => rule === 'range-limits-not-stated',
    )
    expect(found?.where).toStrictEqual(['plan.devices[0].ranges[0]'])
  })
})

describe('stack pressure', () => {
  it('of dry air is Δp = 0.0342 · p · h · (1/T_e − 1/T_i) (read: published article on stack effect, SI form) to the digits of 0.0342', () => {
    const published = 0.0342 * 100_000 * 5.4 * (1 / 277.15 - 1 / 293.15)
    expect(Math.abs(dryStack(100_000, 5.4, 20, 4) / published - 1)).toBeLessThan(0.00005 / 0.0342)
  })

  it('is g·h·Δρ of the ideal gas law, by the arithmetic of this test', () => {
    expect(plan.stackPressure_Pa).toBeCloseTo(9.80665 * 5.4 * (density(4) - density(20)), 9)
  })

  it('of dry air, 20 K over 10 m, is 8.6 Pa as printed in BS 5925:1991 (value from memory; 0 and 20 °C)', () => {
    expect(Math.abs(dryStack(101_325, 10, 20, 0) - 8.6)).toBeLessThan(0.1)
  })

  it.each([
    ['wind', { windSpeed_m_s: 4, windAt: 'ground' }],
    ['wind', { windSpeed_m_s: 7, windAt: 'meteorological' }],
    ['wind', { beaufort: 4 }],
    ['temperature-height', { indoorTemperature_C: 20, outdoorTemperature_C: -30 }],
  ] as const)('%s outside the limits of the method is a caution: %j', (rule, forecast) => {
    const found = makePlan(withPlan({ forecast })).findings
    expect(found.filter((finding) => finding.rule === rule && finding.severity === 'caution')).toHaveLength(1)
  })

  it('a tower in frost is warned of its stack pressure', () => {
    const tower: PlanRequest = {
      ...withPlan({ forecast: { indoorTemperature_C: 20, outdoorTemperature_C: -5 } }),
      building: { name: 'tower', volume_m3: 3000, height_m: 24, altitude_m: 0 },
    }
    expect(rules(tower)).toContain('stack-pressure')
  })
})

describe('methods that repeat their readings at stations', () => {
  const twoPoint = (zeroFlowPressure_Pa: number) =>
    makePlan({ ...withPlan({ zeroFlowPressure_Pa }), method: 'astm-e1827-22-two-point' })

  it('ASTM E1827 two-point plans 50 and 12.5 Pa, five readings each (value from memory)', () => {
    const { runs, repeats } = twoPoint(-1.2)
    expect(repeats).toBe(5)
    for (const { readings } of runs)
      expect(readings.map(({ pressureDifference_Pa }) => pressureDifference_Pa)).toStrictEqual([50, 12.5])
  })

  it('a zero-flow pressure of 3 Pa rules out the station at 12.5 Pa, as five times it is 15 Pa', () => {
    const { runs, findings } = twoPoint(3)
    expect(runs[0]?.readings.map(({ pressureDifference_Pa }) => pressureDifference_Pa)).toStrictEqual([50])
    expect(findings.find(({ rule }) => rule === 'lowest-pressure')).toMatchObject({ value: 12.5, limit: 15 })
  })
})
