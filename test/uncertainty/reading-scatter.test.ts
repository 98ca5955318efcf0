import { type Evaluation, evaluate, parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { readLog } from '@draughtbook/shared-calc/log'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { simulate } from '../../shared-calc/src/assessment/simulation/simulate.js'
import { seriesText } from '../log/logs/series-text'
import { powerLaw, recordBy, usual_Pa } from '../methods/record-by'
import { compareCached } from '../support/formula-cells'
import { minimise } from './minimise'
import { randomRecord } from './random-record'

type Reading = TestRecord['runs'][number]['readings'][number]

/** Nothing uncertain but the readings. */
const nothingElse = {
  flowCalibration_relative: 0,
  gaugeSpan_relative: 0,
  zeroFlow_Pa: 0,
  windShift: 0,
  windSpread: 0,
  stackShift: 0,
  stackSpread: 0,
  leakExponentSpread: 0,
  zeroFlowWind: 0,
  indoorTemperature_K: 0,
  outdoorTemperature_K: 0,
  barometricPressure_Pa: 0,
  relativeHumidity: 0,
}

const withReadings = (record: TestRecord, change: (reading: Reading, i: number) => Reading): TestRecord =>
  parseRecord({ ...record, runs: record.runs.map((run) => ({ ...run, readings: run.readings.map(change) })) })

const standardUncertainty = ({ uncertainty }: Evaluation, quantity: string): number =>
  uncertainty?.figures.find((figure) => figure.quantity === quantity)?.relativeStandardUncertainty ??
  Number.NaN

/** Different for every reading, as gusts make them. */
const pressureScatter = (i: number) => 0.2 + 0.15 * (i % 4)
const flowScatter = (i: number, flow = 0) => flow * (0.004 + 0.003 * (i % 3))
const averaged = (reading: Reading, i: number): Reading => ({
  ...reading,
  pressureUncertainty_Pa: pressureScatter(i),
  flowUncertainty_m3_h: flowScatter(i, reading.flow_m3_h),
})

const exact = recordBy('iso-9972:2015', powerLaw(80, 0.62, usual_Pa), { uncertainty: nothingElse })

describe('uncertainties of averages in a record', () => {
  it.each(['pressureUncertainty_Pa', 'flowUncertainty_m3_h'])('%s is not a field of a record@1', (field) => {
    const { uncertainty: _, ...plain } = withReadings(exact, (reading, i) =>
      i === 1 ? { ...reading, [field]: 0.2 } : reading,
    )
    expect(() => parseRecord({ ...plain, format: 'draughtbook/record@1' })).toThrow(
      `runs[0].readings[1].${field}`,
    )
  })

  it('are refused where the reading has no such average', () => {
    expect(() =>
      withReadings(exact, (reading) => ({ ...reading, devicePressureUncertainty_Pa: 0.2 })),
    ).toThrow('devicePressureUncertainty_Pa')
  })

  it('change no official figure', () => {
    const { uncertainty: _, ...plain } = exact
    const { uncertainty: __, ...told } = withReadings(exact, averaged)
    const [before, after] = [evaluate(plain), evaluate(told)]
    expect(after.results).toEqual(before.results)
    expect(after.runs).toEqual(before.runs)
  })
})

describe('the budget of a test with uncertainties of averages', () => {
  it('is that of the same scatter stated for all readings', () => {
    const told = withReadings(exact, (reading) => ({
      ...reading,
      pressureUncertainty_Pa: 0.3,
      flowUncertainty_m3_h: 0.007 * (reading.flow_m3_h ?? 0),
    }))
    const stated = {
      ...exact,
      uncertainty: { ...nothingElse, pressureReading_Pa: 0.3, flowReading_relative: 0.007 },
    }
    for (const quantity of ['q50', 'ela4'])
      expect(standardUncertainty(evaluate(told), quantity)).toBeCloseTo(
        standardUncertainty(evaluate(parseRecord(stated)), quantity),
        12,
      )
  })

  it('takes each as it is: the squares of what every reading does to q50, found by moving it', () => {
    const record = withReadings(exact, averaged)
    const q50 = (of: TestRecord) => Math.log(evaluate(of).results.q50?.value ?? Number.NaN)
    // Central differences of the whole evaluation, one reading of one run at a time.
    const moved = (run: number, i: number, by: (reading: Reading, side: number) => Reading) => {
      const at = (side: number) =>
        q50({
          ...record,
          runs: record.runs.map((one, r) => ({
            ...one,
            readings: one.readings.map((reading, k) => (r === run && k === i ? by(reading, side) : reading)),
          })),
        })
      return (at(0.1) - at(-0.1)) / 0.2
    }
    let squares = 0
    for (const [run, { readings }] of record.runs.entries())
      for (const i of readings.keys())
        squares +=
          moved(run, i, (reading, side) => ({
            ...reading,
            pressure_Pa: reading.pressure_Pa + side * pressureScatter(i),
          })) **
            2 +
          moved(run, i, (reading, side) => ({
            ...reading,
            flow_m3_h: (reading.flow_m3_h ?? 0) + side * flowScatter(i, reading.flow_m3_h),
          })) **
            2
    expect(standardUncertainty(evaluate(record), 'q50') / Math.sqrt(squares)).toBeCloseTo(1, 4)
  })

  it('takes nothing by default that every average tells', () => {
    const inputs = (record: TestRecord) =>
      evaluate(record).uncertainty?.defaults.map(({ input }) => input) ?? []
    expect(inputs(exact)).toEqual(expect.arrayContaining(['pressureReading_Pa', 'flowReading_relative']))
    const told = inputs(withReadings(exact, averaged))
    expect(told).not.toContain('pressureReading_Pa')
    expect(told).not.toContain('flowReading_relative')
  })

  it('counts scatter once: what the fit found beyond the averages, not both in full', () => {
    const rough = withReadings(exact, (reading, i) => ({
      ...reading,
      flow_m3_h: (reading.flow_m3_h ?? 0) * (1 + (i % 2 === 0 ? 0.08 : -0.08)),
    }))
    const [found, averages, together] = [
      rough,
      withReadings(exact, averaged),
      withReadings(rough, averaged),
    ].map((record) => standardUncertainty(evaluate(record), 'q50'))
    expect(together).toBeLessThan(Math.hypot(found ?? 0, averages ?? 0))
    expect(Math.abs((together ?? 0) / (found ?? Number.NaN) - 1)).toBeLessThan(0.1)
  })

  it.each([0, 3])('agrees within 1 % with Monte Carlo for invented record %i', (seed) => {
    const record = withReadings(parseRecord(randomRecord(seed)), told)
    const { uncertainty } = evaluate(record)
    const steps = simulate(record, { draws: 100_000, seed })
    let step = steps.next()
    while (!step.done) step = steps.next()
    for (const { quantity, relativeStandardUncertainty } of step.value) {
      const budget = uncertainty?.figures.find((figure) => figure.quantity === quantity)
      const ratio = relativeStandardUncertainty / (budget?.relativeStandardUncertainty ?? Number.NaN)
      expect(Math.abs(ratio - 1), `${quantity}: ${ratio}`).toBeLessThan(0.01)
    }
  })

  it('stands in the workbook as live formulas that LibreOffice confirms, device pressures too', async () => {
    const record = parseRecord(devicesRecord())
    const bytes = await writeSummaryWorkbook(withReadings(record, told))
    expect(await compareCached(bytes, { relative: 1e-9, absolute: 1e-11 })).toEqual([])
  })

  it('takes a device pressure by the exponent of its range', () => {
    const base = parseRecord(devicesRecord())
    const averages = withReadings(base, (reading) => ({
      ...reading,
      pressureUncertainty_Pa: 0.1,
      devicePressureUncertainty_Pa: 0.03 * Math.abs(reading.devicePressure_Pa ?? 0),
    }))
    // A square-root device: 3 % of its pressure is 1.5 % of its flow.
    const stated = {
      ...base,
      uncertainty: { ...base.uncertainty, pressureReading_Pa: 0.1, flowReading_relative: 0.015 },
    }
    expect(standardUncertainty(evaluate(averages), 'q50')).toBeCloseTo(
      standardUncertainty(evaluate(parseRecord(stated)), 'q50'),
      12,
    )
  })
})

/** The first invented record whose readings are device pressures. */
function devicesRecord(): TestRecord {
  for (let seed = 0; seed < 50; seed += 1) {
    const record = randomRecord(seed)
    if (record.runs[0]?.readings[0]?.devicePressure_Pa !== undefined) return record
  }
  throw new Error('no invented record has device pressures')
}

/** Small uncertainties of the averages of either kind of reading. */
const told = (reading: Reading, i: number): Reading => ({
  ...reading,
  pressureUncertainty_Pa: 0.1 + 0.05 * (i % 4),
  ...(reading.flow_m3_h !== undefined && { flowUncertainty_m3_h: 0.01 * reading.flow_m3_h }),
  ...(reading.devicePressure_Pa !== undefined && {
    devicePressureUncertainty_Pa: 0.02 * Math.abs(reading.devicePressure_Pa),
  }),
})

describe('the fit with errors in both variables', () => {
  it('weighs every reading by its own averages, as a brute-force minimiser does', () => {
    const rough = withReadings(exact, (reading, i) => ({
      ...reading,
      flow_m3_h: (reading.flow_m3_h ?? 0) * (1 + 0.01 * Math.sin(7 * i)),
    }))
    const record = withReadings(rough, averaged)
    const [run] = record.runs
    const points = (run?.readings ?? []).map(({ pressure_Pa, flow_m3_h = 0 }, i) => ({
      x: Math.log(Math.abs(pressure_Pa)),
      y: Math.log(flow_m3_h),
      u_x: pressureScatter(i) / Math.abs(pressure_Pa),
      u_y: flowScatter(i, flow_m3_h) / flow_m3_h,
    }))
    // Distance of each point from the line in units of its own uncertainty; the densities cancel.
    const squares = (n: number, atMean: number) =>
      points.reduce(
        (sum, { x, y, u_x, u_y }) => sum + (y - atMean - n * (x - 3.5)) ** 2 / (u_y ** 2 + (n * u_x) ** 2),
        0,
      )
    const [n] = minimise(squares, [0.6, 7], [0.2, 1])
    const fit = evaluate(record).fits?.[0]?.fits.find(({ fit: name }) => name.includes('both variables'))
    expect(fit?.exponent).toBeCloseTo(n, 5)
    const plain = evaluate(rough).fits?.[0]?.fits.find(({ fit: name }) => name.includes('both variables'))
    expect(Math.abs((plain?.exponent ?? 0) - n)).toBeGreaterThan(1e-4)
  })
})

describe('a raw series', () => {
  it('brings the uncertainties of its averages into the record, and the budget uses them', async () => {
    const { tests } = readLog(await seriesText.write(), seriesText.fileName, { acceptProposal: true })
    const record = tests[0]?.record
    if (!record) throw new Error('the series was not read')
    expect(record.format).toBe('draughtbook/record@2')
    const { defaults = [] } = evaluate(record, { uncertainty: true }).uncertainty ?? {}
    const inputs = defaults.map(({ input }) => input)
    expect(inputs).not.toContain('pressureReading_Pa')
    // Its flow never changes: that tells of the log's steps, not of an exact flow.
    expect(inputs).toContain('flowReading_relative')
  })
})
