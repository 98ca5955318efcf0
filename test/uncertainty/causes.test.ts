import { type Evaluation, evaluate, type TestRecord } from '@draughtbook/shared-calc'
import psychrolib from 'psychrolib'
import { describe, expect, it } from 'vitest'
import { powerLaw, recordBy, usual_Pa } from '../methods/record-by'

type Run = TestRecord['runs'][number]
type Reading = Run['readings'][number]

/** A cold, windy test at altitude, so that every correction matters. */
const record = recordBy('iso-9972:2015', powerLaw(80, 0.62, usual_Pa), {
  uncertainty: {},
  conditions: {
    indoorTemperature_C: 21,
    outdoorTemperature_C: -4,
    barometricPressure_Pa: 90_000,
    indoorRelativeHumidity: 0.4,
    outdoorRelativeHumidity: 0.7,
    windSpeed_m_s: 3,
    windAt: 'ground',
  },
})

const side = ({ direction }: Run) => (direction === 'pressurisation' ? 1 : -1)
const everyReading = (change: (reading: Reading, run: Run) => Reading): TestRecord => ({
  ...record,
  runs: record.runs.map((run) => ({ ...run, readings: run.readings.map((one) => change(one, run)) })),
})
const conditions = (change: Partial<TestRecord['conditions']>): TestRecord => ({
  ...record,
  conditions: { ...record.conditions, ...change },
})
const pressure = (reading: Reading) => Math.abs(reading.pressure_Pa)
const flow = (reading: Reading, factor: number): Reading => ({
  ...reading,
  flow_m3_h: (reading.flow_m3_h ?? 0) * factor,
})

const figures = { q50: 50, ela4: 4, ela10: 10 } as const
type Figure = keyof typeof figures

const contribution = (evaluation: Evaluation, figure: Figure, id: string) =>
  evaluation.uncertainty?.figures
    .find(({ quantity }) => quantity === figure)
    ?.contributions.find((one) => one.id === id)

/** Density of moist air by psychrolib, kg/m³. */
function density(celsius: number, humidity: number): number {
  psychrolib.SetUnitSystem(psychrolib.SI)
  const ratio = psychrolib.GetHumRatioFromRelHum(celsius, humidity, 90_000)
  return psychrolib.GetMoistAirDensity(celsius, ratio, 90_000)
}

/** A device that shows the flow for air of 1.2041 kg/m³ passes √(1.2041/ρ) of it: what that changes in one direction. */
const otherMeaning = ({ direction }: Run): number =>
  Math.sqrt(1.2041 / (direction === 'depressurisation' ? density(21, 0.4) : density(-4, 0.7))) - 1

/** What each cause does to the test as logged, told by physics: the record by one unit of the cause times h. */
const moved: Readonly<Record<string, (h: number, figure: Figure) => TestRecord>> = {
  'flow calibration': (h) => everyReading((reading) => flow(reading, Math.exp(h))),
  'meaning of flows': (h) => everyReading((reading, run) => flow(reading, Math.exp(h * otherMeaning(run)))),
  'gauge span': (h) =>
    everyReading((reading) => ({ ...reading, pressure_Pa: reading.pressure_Pa * (1 + h) })),
  'wind shift': (h) => everyReading((reading) => ({ ...reading, pressure_Pa: reading.pressure_Pa + h })),
  'stack shift': (h) => everyReading((reading) => ({ ...reading, pressure_Pa: reading.pressure_Pa + h })),
  // Openings that feel Δp + s, mean of s 0: the mean of |Δp + s|ⁿ for s = ±√h, for one that is small against Δp.
  'wind spread': (h) =>
    everyReading((reading) => {
      const power = (s: number) => (1 + s / pressure(reading)) ** 0.62
      const root = Math.sqrt(Math.abs(h))
      const mean = (power(root) + power(-root)) / 2
      return flow(reading, h > 0 ? mean : 1 / mean)
    }),
  // A law that touches the true one at the pressure of the figure and curves away from it.
  'leak mixture': (h, figure) =>
    everyReading((reading) =>
      flow(reading, Math.exp((h / 2) * Math.log(pressure(reading) / figures[figure]) ** 2)),
    ),
  'zero flow 1': (h) => ({
    ...record,
    runs: record.runs.map((run, i) =>
      i === 0
        ? {
            ...run,
            zeroFlowBefore_Pa: (run.zeroFlowBefore_Pa ?? []).map((value) => value + side(run) * h),
            zeroFlowAfter_Pa: (run.zeroFlowAfter_Pa ?? []).map((value) => value + side(run) * h),
          }
        : run,
    ),
  }),
  'indoor temperature': (h) => conditions({ indoorTemperature_C: 21 + h }),
  'outdoor temperature': (h) => conditions({ outdoorTemperature_C: -4 + h }),
  barometer: (h) => conditions({ barometricPressure_Pa: 90_000 + h }),
  'indoor humidity': (h) => conditions({ indoorRelativeHumidity: 0.4 + h }),
  'outdoor humidity': (h) => conditions({ outdoorRelativeHumidity: 0.7 + h }),
}
const steps: Readonly<Record<string, number>> = {
  'wind shift': 0.01,
  'stack shift': 0.01,
  'zero flow 1': 0.01,
  'wind spread': 0.01,
  'indoor temperature': 0.01,
  'outdoor temperature': 0.01,
  barometer: 10,
}

