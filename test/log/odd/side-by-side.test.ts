import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, type OddRun, pres, read, sheetOfForm } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres] as const
const title = (run: OddRun) => [run === dep ? 'Depressurisation' : 'Pressurisation']
const zero = ({ before, after }: OddRun): Rows => [
  ['Zero before (Pa)', before],
  ['Zero after (Pa)', after],
]
const usual = RUNS.flatMap((run): Rows => [title(run), ...zero(run), HEADINGS, ...run.readings, [null]])
const without = { ...HOUSE, barometer_Pa: 101_325 }

it('zero flow at the four sides of a house is the mean of all sides, "N" and "S" too', async () => {
  const sides = (mean: number) => [mean + 0.5, mean - 0.3, mean - 0.4, mean + 0.2]
  const { asked, n50 } = read(
    await sheetOfForm(
      RUNS.flatMap(
        (run): Rows => [
          title(run),
          ['Zero flow (Pa)', 'N', 'E', 'S', 'W'],
          ['before', ...sides(run.before)],
          ['after', ...sides(run.after)],
          HEADINGS,
          ...run.readings,
          [null],
        ],
      ),
    ),
  )
  expect(asked).toEqual([])
  close(n50, n50Of(RUNS))
})

it('before and after sealing, side by side, are two tests with their zero flow each', async () => {
  const sealed = (run: OddRun): OddRun =>
    ({
      ...run,
      before: run.before + 0.4,
      after: run.after + 0.4,
      readings: run.readings.map(([p, q]) => [Number((p + 0.4).toFixed(1)), Number((q * 0.8).toFixed(1))]),
    }) as unknown as OddRun
  const bytes = await book({
    Test: [
      ['House', 'Pear Tree Barn'],
      ['Volume (m³)', HOUSE.volume_m3],
      [null, 'Before sealing', null, 'After sealing'],
      ['Date', day('2026-04-22'), null, day('2026-05-06')],
      ['Temp in °C', HOUSE.indoor_C, null, HOUSE.indoor_C],
      ['Temp out °C', HOUSE.outdoor_C, null, HOUSE.outdoor_C],
      ...RUNS.flatMap((run): Rows => {
        const later = sealed(run)
        return [
          title(run),
          ['Zero before Pa', run.before, null, later.before],
          ['Zero after Pa', run.after, null, later.after],
          [null, 'Pa', 'm³/h', 'Pa', 'm³/h'],
          ...run.readings.map((reading, at) => [at + 1, ...reading, ...(later.readings[at] ?? [])]),
          [null],
        ]
      }),
    ],
  })
  expect(read(bytes).tests).toBe(2)
  expect(read(bytes).asked).toEqual([])
  close(read(bytes, { test: '1' }).n50, n50Of(RUNS, without))
  close(read(bytes, { test: '2' }).n50, n50Of(RUNS.map(sealed), without))
})

it('the sheet a chart is drawn from, with both runs in one list, is no second test', async () => {
  const chart = RUNS.flatMap(({ before, after, readings }) =>
    readings.map(([p, q]) => [Math.abs(p - (before + after) / 2), q, Math.log(q)]),
  )
  const { tests, n50, asked } = read(
    await book({ Test: [...FORM, [null], ...usual], 'Chart data': [['|dp|', 'q', 'ln q'], ...chart] }),
  )
  expect(tests).toBe(1)
  expect(asked).toEqual([])
  close(n50, n50Of(RUNS))
})

it('the mean of one sign in front of the mean of all is none', async () => {
  const { asked, n50 } = read(
    await sheetOfForm(
      RUNS.flatMap(
        (run): Rows => [
          title(run),
          ['P0+ moyen (Pa)', 0.2, 'P0- moyen (Pa)', -1.9, 'P0 moyen avant (Pa)', run.before],
          ['P0 moyen après (Pa)', run.after],
          HEADINGS,
          ...run.readings,
          [null],
        ],
      ),
    ),
  )
  expect(asked).toEqual([])
  close(n50, n50Of(RUNS))
})

describe('temperatures as they are typed', () => {
  it.each([
    ['20,5 ºC', '6,5 ºC'],
    ['20.5°', '6.5C'],
    ['\u00a020.5 °C ', ' 6.5\u00a0°C'],
  ])('%s and %s', async (indoor, outdoor) => {
    const form = FORM.map(([label, value]) =>
      label === 'Inside temperature (°C)'
        ? ['Inside temperature', indoor]
        : label === 'Outside temperature (°C)'
          ? ['Outside temperature', outdoor]
          : [label ?? null, value ?? null],
    )
    const { record, asked } = read(await book({ Test: [...form, [null], ...usual] }))
    expect(asked).toEqual([])
    expect(record?.conditions).toMatchObject({ indoorTemperature_C: 20.5, outdoorTemperature_C: 6.5 })
  })
})
