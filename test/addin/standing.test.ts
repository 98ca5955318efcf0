import { describe, expect, it } from 'vitest'
import { live } from '../../addin/src/calc/live.js'
import { emptyEntries, type TestEntries } from '../../addin/src/pane/one-test/entries.js'
import { standingOf } from '../../addin/src/pane/one-test/standing.js'
import type { TestState } from '../../addin/src/pane/one-test/test-state.js'
import { emptyRun } from '../../addin/src/pane/one-test/typed/typed-run.js'

/** An invented hall that leaks 300·Δp^0.65 m³/h. */
const readings = [60, 50, 40, 30, 20].map((pressure) => ({
  pressure: String(pressure),
  second: (300 * pressure ** 0.65).toFixed(2),
}))

const entries = (fields: Record<string, string>, shown = readings): TestEntries => ({
  ...emptyEntries(),
  fields: Object.fromEntries(
    Object.entries({
      'test.method': 'iso-9972:2015',
      'building.name': 'Hall (invented)',
      'building.volume_m3': '8000',
      'test.date': '2026-10-14',
      'conditions.indoorTemperature_C': '20',
      'conditions.outdoorTemperature_C': '20',
      ...fields,
    }).map(([path, text]) => [path, { text }]),
  ),
  runs: { depressurisation: { typed: { ...emptyRun(), readings: shown } } },
})

const standing = (given: TestEntries) => {
  const result = live(given, undefined)
  return standingOf({ entries: given, result, evaluation: result.evaluation } as TestState)
}

describe('where a test stands', () => {
  it('names what every test needs before anything is entered', () => {
    const { stage, missing } = standingOf({ entries: emptyEntries() } as TestState)
    expect(stage).toBe('empty')
    expect(missing.map(({ path }) => path)).toEqual([
      'building.name',
      'building.volume_m3',
      'test.date',
      'conditions.indoorTemperature_C',
      'conditions.outdoorTemperature_C',
      'runs',
    ])
  })

  it('holds the running value of one reading against the limit of the target', () => {
    const { stage, against } = standing(
      entries({ 'target.preset': 'passive-house-new' }, readings.slice(0, 1)),
    )
    expect(stage).toBe('running')
    // Independent arithmetic: 300·50^0.65/8000; the exponent assumed is the true one.
    expect(against?.value).toBeCloseTo((300 * 50 ** 0.65) / 8000, 2)
    expect(against).toMatchObject({ quantity: 'n50', unit: '1/h', limit: 0.6 })
  })

  it.each([['9000'], ['4200']])(
    'of two limits it shows the one nearer to its limit, with its own unit (envelope %s m²)',
    (area) => {
      const given = entries({ 'target.preset': 'passive-house-new', 'building.envelopeArea_m2': area })
      const { evaluation } = live(given, undefined)
      const criteria = evaluation?.verdict.criteria ?? []
      expect(criteria).toHaveLength(2)
      const nearest = criteria.toSorted((a, b) => a.margin / a.limit - b.margin / b.limit)[0]
      const { against } = standing(given)
      expect(against).toMatchObject({
        quantity: nearest?.quantity,
        value: nearest?.value,
        unit: nearest?.unit,
        limit: nearest?.limit,
      })
      // The values themselves, by hand: q50 over volume, q50 over envelope.
      const q50 = 300 * 50 ** 0.65
      const byHand = nearest?.quantity === 'n50' ? q50 / 8000 : q50 / Number(area)
      expect((against?.value ?? 0) / byHand).toBeCloseTo(1, 1)
    },
  )
})

