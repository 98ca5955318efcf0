import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import {
  closeTo,
  dep,
  FORM,
  HEADINGS,
  HOUSE,
  n50Of,
  type OddRun,
  pres,
  read,
  sheetOfForm,
  zeroRows,
} from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres] as const
const truth = n50Of(RUNS)
const title = (run: OddRun) => [run === dep ? 'Depressurisation' : 'Pressurisation']
const bothRuns = (of: (run: OddRun) => Rows): Rows =>
  RUNS.flatMap((run): Rows => [title(run), ...of(run), [null]])
const usual = bothRuns((run) => [...zeroRows(run), HEADINGS, ...run.readings])

describe('a line of zero flow', () => {
  it.each<[string, (run: OddRun) => Rows]>([
    [
      'ends before the symbols of results',
      ({ before, after }) => [
        ['Zero flow before', before, 'Pa', null, 'n', 0.65],
        ['Zero flow after', after, 'Pa', null, 'CL', 40.2],
      ],
    ],
    [
      'of both moments ends before them too',
      ({ before, after }) => [
        ['Zero before (Pa)', before, 'Zero after (Pa)', after, 'r²', 0.9993, 'n', 0.652],
      ],
    ],
    [
      'ends before the time it took and the spread',
      ({ before, after }) => [
        ['Zero flow before', before, 'Pa', 30, 's', 'SD', 0.4],
        ['Zero flow after', after, 'Pa', 30, 's', 'SD', 0.5],
      ],
    ],
  ])('%s', async (_, rows) => {
    const { asked, n50 } = read(
      await sheetOfForm(bothRuns((run) => [...rows(run), HEADINGS, ...run.readings])),
    )
    expect(asked).toEqual([])
    close(n50, truth)
  })
})

describe('an example of how to fill in a form', () => {
  it.each(['e.g.', 'Bsp.', 'p. ex.', 'Voorbeeld'])(
    'in the first row, marked "%s", is no reading',
    async (mark) => {
      const { n50, said, record } = read(
        await sheetOfForm(
          bothRuns((run) => [
            ...zeroRows(run),
            ['No', ...HEADINGS],
            [mark, run === dep ? -50 : 50, 1234],
            ...run.readings.map((reading, index) => [index + 1, ...reading]),
          ]),
        ),
      )
      expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
      expect(said.join()).toContain(`the row says "${mark}"`)
      close(n50, truth)
    },
  )

  it('in a column of its own is left out, as far as the zero flow of the second run', async () => {
    const { asked, n50, saidOfFile } = read(
      await book({
        Test: [
          ['Field', 'Value', 'Example'],
          ...FORM.map((row, index) => [
            ...row,
            ['Plot 1', day('2020-01-01'), 250, 20, 8, 1013][index] ?? null,
          ]),
          [null],
          ...bothRuns(({ before, after, readings }) => [
            ['Zero before (Pa)', before, -5],
            ['Zero after (Pa)', after, -5],
            HEADINGS,
            ...readings,
          ]),
        ],
      }),
    )
    expect(asked).toEqual([])
    expect(saidOfFile.join()).toContain('The values below "Example" were left out')
    close(n50, truth)
  })
})

describe('rows called mean, one for each step', () => {
  const sampled =
    (mark: string, isFirst: boolean) =>
    (run: OddRun): Rows => [
      ...zeroRows(run),
      ['', ...HEADINGS],
      ...run.readings.flatMap(([p, q], index): Rows => {
        const samples: Rows = [
          [`${index + 1}.1`, p - 0.8, q - 40],
          [`${index + 1}.2`, p + 0.5, q + 3],
        ]
        return isFirst ? [[mark, p, q], ...samples] : [...samples, [mark, p, q]]
      }),
    ]

  it.each([
    ['mean', false],
    ['Ø', false],
    ['Mittelwert', true],
  ])('"%s" are the readings', async (mark, isFirst) => {
    const { n50, record, said } = read(await sheetOfForm(bothRuns(sampled(mark, isFirst))))
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
    expect(said.join()).toMatch(/one of the values averaged in/)
    close(n50, truth)
  })
})

