import type { TestRecord } from '@draughtbook/shared-calc'

/** Even numbers in 0…1 from a seed: a linear congruence (Numerical Recipes), apart from the project's own generator. */
export function congruence(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return (state + 0.5) / 4_294_967_296
  }
}

/** An invented test of an invented house, different with every seed, in weather calm enough for small errors. */
export function randomRecord(seed: number, method = 'iso-9972:2015'): TestRecord {
  const uniform = congruence(seed * 7919 + 13)
  const between = (low: number, high: number) => low + (high - low) * uniform()
  const exponent = between(0.55, 0.75)
  const coefficient = between(5, 200)
  const withDevice = uniform() < 0.4
  const scatter = between(0, 0.02)
  const run = (direction: 'depressurisation' | 'pressurisation') => {
    const side = direction === 'depressurisation' ? -1 : 1
    const zero = between(-2, 2)
    const count = Math.round(between(5, 12))
    const readings = Array.from({ length: count }, (_, i) => {
      const pressure = 65 - ((65 - 14) * i) / (count - 1) + between(-1, 1)
      const flow = coefficient * pressure ** exponent * (1 + scatter * between(-1.7, 1.7))
      const measured = { pressure_Pa: side * pressure + zero }
      return withDevice
        ? { ...measured, devicePressure_Pa: (flow / (2 * coefficient)) ** 2, range: 'one' }
        : { ...measured, flow_m3_h: flow }
    })
    const period = () => Array.from({ length: 10 }, () => zero + between(-0.4, 0.4))
    return {
      direction,
      averagingTime_s: 20,
      zeroFlowBefore_Pa: period(),
      zeroFlowAfter_Pa: period(),
      readings,
    }
  }
  const both = uniform() < 0.7
  return {
    format: 'draughtbook/record@2',
    building: {
      name: `invented house ${seed}`,
      volume_m3: between(100, 2000),
      volumeBasis: 'net',
      envelopeArea_m2: between(100, 1200),
      floorArea_m2: between(40, 700),
      height_m: 6,
      altitude_m: between(0, 1500),
    },
    test: { date: '2026-10-14', method },
    conditions: {
      indoorTemperature_C: between(15, 24),
      outdoorTemperature_C: between(-10, 30),
      ...(uniform() < 0.5 && { barometricPressure_Pa: between(90_000, 103_000) }),
      indoorRelativeHumidity: between(0.3, 0.6),
      outdoorRelativeHumidity: between(0.3, 0.9),
      windSpeed_m_s: between(0, 2.5),
      windAt: 'ground',
    },
    flowDevice: {
      serial: 'invented',
      referenceDensity_kg_m3: 1.2041,
      ranges: [{ label: 'one', coefficient: 2 * coefficient, exponent: 0.5 }],
    },
    runs: both ? [run('depressurisation'), run('pressurisation')] : [run('depressurisation')],
    target: { quantity: 'n50', limit: Math.round(between(30, 500)) / 100, directions: both ? 'mean' : 'any' },
    uncertainty: {
      flowCalibration_relative: between(0.005, 0.03),
      pressureReading_Pa: between(0.05, 0.2),
      flowReading_relative: between(0.002, 0.02),
      volume_relative: between(0.005, 0.04),
      ...(uniform() < 0.5 && { barometricPressure_Pa: 200 }),
    },
  }
}
