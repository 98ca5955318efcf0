import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { dep, HEADINGS, HOUSE, pres, zeroRows } from './house'

// Truth: what is written into the sheet.
const RUNS = [dep, pres]
/** The second house leaks more than the first. */
const TIMES = [1, 1.3]
const flowOf = (flow: number, plot: number): number => Number((flow * (TIMES[plot] as number)).toFixed(1))

/** A house with its form and readings; the first so many of each run. */
const house = (plot: number, name: string, volume_m3: number, readings: number): Rows => [
  ['House', name],
  ['Date', day('2026-04-22')],
  ['Internal volume (m³)', volume_m3],
  ['Inside temperature (°C)', HOUSE.indoor_C],
  ['Outside temperature (°C)', HOUSE.outdoor_C],
  ['Barometer (hPa)', HOUSE.barometer_Pa / 100],
  [null],
  ...RUNS.flatMap(
    (run): Rows => [
      [run === dep ? 'Depressurisation' : 'Pressurisation'],
      ...zeroRows(run),
      HEADINGS,
      ...run.readings.slice(0, readings).map(([pressure, flow]) => [pressure, flowOf(flow, plot)]),
      [null],
    ],
  ),
]

const beside = (left: Rows, right: Rows): Rows =>
  Array.from({ length: Math.max(left.length, right.length) }, (_, row) => {
    const [one = null, other = null] = left[row] ?? []
    return [one, other, null, null, ...(right[row] ?? [])]
  })

describe('two houses side by side, each with its form', () => {
  it.each([
    [8, 8],
    [7, 8],
    [8, 7],
    [5, 8],
    [8, 6],
  ])('with %i and %i readings a run', async (left, right) => {
    const bytes = await book({
      Log: beside(house(0, 'Plot 1', HOUSE.volume_m3, left), house(1, 'Plot 2', 388.4, right)),
    })
    const { tests, questions } = interpretLog({ bytes, fileName: 'log.xlsx' }, {})
    expect(questions.map(({ path }) => path)).toEqual([])
    expect(tests.map(({ record }) => [record?.building.name, record?.building.volume_m3])).toEqual([
      ['Plot 1', HOUSE.volume_m3],
      ['Plot 2', 388.4],
    ])
    for (const [index, count] of [left, right].entries())
      expect(
        tests[index]?.record?.runs.map((run) => ({
          before: run.zeroFlowBefore_Pa,
          readings: run.readings.map(({ pressure_Pa, flow_m3_h }) => [pressure_Pa, flow_m3_h]),
        })),
      ).toEqual(
        RUNS.map(({ before, readings }) => ({
          before: [before],
          readings: readings.slice(0, count).map(([pressure, flow]) => [pressure, flowOf(flow, index)]),
        })),
      )
  })
})
