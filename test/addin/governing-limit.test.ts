import { describe, expect, it } from 'vitest'
import { live } from '../../addin/src/calc/live.js'
import { emptyEntries, type TestEntries } from '../../addin/src/pane/one-test/entries.js'
import { type Standing, standingOf } from '../../addin/src/pane/one-test/standing.js'
import type { TestState } from '../../addin/src/pane/one-test/test-state.js'
import { emptyRun } from '../../addin/src/pane/one-test/typed/typed-run.js'
import { type HouseOfLimits, housesOfLimits, severalLimits } from '../shared-calc/support/several-limits.js'

/** The house as somebody types it in, with as many readings of each run as asked for. */
function typed(
  { record: { building, conditions, runs, target } }: HouseOfLimits,
  readings: number,
): TestEntries {
  const fields: Record<string, unknown> = {
    'test.method': 'iso-9972:2015',
    'test.date': '2026-10-14',
    'target.preset': (target as { preset: string }).preset,
    flowStatedAt: 'reference air',
  }
  for (const [part, values] of Object.entries({ building, conditions }))
    for (const [name, value] of Object.entries(values)) fields[`${part}.${name}`] = value
  return {
    ...emptyEntries(),
    fields: Object.fromEntries(
      Object.entries(fields).map(([path, value]) => [path, { text: String(value), kept: true as const }]),
    ),
    runs: Object.fromEntries(
      runs.map((run) => [
        run.direction,
        {
          typed: {
            ...emptyRun(),
            zeroFlowBefore: run.zeroFlowBefore_Pa?.map(String) ?? [],
            zeroFlowAfter: run.zeroFlowAfter_Pa?.map(String) ?? [],
            readings: run.readings.slice(0, readings).map(({ pressure_Pa, flow_m3_h }) => ({
              pressure: String(Math.abs(pressure_Pa)),
              second: String(flow_m3_h),
            })),
            kept: run.readings.flatMap(({ flow_m3_h }) => String(flow_m3_h)),
          },
        },
      ]),
    ),
  }
}

function shown(
  house: HouseOfLimits,
  readings: number,
): Standing & { chart: ReturnType<typeof live>['chart'] } {
  const entries = typed(house, readings)
  const result = live(entries, undefined)
  const state = { entries, result, evaluation: result.evaluation } as TestState
  return { ...standingOf(state), chart: result.chart }
}

describe.each(Object.keys(severalLimits))('the page, with the target %s of several limits', (preset) => {
  const houses = housesOfLimits.filter(
    ({ record }) => (record.target as { preset: string }).preset === preset,
  )

  it('shows the limit that decides in its own unit in the line at the top, and draws it', () => {
    for (const house of houses) {
      const { name, decisive, value, record } = house
      const { against, chart } = shown(house, 6)
      expect(against, name).toMatchObject({ quantity: decisive.quantity, unit: decisive.unit })
      expect(against?.limit, name).toBeCloseTo(decisive.limit, 9)
      expect(against?.value, name).toBeCloseTo(value, 5)
      const pressure_Pa = decisive.quantity === 'aE10' ? 10 : 50
      expect(chart.limit, name).toMatchObject({ pressure_Pa, label: `limit of ${decisive.quantity}` })
      // The house's own flow there, in proportion to the value: both limits of rates and of areas follow it.
      const [first] = record.runs[0]?.readings ?? []
      const exponent = Number(/exponent (\S+)$/.exec(name)?.[1])
      const flow = (first?.flow_m3_h ?? 0) * (pressure_Pa / Math.abs(first?.pressure_Pa ?? 1)) ** exponent
      expect((chart.limit?.flow_m3_h ?? 0) / flow, name).toBeCloseTo(decisive.limit / value, 4)
    }
  })

  it('holds the running value against the limit that decides', () => {
    for (const house of houses) {
      const { name, decisive, value } = house
      // With the first reading the exponent is assumed: 0.65, which only houses of that exponent have.
      if (!name.endsWith('exponent 0.65')) continue
      const { stage, against } = shown(house, 1)
      expect(stage, name).toBe('running')
      expect(against, name).toMatchObject({ quantity: decisive.quantity, unit: decisive.unit })
      expect(against?.limit, name).toBeCloseTo(decisive.limit, 9)
      expect(against?.value, name).toBeCloseTo(value, 5)
    }
  })
})