describe('a test under way', () => {
  const zeroFlow = Array.from({ length: 10 }, () => '0.2')
  const typed = (pressures: readonly number[], more: object): TestEntries => ({
    ...entries({ 'target.preset': 'passive-house-new', 'building.envelopeArea_m2': '4200' }),
    runs: {
      depressurisation: {
        typed: {
          ...emptyRun(),
          zeroFlowBefore: zeroFlow,
          readings: pressures.map((pressure) => ({
            pressure: String(pressure),
            second: (300 * pressure ** 0.65).toFixed(2),
          })),
          ...more,
        },
      },
    },
  })
  const labels = (given: TestEntries) => standing(given).missing.map(({ label }) => label)

  it('is not called invalid: it says what is still missing', () => {
    // ISO 9972:2015, 5.3.4 (clause not checked against the standard): at least five readings, one of them at 50 Pa or more.
    const given = typed([40, 30, 20], {})
    expect(live(given, undefined).evaluation?.verdict.outcome).toBe('not valid')
    expect(standing(given).stage).toBe('under way')
    expect(standing(given).invalidating).toBe(0)
    expect(labels(given)).toEqual(
      expect.arrayContaining(['2 more readings', 'a reading at 50 Pa or above', 'zero-flow pressure after']),
    )
  })

  it('needs nothing more of a kind once it is there', () => {
    expect(labels(typed([60, 50, 40, 30, 20, 12], {}))).not.toContainEqual(expect.stringMatching(/reading/))
    expect(labels(typed([60, 50, 40, 30, 20, 12], { zeroFlowAfter: zeroFlow }))).not.toContainEqual(
      expect.stringMatching(/zero-flow|reading/),
    )
  })

  it('counts a value that is being typed among what is to come', () => {
    const readings = [60, 50, 40, 30, 20, 12].map((pressure) => ({
      pressure: String(pressure),
      second: (300 * pressure ** 0.65).toFixed(2),
    }))
    const given = typed([], {
      zeroFlowAfter: zeroFlow,
      readings: [...readings, { pressure: '-', second: '' }],
    })
    expect(live(given, undefined).unusable).toBe(true)
    expect(standing(given).stage).toBe('under way')
    expect(labels(given)).toContain('1 value to check')
  })

  it('names the direction that each thing is missing from, and none for what is missing altogether', () => {
    const run = (pressures: readonly number[]) => ({
      typed: {
        ...emptyRun(),
        zeroFlowBefore: zeroFlow,
        zeroFlowAfter: zeroFlow,
        readings: pressures.map((pressure) => ({ pressure: String(pressure), second: String(3 * pressure) })),
      },
    })
    const given = {
      ...typed([], {}),
      runs: { depressurisation: run([60, 50, 40]), pressurisation: run([60, 50, 40, 30]) },
    }
    // At least five readings each.
    expect(labels(given).filter((label) => label.includes('more reading'))).toEqual([
      '2 more readings, depressurisation',
      '1 more reading, pressurisation',
    ])
  })

  it('is called not valid where something is wrong that no further reading answers', () => {
    const given = typed([60, 50, 40], { zeroFlowBefore: zeroFlow.map(() => '9') })
    expect(live(given, undefined).findings.map(({ rule }) => rule)).toContain('zero-flow-limit')
    expect(standing(given).stage).toBe('not valid')
  })
})

describe('air for which the flows are stated', () => {
  const at = (fields: Record<string, string>) =>
    live(entries({ 'flowDevice.referenceDensity_kg_m3': '1.2', ...fields }), undefined)

  it('is asked once and stands with every run of flows; then nothing is assumed', () => {
    const open = at({ 'conditions.indoorTemperature_C': '29' })
    expect(open.findings.map(({ rule }) => rule)).toContain('flow-stated-at')
    const answered = at({ 'conditions.indoorTemperature_C': '29', flowStatedAt: 'device air' })
    expect(answered.record).toMatchObject({
      format: 'draughtbook/record@3',
      runs: [{ flowStatedAt: 'device air' }],
    })
    expect(answered.findings.map(({ rule }) => rule)).not.toContain('flow-stated-at')
  })

  it('is not stated of device pressures, whose flows are worked out', () => {
    const pressures = readings.map(({ pressure }) => ({ pressure, second: '100' }))
    const given = {
      ...entries({ flowStatedAt: 'device air' }),
      runs: { depressurisation: { typed: { ...emptyRun('devicePressure', 'Pa'), readings: pressures } } },
    }
    const [run] = live(given, undefined).draft.runs as object[]
    expect(run).toHaveProperty('readings.0.devicePressure_Pa', 100)
    expect(run).not.toHaveProperty('flowStatedAt')
  })
})

describe('the plan', () => {
  it('takes its day from the test date, and wind as forecast for weather stations', () => {
    const { site } = live(entries({ 'plan.forecast.windSpeed_m_s': '4' }), undefined)
    expect(site.plan?.request.plan).toMatchObject({
      day: '2026-10-14',
      forecast: { windSpeed_m_s: 4, windAt: 'meteorological' },
    })
    expect(live(entries({}), undefined).site.plan?.request.plan.day).toBe('2026-10-14')
  })
})

describe('readings typed by hand', () => {
  const run = (pressure: string, second: string) =>
    live(entries({}, [{ pressure, second }, ...readings.slice(1)]), undefined)

  it('takes the sign from the direction, decimal commas, and the unit beside a number', () => {
    const result = run('60,5', '1187 cfm')
    const first = result.record?.runs[0]?.readings[0]
    expect(first?.pressure_Pa).toBe(-60.5)
    // 1 ft³ = 0.028316846592 m³ by definition of the international foot.
    expect(first?.flow_m3_h).toBeCloseTo(1187 * 60 * 0.028316846592, 6)
    expect(result.findings.map(({ rule }) => rule)).toContain('log-sign-by-direction')
  })

  it.each([
    ['602', '4300', 'depressurisation.readings[0].pressure'],
    ['60', '430000', 'depressurisation.readings[0].second'],
    ['6o', '4300', 'depressurisation.readings[0].pressure'],
    ['', '4300', 'depressurisation.readings[0].pressure'],
  ])('uses no reading of %s Pa and %s m³/h, and says so at its place', (pressure, second, place) => {
    const result = run(pressure, second)
    expect(Object.keys(result.typedFaults)).toEqual([place])
    expect(result.evaluation?.runs[0]?.readings).toHaveLength(4)
    expect(result.evaluation?.verdict.outcome).not.toBe('meets')
    expect(result.unusable).toBe(true)
  })
})