describe('values of the form', () => {
  const CONDITIONS = { ...HOUSE, indoor_C: 19.1, outdoor_C: 3.4 }

  it('stand behind one label over each of two tests side by side', async () => {
    const block = (run: OddRun, share: number): Rows => [
      title(run),
      ...zeroRows(run),
      HEADINGS,
      ...run.readings.map(([p, q]) => [p, Number((share * q).toFixed(1))]),
    ]
    const beside = (run: OddRun): Rows => {
      const second = block(run, 0.83)
      return block(run, 1).map(([first, next = null], at) => [
        first ?? null,
        next,
        null,
        null,
        ...(second[at] ?? []),
      ])
    }
    const rows: Rows = [
      ['House type B'],
      ['Internal volume (m³)', HOUSE.volume_m3],
      ['', 'Fabric test', null, null, null, 'Acceptance test'],
      ['Date', day('2026-02-17'), null, null, null, day('2026-06-24')],
      ['Inside (°C)', HOUSE.indoor_C, null, null, null, CONDITIONS.indoor_C],
      ['Outside (°C)', HOUSE.outdoor_C, null, null, null, CONDITIONS.outdoor_C],
      ['Barometer (hPa)', HOUSE.barometer_Pa / 100, null, null, null, 998],
      [null],
      ...RUNS.flatMap((run): Rows => [...beside(run), [null]]),
    ]
    const bytes = await book({ Test: rows })
    const [first, second] = ['Fabric test', 'Acceptance test'].map((test) => read(bytes, { test }).record)
    expect(first).toMatchObject({
      test: { date: '2026-02-17', stage: 'fabric' },
      conditions: { indoorTemperature_C: HOUSE.indoor_C, barometricPressure_Pa: HOUSE.barometer_Pa },
    })
    expect(second).toMatchObject({
      building: { volume_m3: HOUSE.volume_m3 },
      test: { date: '2026-06-24', stage: 'acceptance' },
      conditions: { indoorTemperature_C: 19.1, outdoorTemperature_C: 3.4, barometricPressure_Pa: 99_800 },
    })
  })

  it('stand line by line in one cell', async () => {
    const lines = [
      'House: Teasel End',
      'Date: 2026-04-22',
      `Volume: ${HOUSE.volume_m3} m³`,
      'Envelope area: 380 m²',
      `Inside: ${HOUSE.indoor_C} °C`,
      `Outside: ${HOUSE.outdoor_C} °C`,
      `Barometer: ${HOUSE.barometer_Pa / 100} hPa`,
    ]
    const { asked, record, n50 } = read(await book({ Test: [[lines.join('\n')], [null], ...usual] }))
    expect(asked).toEqual([])
    expect(record?.building).toEqual({ name: 'Teasel End', volume_m3: HOUSE.volume_m3, envelopeArea_m2: 380 })
    close(n50, truth)
  })

  it('stand in a line below a line of labels, words among them', async () => {
    const { record } = read(
      await book({
        Test: [
          ['Order no.', 'House', 'Test date', 'Client'],
          ['26-317', 'Teasel End', day('2026-04-22'), 'Mill Homes'],
          [null],
          ...FORM.slice(2),
          [null],
          ...usual,
        ],
      }),
    )
    expect(record).toMatchObject({
      building: { name: 'Teasel End' },
      test: { date: '2026-04-22', client: 'Mill Homes' },
    })
  })

  it('have their accuracy behind them', async () => {
    const rows = FORM.map(([label, value]) =>
      String(label).startsWith('Inside') ? ['Inside', `${value} ± 0.5 °C`] : [label, value],
    )
    const { asked, record } = read(await book({ Test: [...rows, [null], ...usual] } as Record<string, Rows>))
    expect(asked).toEqual([])
    expect(record?.conditions.indoorTemperature_C).toBe(HOUSE.indoor_C)
  })

  it('say in their cell that the air pressure is that at sea level', async () => {
    const rows: Rows = [...FORM.slice(0, 5), ['Barometer', '1017 hPa (sea level)'], ['Altitude', 312, 'm']]
    const { record, said } = read(await book({ Test: [...rows, [null], ...usual] }))
    expect(record?.conditions.barometricPressure_Pa).toBeUndefined()
    expect(record?.building.altitude_m).toBe(312)
    expect(said.join()).toContain('sea level')
  })

  it('of a list of houses have a line of units below its headings', async () => {
    const list: Rows = [
      ['Test', 'House', 'Date', 'Volume', 'Ti', 'Te', 'pB'],
      ['', '', '', 'm³', '°C', '°C', 'hPa'],
      ['A1', 'Nr. 5', day('2026-04-22'), HOUSE.volume_m3, HOUSE.indoor_C, HOUSE.outdoor_C, 1008.4],
      ['A2', 'Nr. 6', day('2026-04-23'), 300, 18, 4, 1001],
    ]
    const readings = (test: string): Rows =>
      RUNS.flatMap(
        ({ direction, before, after, readings }): Rows => [
          [test, direction, 'zero', before],
          ...readings.map((reading) => [test, direction, 'reading', ...reading]),
          [test, direction, 'zero', after],
        ],
      )
    const bytes = await book({
      Test: [
        ...list,
        [null],
        ['Test', 'Mode', 'Kind', 'dp (Pa)', 'q (m³/h)'],
        ...readings('A1'),
        ...readings('A2'),
      ],
    })
    expect(read(bytes).asked).toEqual([])
    expect(read(bytes, { test: 'A2' }).record).toMatchObject({
      building: { volume_m3: 300 },
      test: { date: '2026-04-23' },
      conditions: { indoorTemperature_C: 18, outdoorTemperature_C: 4, barometricPressure_Pa: 100_100 },
    })
  })
})

it('a column of air changes beside the flows is none of them', async () => {
  const { asked, n50 } = read(
    await sheetOfForm(
      bothRuns((run) => [
        ...zeroRows(run),
        [...HEADINGS, 'Flow/vol (1/h)'],
        ...run.readings.map(([p, q]) => [p, q, Number((q / HOUSE.volume_m3).toFixed(3))]),
      ]),
    ),
  )
  expect(asked).toEqual([])
  close(n50, truth)
})
