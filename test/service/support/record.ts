import type { TestRecord } from '@draughtbook/shared-calc'

const ZERO_FLOW = [-1.1, -0.9, -1.0, -1.2, -0.8, -1.0, -1.0, -1.1, -0.9, -1.0]

/** An invented test of an invented house: q = 5 · Δp^0.68 with a little scatter, in both directions. */
export function demoRecord(): TestRecord {
  return {
    format: 'draughtbook/record@1',
    building: {
      name: 'Plot 7',
      volume_m3: 212.4,
      volumeBasis: 'net',
      envelopeArea_m2: 238.1,
      floorArea_m2: 84.9,
      height_m: 5.4,
      altitude_m: 120,
    },
    test: {
      date: '2026-10-14',
      method: 'iso-9972:2015',
      tester: 'An invented tester',
      stage: 'fabric',
      preparation: 'method 1',
    },
    conditions: {
      indoorTemperature_C: 19.2,
      outdoorTemperature_C: 6.8,
      barometricPressure_Pa: 100_650,
      windSpeed_m_s: 2.1,
      windAt: 'ground',
    },
    runs: (['depressurisation', 'pressurisation'] as const).map((direction) => ({
      direction,
      averagingTime_s: 20,
      zeroFlowBefore_Pa: [...ZERO_FLOW],
      zeroFlowAfter_Pa: [...ZERO_FLOW],
      readings: [70, 64, 58, 52, 46, 40, 34, 28, 22, 16].map((pressure, i) => ({
        pressure_Pa: (direction === 'depressurisation' ? -pressure : pressure) - 1,
        flow_m3_h: Math.round(500 * pressure ** 0.68 * (1 + 0.003 * Math.sin(i))) / 100,
      })),
    })),
    target: { preset: 'passive-house-new' },
  }
}