describe('what the budget says a cause does to a figure', () => {
  const base = evaluate(record)

  describe.each(Object.keys(moved))('%s', (id) => {
    it.each(Object.keys(figures) as Figure[])(
      'is what happens to %s when the record is changed',
      (figure) => {
        const h = steps[id] ?? 1e-4
        const found = (sign: 1 | -1) => {
          const changed = moved[id]?.(sign * h, figure)
          if (!changed) throw new Error(`no change for ${id}`)
          return Math.log(evaluate(changed).results[figure].value)
        }
        const sensitivity = contribution(base, figure, id)?.sensitivity ?? Number.NaN
        const slope = (found(1) - found(-1)) / (2 * h)
        // Opposite effects of the two directions nearly cancel for a shift: compared to what one direction would do.
        expect(Math.abs(slope - sensitivity)).toBeLessThan(2e-3 * Math.abs(sensitivity) + 2e-6)
      },
    )
  })

  it('covers every cause of this test but scatter and the second zero flow, which is as the first', () => {
    const ids = base.uncertainty?.figures
      .find(({ quantity }) => quantity === 'ela4')
      ?.contributions.map(({ id }) => id)
    expect(ids?.filter((id) => !(id in moved))).toEqual([
      'stack spread',
      'scatter 1',
      'zero flow 2',
      'scatter 2',
    ])
  })
})

describe('openings of unlike exponents', () => {
  it('leave what the central moments of x say between line and curve: ½[z² − m₂ − (m₃/m₂)·z]', () => {
    const plain = recordBy('iso-9972:2015', powerLaw(80, 0.62, usual_Pa), { uncertainty: {} })
    const evaluation = evaluate(plain)
    const x = usual_Pa.map(Math.log)
    const mean = x.reduce((sum, one) => sum + one, 0) / x.length
    const moment = (k: number) => x.reduce((sum, one) => sum + (one - mean) ** k, 0) / x.length
    for (const [figure, reference] of Object.entries(figures) as [Figure, number][]) {
      const z = Math.log(reference) - mean
      const bracket = z * z - moment(2) - (moment(3) / moment(2)) * z
      const row = contribution(evaluation, figure, 'leak mixture')
      // The air of this test is reference air but for the digits of its constants.
      expect(row?.sensitivity).toBeCloseTo(-bracket / 2, 4)
      // Mean square of the whole about the line: the expected size and the uncertainty about it.
      const whole = Math.hypot(row?.expectedSize ?? 0, row?.standardUncertainty ?? 0)
      expect(whole).toBeCloseTo((2 / Math.sqrt(3)) * 0.07 ** 2, 12)
    }
  })

  it('make a straight line find too little at 4 Pa, by about what is expected of their curvature', () => {
    // Half of the flow at 20 Pa through an orifice, half through cracks.
    const parts = [
      { share: 50, exponent: 0.5 },
      { share: 50, exponent: 0.8 },
    ]
    const law = (p: number) => parts.reduce((sum, one) => sum + one.share * (p / 20) ** one.exponent, 0)
    const mixed = recordBy(
      'iso-9972:2015',
      usual_Pa.map((pressure_Pa) => ({ pressure_Pa, flow_m3_h: law(pressure_Pa) })),
      { uncertainty: { leakExponentSpread: 0.15 } },
    )
    const evaluation = evaluate(mixed)
    const missing = Math.log(law(4) / evaluation.results.q4.value)
    const expected = -(contribution(evaluation, 'ela4', 'leak mixture')?.sensitivity ?? 0) * 0.15 ** 2
    expect(missing).toBeGreaterThan(0.03)
    expect(missing / expected).toBeGreaterThan(0.8)
    expect(missing / expected).toBeLessThan(1.2)
  })
})

describe('gusts', () => {
  it('are found as pascals, the same at every station, whatever the logarithms do', () => {
    // Ten thousand readings would show it exactly; here the mean over many runs of ten.
    let state = 12345
    const even = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0
      return state / 4_294_967_296
    }
    const normal = () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even())
    const GUST_Pa = 1.2
    const errors: number[] = []
    const stated: number[] = []
    for (let i = 0; i < 300; i += 1) {
      const readings = usual_Pa.map((pressure_Pa) => ({
        pressure_Pa: pressure_Pa + GUST_Pa * normal(),
        flow_m3_h: 80 * pressure_Pa ** 0.62,
      }))
      const base = recordBy('iso-9972:2015', readings, {
        uncertainty: { pressureReading_Pa: 0.01, flowReading_relative: 0.0001 },
      })
      const { uncertainty, runs } = evaluate({ ...base, runs: base.runs.slice(0, 1) })
      const figure = uncertainty?.figures.find(({ quantity }) => quantity === 'ela4')
      const scatter = figure?.contributions.find(({ id }) => id === 'scatter 1')
      errors.push(Math.log((runs[0]?.q4.value ?? 0) / (80 * 4 ** 0.62)))
      stated.push((scatter?.contribution ?? 0) ** 2)
    }
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
    const spread = Math.sqrt(mean(errors.map((one) => (one - mean(errors)) ** 2)))
    // 300 runs give a standard deviation to 4 %; a single deviation for all logarithms would miss it by a third.
    expect(Math.sqrt(mean(stated)) / spread).toBeGreaterThan(0.85)
    expect(Math.sqrt(mean(stated)) / spread).toBeLessThan(1.15)
  })
})
