import { evaluate, methods } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { faultlessRecord, recordWith } from '../support/records'

describe('a faultless test', () => {
  it('has no findings and meets its target', () => {
    const { findings, verdict } = evaluate(faultlessRecord())
    expect(findings).toEqual([])
    expect(verdict).toMatchObject({ outcome: 'meets', leakageToSeal_cm2: 0 })
  })

  it('has none by EN 13829 either', () => {
    const record = recordWith((r) => {
      r.test.method = 'en-13829:2001'
    })
    expect(evaluate(record)).toMatchObject({ method: 'en-13829:2001', findings: [] })
  })
})

// Calculation reference, section 2, and the check of public texts, section 1: read where a public text restates the limit.
describe('limits of ISO 9972:2015', () => {
  const limits = methods.find(({ id }) => id === 'iso-9972:2015')?.limits

  it.each([
    ['readingsPerDirection', 5, '5.3.4', 'read'],
    ['highestPressure_Pa', 50, '5.3.4', 'read'],
    ['highestPressureLargeBuilding_Pa', 25, '5.3.4', 'memory'],
    ['lowestPressure_Pa', 10, '5.3.4', 'read'],
    ['zeroFlowMultiple', 5, '5.3.4', 'read'],
    ['readingSpacing_Pa', 10, '5.3.4', 'memory'],
    ['zeroFlow_Pa', 5, '5.3.3', 'read'],
    ['zeroFlowSamples', 10, '5.3.3', 'memory'],
    ['rSquared', 0.98, '6.2', 'memory'],
    ['heightTemperature_mK', 250, '5.1.4', 'memory'],
    ['windGround_m_s', 3, '5.1.4', 'memory'],
    ['windMeteorological_m_s', 6, '5.1.4', 'read'],
    ['beaufort', 3, '5.1.4', 'read'],
    ['pressureCeiling_Pa', 100, 'no source', 'common practice'],
    ['averagingTime_s', 20, 'no source', 'common practice'],
    ['directionsDiffer', 0.15, 'no source', 'common practice'],
  ] as const)('%s is %d (%s, %s)', (name, value, clause, seen) => {
    const limit = limits?.[name]
    expect(limit).toMatchObject({ value, source: { seen } })
    expect(limit?.source.text).toContain(clause)
  })

  it('the exponent lies from 0.5 to 1 (6.2, read as restated)', () => {
    expect(limits?.exponent).toMatchObject({ lowest: 0.5, highest: 1, source: { seen: 'read' } })
  })
})
