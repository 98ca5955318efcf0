import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, type OddRun, pres, read, zeroRows } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres]
const titleOf = (run: OddRun) => (run === dep ? 'Depressurisation' : 'Pressurisation')
const table = (run: OddRun): Rows => [...zeroRows(run), HEADINGS, ...run.readings]
const bothRuns: Rows = RUNS.flatMap((run): Rows => [[titleOf(run)], ...table(run), [null]])

describe('one house on several days', () => {
  it('in one list is a test for each day', async () => {
    const line = (date: string, factor: number) =>
      RUNS.flatMap((run) =>
        run.readings.map(([p, q]) => [
          day(date),
          'School',
          HOUSE.volume_m3,
          HOUSE.indoor_C,
          HOUSE.outdoor_C,
          run === dep ? 'UD' : 'ÜD',
          p,
          Number((q * factor).toFixed(1)),
        ]),
      )
    const bytes = await book({
      List: [
        ['Date', 'Building', 'Volume (m³)', 'Ti (°C)', 'Te (°C)', 'Direction', ...HEADINGS],
        ...line('2026-05-04', 1),
        ...line('2026-05-18', 0.8),
      ],
    })
    const { tests } = interpretLog({ bytes, fileName: 'log.xlsx' })
    expect(
      tests.map(({ record }) => [
        record?.building.name,
        record?.test.date,
        record?.runs.map((run) => run.readings.length),
      ]),
    ).toEqual([
      ['School', '2026-05-04', [8, 8]],
      ['School', '2026-05-18', [8, 8]],
    ])
  })

  it('has its date in the title of the log', async () => {
    const bytes = await book({
      Test: [
        ['Airtightness test of 2026-04-22'],
        FORM[0] as Rows[number],
        ...FORM.slice(2),
        [null],
        ...bothRuns,
      ],
    })
    const { asked, record, n50 } = read(bytes)
    expect([asked, record?.test.date]).toEqual([[], '2026-04-22'])
    close(n50, n50Of(RUNS))
  })
})

describe('sheets that repeat or share a test', () => {
  it('in whole numbers, for printing, are read once', async () => {
    const bytes = await book({
      Input: [...FORM, [null], ...bothRuns],
      Print: RUNS.flatMap(
        (run): Rows => [
          [titleOf(run)],
          HEADINGS,
          ...run.readings.map(([p, q]) => [Math.round(p), Math.round(q)]),
        ],
      ),
    })
    const { asked, tests, n50 } = read(bytes)
    expect([tests, asked]).toEqual([1, []])
    close(n50, n50Of(RUNS))
  })

  it('for each direction, with volumes that differ, are one test and asked about', async () => {
    const form = (volume: number): Rows => [
      ...FORM.slice(0, 2),
      ['Internal volume (m³)', volume],
      ...FORM.slice(3),
    ]
    const bytes = await book({
      Depressurisation: [...form(HOUSE.volume_m3), [null], ...table(dep)],
      Pressurisation: [...form(HOUSE.volume_m3 + 54), [null], ...table(pres)],
    })
    const { asked, tests } = read(bytes)
    expect([tests, asked]).toEqual([1, ['building.volume_m3']])
  })

  it('that report what the readings gave hold no readings', async () => {
    const bytes = await book({
      Result: [
        ...FORM,
        ['', 'Depressurisation', 'Pressurisation'],
        ['C (m³/(h·Pa^n))', 41.7, 41.7],
        ['n', 0.644, 0.644],
        ['V50 (m³/h)', 517.7, 517.7],
      ],
      Data: bothRuns,
    })
    const { asked, tests, n50 } = read(bytes)
    expect([tests, asked]).toEqual([1, []])
    close(n50, n50Of(RUNS))
  })
})

describe('values for both in one place', () => {
  it('zero flow of each direction in one text is parted', async () => {
    const text = `Zero flow (Pa): depressurisation ${dep.before} and ${dep.after}, pressurisation ${pres.before} and ${pres.after}`
    const bytes = await book({
      Test: [
        ...FORM,
        [text],
        [null],
        ...RUNS.flatMap((run): Rows => [[titleOf(run)], HEADINGS, ...run.readings, [null]]),
      ],
    })
    const { asked, n50 } = read(bytes)
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('temperatures at start and end are averaged', async () => {
    const form: Rows = [
      ...FORM.slice(0, 3),
      ['Inside temperature start / end (°C)', HOUSE.indoor_C - 0.5, HOUSE.indoor_C + 0.5],
      ['Outside temperature start / end (°C)', HOUSE.outdoor_C + 0.3, HOUSE.outdoor_C - 0.3],
      FORM[5] as Rows[number],
    ]
    const { asked, n50 } = read(await book({ Test: [...form, [null], ...bothRuns] }))
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })
})
