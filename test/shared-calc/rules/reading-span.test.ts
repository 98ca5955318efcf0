import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { NO_ZERO_FLOW, powerLaw, recordWith } from '../support/records'

const TO_4_Pa = { quantity: 'q_pr', referencePressure_Pa: 4, limit: 1e6 } as const
const TO_50_Pa = { quantity: 'q50', limit: 1e6 } as const

/** One run at these pressures on a power law, each flow off by its share of `scatter`, against a generous target. */
function tested(
  pressures: readonly number[],
  target: NonNullable<TestRecord['target']>,
  scatter: readonly number[] = [0],
) {
  const { verdict, findings } = evaluate(
    recordWith((record) => {
      const readings = powerLaw(pressures, 20, 0.65).map(({ pressure_Pa, flow_m3_h }, i) => ({
        pressure_Pa,
        flow_m3_h: flow_m3_h * (1 + (scatter[i % scatter.length] ?? 0)),
      }))
      record.runs = (['depressurisation', 'pressurisation'] as const).map((direction) => ({
        direction,
        averagingTime_s: 20,
        zeroFlowBefore_Pa: [...NO_ZERO_FLOW],
        zeroFlowAfter_Pa: [...NO_ZERO_FLOW],
        readings: readings.map((one) => ({
          ...one,
          pressure_Pa: direction === 'pressurisation' ? one.pressure_Pa : -one.pressure_Pa,
        })),
      }))
      record.target = target
      // It judges no correlation, which would make a rough test invalid by itself.
      record.test.method = 'en-13829:2001'
    }),
  )
  const span = findings.filter(({ rule }) => rule === 'reading-span')
  return { outcome: verdict.outcome, severities: [...new Set(span.map(({ severity }) => severity))] }
}

const close = [50, 52, 54, 56, 58, 60]
const usual = [12, 20, 30, 40, 50, 60]
const rough = [0.06, -0.07, 0.05, -0.06, 0.07, -0.05]

// Common practice, no source: how far a figure may lie from the readings it is drawn from.
describe('readings too close together', () => {
  it.each<[string, readonly number[], typeof TO_4_Pa | typeof TO_50_Pa, readonly number[], string, string[]]>(
    [
      ['six between 50 and 60 Pa, exact, for 4 Pa', close, TO_4_Pa, [0], 'not valid', ['invalidates']],
      ['six between 50 and 60 Pa, exact, for 50 Pa', close, TO_50_Pa, [0], 'meets', ['caution']],
      [
        'six between 50 and 60 Pa, rough, for 50 Pa',
        close,
        TO_50_Pa,
        [0.01, -0.01, 0.008],
        'not valid',
        ['invalidates'],
      ],
      [
        'five within 0.004 Pa, for 50 Pa',
        [50, 50.001, 50.002, 50.003, 50.004],
        TO_50_Pa,
        [0],
        'not valid',
        ['invalidates'],
      ],
      [
        'five within 0.004 Pa, for 4 Pa',
        [50, 50.001, 50.002, 50.003, 50.004],
        TO_4_Pa,
        [0],
        'not valid',
        ['invalidates'],
      ],
      ['12 to 60 Pa for 4 Pa', usual, TO_4_Pa, [0], 'meets', []],
      ['12 to 60 Pa for 50 Pa', usual, TO_50_Pa, [0], 'meets', []],
      ['12 to 60 Pa, rough, for 50 Pa', usual, TO_50_Pa, rough, 'meets', ['caution']],
      ['12 to 60 Pa, rough, for 4 Pa', usual, TO_4_Pa, rough, 'not valid', ['invalidates']],
    ],
  )('%s', (_, pressures, target, scatter, outcome, severities) => {
    expect(tested(pressures, target, scatter)).toEqual({ outcome, severities })
  })
})
