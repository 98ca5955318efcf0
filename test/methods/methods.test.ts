import { readdirSync, readFileSync } from 'node:fs'
import { evaluate, evaluateInput, InputError, methods, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import constructed from '../references/constructed-readings.json'
import contam from '../references/contam-leakage-area.json'
import { powerLaw, recordBy, usual_Pa } from './record-by'

const rulesOf = (record: TestRecord, severity: string) =>
  evaluate(record)
    .findings.filter((finding) => finding.severity === severity)
    .map(({ rule }) => rule)

const officialOf = (record: TestRecord, term: RegExp) =>
  evaluate(record).official?.find((figure) => term.test(figure.term))

/** Dynamic viscosity of air by Sutherland's formula as Roulet 2008, eq. 4.17, prints it; T in K. */
const viscosity = (T: number) => (1.458e-6 * T ** 1.5) / (T + 110.4)

const dryDensity = (celsius: number, pascal = 101_325) => pascal / (287.055 * (celsius + 273.15))

describe('ASTM E779', () => {
  const warm = {
    indoorTemperature_C: 24,
    outdoorTemperature_C: -4,
    barometricPressure_Pa: 101_325,
    indoorRelativeHumidity: 0,
    outdoorRelativeHumidity: 0,
  }

  it('corrects the coefficient for density and viscosity of the air in the leaks: C0 = C·(μ/μ0)^(2n−1)·(ρ/ρ0)^(1−n)', () => {
    const record = recordBy('astm-e779-19', powerLaw(80, 0.62, usual_Pa), { conditions: warm })
    for (const run of evaluate(record).runs) {
      const leaks_C = run.direction === 'depressurisation' ? -4 : 24
      const n = run.airFlowExponent.value
      const factor =
        (viscosity(leaks_C + 273.15) / viscosity(293.15)) ** (2 * n - 1) *
        (dryDensity(leaks_C) / 1.2041) ** (1 - n)
      expect(run.airLeakageCoefficient.value / run.airFlowCoefficient.value).toBeCloseTo(factor, 12)
    }
  })

  it('gives the leakage area at 4 Pa of the NIST flow table with 100 cm² at 10 Pa, C_d 0.6, n 0.65, within half a percent', () => {
    const readings = contam.dp_Pa.map((pressure_Pa, i) => ({
      pressure_Pa,
      flow_m3_h: (Number(contam.massFlow_kg_s[i]) / 1.2041) * 3600,
    }))
    const { results } = evaluate(recordBy('astm-e779-19', readings))
    // By definition an area of discharge coefficient 1 carries the flow of the same pressure: A4 = 0.6·100·(4/10)^0.15.
    expect(results.ela10.value / 60).toBeCloseTo(1, 2)
    expect(results.ela4.value / (60 * 0.4 ** 0.15)).toBeCloseTo(1, 2)
  })

  it('reports the area in square inches beside square centimetres (1 in = 2.54 cm, NIST SP 811)', () => {
    const area = officialOf(recordBy('astm-e779-19', powerLaw(80, 0.62, usual_Pa)), /leakage area/)
    expect((area?.value ?? 0) / (area?.customary?.value ?? 1)).toBeCloseTo(6.4516, 10)
  })

  it('is not valid with one direction, nor above 200 m·K', () => {
    const record = recordBy('astm-e779-19', powerLaw(80, 0.62, usual_Pa))
    expect(rulesOf({ ...record, runs: record.runs.slice(0, 1) }, 'invalidates')).toContain('both-directions')
    expect(rulesOf(record, 'invalidates')).toEqual([])
    const tall = {
      ...record,
      building: { ...record.building, height_m: 9 },
      conditions: { ...record.conditions, outdoorTemperature_C: -5 },
    }
    expect(rulesOf(tall, 'invalidates')).toContain('temperature-height')
  })
})

describe('ASTM E1827', () => {
  // Roulet 2008, eq. 4.6: n = ln(q1/q2)/ln(p1/p2); the figures by that formula.
  const stations = [
    ...Array.from({ length: 5 }, () => ({ pressure_Pa: 50, flow_m3_h: 2250 })),
    ...Array.from({ length: 5 }, () => ({ pressure_Pa: 12.5, flow_m3_h: 900 })),
  ]

  it('finds the exponent and coefficient of two stations by Roulet 2008, eq. 4.6', () => {
    const [run] = evaluate(recordBy('astm-e1827-22-two-point', stations)).runs
    expect(run?.airFlowExponent.value).toBeCloseTo(0.660964047443681, 12)
    expect(run?.airFlowCoefficient.value).toBeCloseTo(169.521359874186, 9)
    expect(run?.rSquared).toBeUndefined()
    expect(run?.airFlowExponent.ci95).toBeUndefined()
  })

  it('needs five readings at each station, near its pressure', () => {
    const few = recordBy('astm-e1827-22-two-point', stations.slice(0, 9))
    expect(rulesOf(few, 'invalidates')).toContain('station-repeats')
    const off = recordBy('astm-e1827-22-two-point', [...stations, { pressure_Pa: 30, flow_m3_h: 1600 }])
    expect(rulesOf(off, 'caution')).toContain('station-pressure')
    expect(rulesOf(recordBy('astm-e1827-22-two-point', stations), 'invalidates')).toEqual([])
  })

  it('carries one point to other pressures with an exponent of 0.65, and says so', () => {
    const record = recordBy('astm-e1827-22-one-point', stations.slice(0, 5))
    const { results, findings } = evaluate(record)
    // Dry air at 20 °C and 101 325 Pa has 1.20409 kg/m³ against the reference of 1.2041: 2 parts in a million.
    expect(results.q50.value / 2250).toBeCloseTo(1, 5)
    expect(results.q4.value / results.q50.value).toBeCloseTo((4 / 50) ** 0.65, 12)
    expect(findings.map(({ rule }) => rule)).toContain('assumed-exponent')
  })

  it('gives leakage areas in the ratio of ASHRAE Fundamentals ch. 16 for n = 0.65: 1.8778 with C_d 0.611 at 10 Pa', () => {
    const { results } = evaluate(recordBy('astm-e1827-22-one-point', stations.slice(0, 5)))
    expect(results.ela10.value / 0.611 / results.ela4.value).toBeCloseTo(1.87780197309818, 12)
    // ASHRAE's A = 10 000·Q·√(ρ/2Δp) with Q in m³/s; the density here is 1.2041 kg/m³.
    expect(results.ela4.value).toBeCloseTo((results.q4.value / 3600) * Math.sqrt(1.2041 / 8) * 1e4, 9)
  })
})

describe('CAN/CGSB-149.10', () => {
  const readings = constructed.dp_Pa.map((pressure, i) => ({
    pressure_Pa: Math.abs(pressure),
    flow_m3_h: constructed.q_m3_h[i] ?? Number.NaN,
  }))

  it('fits weighted by flow squared and gives the equivalent leakage area at 10 Pa as R 4.2.2 does', () => {
    const [run] = evaluate(recordBy('can-cgsb-149.10-2019', readings)).runs
    // R: lm(log(q) ~ log(dp), weights = q^2); areas by the orifice law with C_d 0.611 at 1.2041 kg/m³.
    expect(run?.airFlowExponent.value).toBeCloseTo(0.648960851167857, 10)
    expect(run?.airFlowCoefficient.value).toBeCloseTo(106.901946862703, 7)
    expect(run?.q50.ci95?.[0]).toBeCloseTo(1350.74523289595, 1)
    expect((run?.ela10.value ?? 0) / 531.396922617269).toBeCloseTo(1, 4)
  })

  it('is not valid when r falls below 0.990 or the area is found worse than 7 %', () => {
    const rough = readings.map((reading, i) => ({
      ...reading,
      flow_m3_h: reading.flow_m3_h * (i % 2 ? 1.12 : 0.88),
    }))
    const rules = rulesOf(recordBy('can-cgsb-149.10-2019', rough), 'invalidates')
    expect(rules).toContain('correlation')
    expect(rules).toContain('leakage-area-error')
  })
})

describe('ANSI/RESNET/ICC 380', () => {
  const one = [{ pressure_Pa: 48, flow_m3_h: 1000 }]

  it('takes a single reading, corrects for temperature, altitude and pressure, and extends by 1.1 (factors from memory)', () => {
    const record = recordBy('ansi-resnet-icc-380', one, {
      building: { name: 'invented house', volume_m3: 500, altitude_m: 1500 },
      conditions: { indoorTemperature_C: 21, outdoorTemperature_C: -10 },
    })
    const depressurising = { ...record, runs: record.runs.slice(0, 1) }
    const feet = 1500 / 0.3048
    const corrected =
      1000 * Math.sqrt((273.15 - 10) / (273.15 + 21)) * (1 + 0.000006 * feet) * (50 / 48) ** 0.65
    expect(evaluate(depressurising).results.q50.value).toBeCloseTo(corrected, 8)
    const extended = officialOf(depressurising, /^extended air leakage rate/)
    expect(extended?.value).toBeCloseTo(1.1 * corrected, 8)
    // 1 cfm is 0.3048³ m³ a minute.
    expect(extended?.customary?.value).toBeCloseTo((1.1 * corrected) / (0.3048 ** 3 * 60), 8)
  })

  it('takes sea level with a caution where the altitude was not logged', () => {
    const rules = rulesOf(
      recordBy('ansi-resnet-icc-380', one, { building: { name: 'h', volume_m3: 500 } }),
      'caution',
    )
    expect(rules).toContain('assumed-altitude')
  })
})

describe('ASTM E3158', () => {
  const pressures = [78, 72, 66, 60, 54, 48, 42, 36, 30, 26]

  it('adds the flows of devices running together and reports 75 Pa', () => {
    const single = recordBy('astm-e3158-18', powerLaw(2000, 0.6, pressures))
    const several = {
      ...single,
      runs: single.runs.map((run) => ({
        ...run,
        readings: run.readings.map(({ pressure_Pa, flow_m3_h = 0 }) => ({
          pressure_Pa,
          devices: [
            { flow_m3_h: 0.5 * flow_m3_h },
            { flow_m3_h: 0.3 * flow_m3_h },
            { flow_m3_h: 0.2 * flow_m3_h },
          ],
        })),
      })),
    }
    expect(evaluateInput(several).results.q50.value).toBeCloseTo(evaluate(single).results.q50.value, 6)
    const rate = officialOf(several as TestRecord, /75 Pa per envelope/)
    expect(rate?.value).toBeCloseTo((2000 * 75 ** 0.6) / 400, 2)
    expect(rate?.customary?.value).toBeCloseTo((2000 * 75 ** 0.6) / 400 / (0.3048 * 60), 3)
  })

  it('takes device pressures of several devices, each by its own range', () => {
    const record = recordBy('astm-e3158-18', powerLaw(2000, 0.6, pressures), {
      flowDevice: {
        referenceDensity_kg_m3: 1.2041,
        ranges: [
          { label: 'a', coefficient: 900, exponent: 0.5 },
          { label: 'b', coefficient: 500, exponent: 0.5 },
        ],
      },
    })
    const byPressure = {
      ...record,
      runs: record.runs.map((run) => ({
        ...run,
        readings: run.readings.map(({ pressure_Pa, flow_m3_h = 0 }) => ({
          pressure_Pa,
          devices: [
            { devicePressure_Pa: ((0.6 * flow_m3_h) / 900) ** 2, range: 'a' },
            { devicePressure_Pa: ((0.4 * flow_m3_h) / 500) ** 2, range: 'b' },
          ],
        })),
      })),
    }
    // The density at 20 °C, 101 325 Pa is 1.20409 kg/m³ against 1.2041 of the devices: 3 parts in a million.
    expect(evaluateInput(byPressure).results.q50.value / evaluate(record).results.q50.value).toBeCloseTo(1, 5)
  })

  it('objects to one of several devices outside its own range, naming it', () => {
    const record = recordBy('astm-e3158-18', powerLaw(2000, 0.6, pressures), {
      flowDevice: {
        referenceDensity_kg_m3: 1.2041,
        ranges: [
          { label: 'a', coefficient: 900, exponent: 0.5, minimumPressure_Pa: 20, maximumPressure_Pa: 2000 },
        ],
      },
    })
    const [run] = record.runs
    const readings = run?.readings.map(({ pressure_Pa }) => ({
      pressure_Pa,
      devices: [
        { devicePressure_Pa: 400 * Math.abs(pressure_Pa / 50), range: 'a' },
        { devicePressure_Pa: 15, range: 'a' },
      ],
    }))
    const found = evaluateInput({ ...record, runs: [{ ...run, readings }] }).findings.filter(
      ({ rule }) => rule === 'device-range',
    )
    expect(found[0]?.where).toEqual(['runs[0].readings[0].devices[1].devicePressure_Pa'])
    expect(found[0]?.message).toContain('device 2')
  })

  it('accepts exponents from 0.45', () => {
    expect(rulesOf(recordBy('astm-e3158-18', powerLaw(2000, 0.47, pressures)), 'invalidates')).not.toContain(
      'exponent-range',
    )
    expect(rulesOf(recordBy('astm-e779-19', powerLaw(2000, 0.47, pressures)), 'invalidates')).toContain(
      'exponent-range',
    )
  })
})

describe('the methods together', () => {
  it('refuse fewer readings than a method can use, naming the run', () => {
    const two = recordBy('iso-9972:2015', powerLaw(80, 0.62, [50, 40]))
    expect(() => evaluate(two)).toThrow(InputError)
    expect(() => evaluate(two)).toThrow(/runs\[0\]\.readings: a run needs at least 3 readings by this method/)
  })

  it('refuse several devices and fewer than three readings in a record@1', () => {
    const record = recordBy('astm-e1827-22-one-point', [{ pressure_Pa: 50, flow_m3_h: 900 }])
    expect(() => evaluateInput({ ...record, format: 'draughtbook/record@1' })).toThrow(/at least 3 readings/)
    const several = {
      ...recordBy('iso-9972:2015', powerLaw(80, 0.62, usual_Pa)),
      format: 'draughtbook/record@1',
    }
    const [run] = several.runs
    const with2 = {
      ...several,
      runs: [
        {
          ...run,
          readings: run?.readings.map(({ pressure_Pa }) => ({
            pressure_Pa,
            devices: [{ flow_m3_h: 1 }, { flow_m3_h: 2 }],
          })),
        },
      ],
    }
    expect(() => evaluateInput(with2)).toThrow(/devices is a field of draughtbook\/record@2/)
  })

  it('each give an evaluation that its schema accepts, with every figure finite', () => {
    for (const { id } of methods) {
      const stations = /one-point|380/.test(id)
        ? [50, 51, 50, 49, 50]
        : id.includes('two-point')
          ? [50, 50, 50, 50, 50, 12.5, 12.5, 12.4, 12.6, 12.5]
          : usual_Pa
      const evaluation = evaluate(recordBy(id, powerLaw(80, 0.62, stations)), { uncertainty: true })
      expect(evaluation.results.q50.value / (80 * 50 ** 0.62), id).toBeCloseTo(1, 3)
      for (const { relativeStandardUncertainty } of evaluation.uncertainty?.figures ?? [])
        expect(relativeStandardUncertainty, id).toBeGreaterThan(0.01)
    }
  })

  it('are named nowhere in the calculation but in their own files, and where a log names one', () => {
    const root = `${import.meta.dirname}/../../shared-calc/src`
    const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter(
      (file) => /\.tsx?$/.test(file) && !/^(methods|log|assessment\/simulation\/wind)\//.test(file),
    )
    expect(files.length).toBeGreaterThan(50)
    for (const file of files) {
      const text = readFileSync(`${root}/${file}`, 'utf8')
      for (const { id } of methods) expect(text.includes(`'${id}'`), `${file} names ${id}`).toBe(false)
    }
  })
})
