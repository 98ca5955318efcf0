import { evaluate, methodById, methods, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { powerLaw, recordBy, usual_Pa } from './record-by'

const record = (method: string, change: (record: TestRecord) => void = () => undefined): TestRecord => {
  const one = recordBy(method, powerLaw(100, 0.65, usual_Pa))
  one.format = 'draughtbook/record@3'
  change(one)
  return one
}
const findingsOf = (method: string, change?: (record: TestRecord) => void) =>
  evaluate(record(method, change)).findings
const found = (method: string, rule: string, change?: (record: TestRecord) => void) =>
  findingsOf(method, change)
    .filter((one) => one.rule === rule)
    .map(({ severity, limit }) => [severity, limit])

const oneDirection = (r: TestRecord) => {
  r.runs = r.runs.slice(0, 1)
}
const windy = (speed: number) => (r: TestRecord) => {
  r.conditions.windSpeed_m_s = speed
}
const tall = (r: TestRecord) => {
  r.building.height_m = 12
  r.conditions.outdoorTemperature_C = -5
}

// Check of public texts, section 1: ±2 Pa, ±1 K, ±7 % read in a university's teaching text; no limit on r² and 500 m·K
// from memory.
describe('EN 13829 is not ISO 9972 renamed', () => {
  const accuracy = (gauge: number, thermometer: number) => (r: TestRecord) => {
    r.pressureGauge = { accuracy_Pa: gauge }
    r.thermometer = { accuracy_K: thermometer }
    r.flowDevice = { accuracy_relative: 0.07 }
  }

  it.each([
    ['en-13829:2001', 2, 1, []],
    ['en-13829:2001', 2.1, 1.1, [2, 1]],
    ['iso-9972:2015', 1, 0.5, []],
    ['iso-9972:2015', 2, 1, [1, 0.5]],
  ])('%s: gauge ±%d Pa, thermometer ±%d K', (method, gauge, thermometer, limits) => {
    expect(found(method, 'instrument-accuracy', accuracy(gauge, thermometer))).toEqual(
      limits.map((limit) => ['caution', limit]),
    )
  })

  it('has no limit on r², and one of 500 m·K', () => {
    expect(methodById('en-13829:2001').limits.rSquared).toBeUndefined()
    expect(found('en-13829:2001', 'temperature-height', tall)).toEqual([])
    expect(found('iso-9972:2015', 'temperature-height', tall)).toEqual([['caution', 250]])
  })
})

// ASTM E779-03, 8.4 and 8.5, and E3158-18 scope, as public texts print them.
describe('methods of ASTM', () => {
  it('E779 prefers wind up to 2 m/s and 5 to 35 °C, from 10 to 60 Pa', () => {
    expect(found('astm-e779-19', 'wind', windy(2))).toEqual([])
    expect(found('astm-e779-19', 'wind', windy(2.1))).toEqual([['caution', 2]])
    const cold = (r: TestRecord) => {
      r.conditions.outdoorTemperature_C = 4
    }
    expect(found('astm-e779-19', 'outdoor-temperature', cold)).toEqual([['note', 5]])
    const high = (r: TestRecord) => {
      for (const run of r.runs)
        run.readings[0] = {
          pressure_Pa: Math.sign(run.readings[0]?.pressure_Pa ?? 1) * 63,
          flow_m3_h: 100 * 63 ** 0.65,
        }
    }
    expect(found('astm-e779-19', 'top-pressure', high)).toEqual([
      ['caution', 60],
      ['caution', 60],
    ])
    expect(found('iso-9972:2015', 'top-pressure', high)).toEqual([])
  })

  it('E779 gives the limits of the leakage area of each direction: those of the leakage rate, in per cent', () => {
    const shifted = record('astm-e779-19', (r) => {
      for (const run of r.runs)
        for (const [i, reading] of run.readings.entries())
          reading.flow_m3_h = (reading.flow_m3_h ?? 0) * (1 + 0.01 * (-1) ** i)
    })
    const { official = [], runs } = evaluate(shifted)
    const [run] = runs
    const [low, high] = run?.q4.ci95 ?? []
    const limit = (end: string) =>
      official.find(
        ({ term, direction }) => term.startsWith(`${end} 95 % limit`) && direction === run?.direction,
      )?.value ?? 0
    expect(limit('lower') / (run?.ela4.value ?? 0)).toBeCloseTo((low ?? 0) / (run?.q4.value ?? 0), 9)
    expect(limit('upper') / (run?.ela4.value ?? 0)).toBeCloseTo((high ?? 0) / (run?.q4.value ?? 0), 9)
  })

  it.each(['astm-e3158-18', 'astm-e3158-24'])(
    '%s: one direction is enough, and height times temperature is not limited',
    (method) => {
      const rules = findingsOf(method, (r) => {
        oneDirection(r)
        tall(r)
      }).map(({ rule }) => rule)
      expect(rules).not.toContain('both-directions')
      expect(rules).not.toContain('temperature-height')
    },
  )
})

describe('CAN/CGSB-149.10', () => {
  it('reports normalised leakage area and the error of the leakage area at 10 Pa', () => {
    const { official = [], results } = evaluate(record('can-cgsb-149.10-2019', oneDirection))
    const value = (term: string) => official.find((one) => one.term === term)?.value ?? Number.NaN
    expect(value('normalised leakage area at 10 Pa')).toBeCloseTo(results.ela10.value / 400, 9)
    expect(value('relative standard error of the leakage area at 10 Pa')).toBeLessThan(1e-9)
  })
})

describe('a limit taken over from another standard', () => {
  it('cites where it is from, and what it finds is a note', () => {
    const short = (r: TestRecord) => {
      for (const run of r.runs) run.zeroFlowBefore_Pa = Array.from({ length: 10 }, () => 6)
    }
    expect(found('iso-9972:2015', 'zero-flow-limit', short)).toEqual([['invalidates', 5]])
    const [taken] = findingsOf('astm-e779-19', short).filter(({ rule }) => rule === 'zero-flow-limit')
    expect(taken).toMatchObject({ severity: 'note', limit: 5 })
    expect(taken?.clause).toMatch(/^ISO 9972:2015, 5\.3\.3 \(used because/)
  })

  it('is marked in every method but the one it is from', () => {
    for (const { id, limits } of methods)
      for (const limit of Object.values(limits)) {
        const { source } = (typeof limit === 'object' ? limit : {}) as {
          source?: { text: string; takenOver?: boolean }
        }
        if (source?.text.startsWith('ISO 9972') && id !== 'iso-9972:2015' && !id.startsWith('en-'))
          expect(source.takenOver, `${id}: ${source.text}`).toBe(true)
      }
  })
})

describe('ANSI/RESNET/ICC 380 (thresholds and factor from memory)', () => {
  const single = (
    indoor: number,
    outdoor: number,
    altitude_m: number,
    change: (r: TestRecord) => void = () => undefined,
  ) => {
    const one = recordBy('ansi-resnet-icc-380', [{ pressure_Pa: 50, flow_m3_h: 1000 }], {
      building: { name: 'invented house', volume_m3: 500, volumeBasis: 'net', altitude_m },
    })
    one.conditions.indoorTemperature_C = indoor
    one.conditions.outdoorTemperature_C = outdoor
    oneDirection(one)
    change(one)
    return evaluate(one)
  }

  it.each([
    ['at 5 000 ft and 30 °F difference: no factor', 20, 20 - 30 / 1.8, 1524, 1],
    ['above 30 °F', 20, 3, 0, Math.sqrt(276.15 / 293.15)],
    ['above 5 000 ft', 20, 20, 1525, 1 + (6e-6 * 1525) / 0.3048],
  ])('%s', (_, indoor, outdoor, altitude, factor) => {
    expect(single(indoor, outdoor, altitude).results.q50.value / 1000).toBeCloseTo(factor, 9)
  })

  it('compares the extended result with the limit', () => {
    const judged = (limit: number) =>
      single(20, 20, 0, (r) => {
        r.target = { quantity: 'q50', limit, directions: 'any' }
      }).verdict
    expect(judged(1100)).toMatchObject({ outcome: 'meets', margin: 0 })
    expect(judged(1100)?.value).toBeCloseTo(1100, 9)
    expect(judged(1099).outcome).toBe('misses')
  })
})

// DIN EN ISO 9972:2018-12, annex NA, as restated on a trade page: inside pressures within 10 %.
describe('evenness of the inside pressure', () => {
  const even = (top: number) => (r: TestRecord) => {
    for (const run of r.runs.slice(0, 1))
      run.evenness = [
        {
          testPressure_Pa: -50,
          places: [
            { place: 'ground floor', pressure_Pa: -50 },
            { place: 'top floor', pressure_Pa: -top },
          ],
        },
      ]
  }
  it.each([
    [45, []],
    [44.9, [['caution', 0.1]]],
  ])('50 Pa below and %d Pa above', (top, expected) => {
    expect(found('iso-9972:2015', 'inside-pressure', even(top))).toEqual(expected)
  })

  it('is missed in a large building', () => {
    const large = (r: TestRecord) => {
      r.building.largeBuilding = 'sports hall'
    }
    expect(found('iso-9972:2015', 'inside-pressure', large)).toEqual([['note', undefined]])
  })
})
