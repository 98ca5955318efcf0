import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'

interface Reading {
  readonly pressure_Pa: number
  readonly flow_m3_h: number
}

/** An invented test at 20 °C inside and out and standard pressure: densities cancel, and the air is the reference air. */
export function recordBy(
  method: string,
  readings: readonly Reading[],
  change: { readonly [part: string]: unknown } = {},
): TestRecord {
  const zero = Array.from({ length: 10 }, () => 0)
  const run = (direction: 'depressurisation' | 'pressurisation') => ({
    direction,
    averagingTime_s: 20,
    zeroFlowBefore_Pa: zero,
    zeroFlowAfter_Pa: zero,
    readings: readings.map((reading) => ({
      ...reading,
      pressure_Pa: Math.abs(reading.pressure_Pa) * (direction === 'depressurisation' ? -1 : 1),
    })),
  })
  return parseRecord({
    format: 'draughtbook/record@2',
    building: {
      name: 'invented house',
      volume_m3: 500,
      volumeBasis: 'net',
      envelopeArea_m2: 400,
      height_m: 5,
    },
    test: { date: '2026-10-14', method },
    conditions: {
      indoorTemperature_C: 20,
      outdoorTemperature_C: 20,
      barometricPressure_Pa: 101_325,
      indoorRelativeHumidity: 0,
      outdoorRelativeHumidity: 0,
      windSpeed_m_s: 1,
      windAt: 'ground',
    },
    runs: [run('depressurisation'), run('pressurisation')],
    ...change,
  })
}

/** Readings on a power law. */
export const powerLaw = (coefficient: number, exponent: number, pressures: readonly number[]): Reading[] =>
  pressures.map((pressure_Pa) => ({ pressure_Pa, flow_m3_h: coefficient * pressure_Pa ** exponent }))

export const usual_Pa = [60, 55, 50, 45, 40, 35, 30, 25, 20, 15] as const
