import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, type OddRun, pres, read, zeroRows } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres]
const sheet = (rows: Rows) => book({ Test: [...FORM, [null], ...rows] })
const bothRuns = (of: (run: OddRun) => Rows): Rows =>
  RUNS.flatMap(
    (run): Rows => [
      [run === dep ? 'Depressurisation' : 'Pressurisation'],
      ...of(run),
      HEADINGS,
      ...run.readings,
    ],
  )

describe('zero flow as firms write it', () => {
  it('behind a limit in its label is the number in the next cell', async () => {
    const bytes = await sheet(
      bothRuns(({ before, after }) => [
        ['Zero flow [Pa] start (max. 5 Pa)', before],
        ['Zero flow [Pa] end (≤ 5 Pa)', after],
      ]),
    )
    const { asked, n50 } = read(bytes)
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('with its uncertainty behind ± is not averaged with it', async () => {
    const { n50 } = read(
      await sheet(
        bothRuns(({ before, after }) => [
          ['Zero before Pa', before, '±', 0.2],
          ['Zero after Pa', after, '±', 0.2],
        ]),
      ),
    )
    close(n50, n50Of(RUNS))
  })

  it('below least, greatest and mean is the mean, in words of any language', async () => {
    const line = (label: string, mean: number) => [label, mean - 0.4, mean + 0.7, mean]
    const { asked, n50 } = read(
      await sheet([
        ['Pression naturelle (Pa)', 'mini', 'maxi', 'moyenne'],
        line('Dépression avant', dep.before),
        line('Dépression après', dep.after),
        line('Surpression avant', pres.before),
        line('Surpression après', pres.after),
        [null],
        ...bothRuns(() => []),
      ]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('between the runs ends the first and begins the second', async () => {
    const [between] = [-0.2] as [number]
    const { asked, n50 } = read(
      await sheet([
        [
          'Zero-flow pressure (Pa)',
          'at start',
          dep.before,
          'between the runs',
          between,
          'at end',
          pres.after,
        ],
        ...bothRuns(() => []),
      ]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([{ ...dep, after: between } as OddRun, { ...pres, before: between } as OddRun]))
  })

  it('in a footnote without a word of the trade is asked about', async () => {
    const { asked, texts } = read(
      await sheet([...bothRuns(() => []), [null], ['* house at rest: -1.4 Pa at start, -0.9 Pa at end']]),
    )
    expect(asked).toEqual(['runs[0].zeroFlow', 'runs[1].zeroFlow'])
    expect(texts.join()).toContain('house at rest')
  })

  it('in a footnote is named where other zero flow was read', async () => {
    const bytes = await sheet([...bothRuns(zeroRows), [null], ['* house at rest: -2.6 Pa']])
    const { findings } = interpretLog({ bytes, fileName: 'log.xlsx' })
    expect(findings.map(({ message }) => message).join()).toContain('house at rest')
  })
})

describe('a table over a page break', () => {
  const [first, rest] = [dep.readings.slice(0, 4), dep.readings.slice(4)]

  it('is one run', async () => {
    const { tests } = interpretLog({
      bytes: await sheet([
        ['Depressurisation'],
        ...zeroRows(dep),
        HEADINGS,
        ...first,
        ['Page 1 of 2'],
        ['Air test, continued'],
        HEADINGS,
        ...rest,
      ]),
      fileName: 'log.xlsx',
    })
    expect(tests.length).toBe(1)
    expect(tests[0]?.record?.runs[0]?.readings.length).toBe(dep.readings.length)
  })

  it('whose second part begins again at the top is another test', async () => {
    const { tests } = interpretLog({
      bytes: await sheet([
        ['Depressurisation'],
        ...zeroRows(dep),
        HEADINGS,
        ...dep.readings,
        ['Page 1 of 2'],
        HEADINGS,
        ...dep.readings.map(([pressure, flow]) => [pressure, flow * 0.8]),
      ]),
      fileName: 'log.xlsx',
    })
    expect(tests.length).toBe(2)
  })
})

describe('a list with a line for each direction', () => {
  it('numbered "1a" and "1b" is one test of the house in both lines', async () => {
    const line = (number: string, run: OddRun) => [
      number,
      'Pear Tree Barn',
      day('2026-04-22'),
      HOUSE.volume_m3,
      HOUSE.indoor_C,
      HOUSE.outdoor_C,
      run === dep ? 'Unterdruck' : 'Überdruck',
      run.before,
      run.after,
      ...run.readings.flat(),
    ]
    const head = ['Nr.', 'Objekt', 'Messdatum', 'Volumen m³', 't innen °C', 't außen °C', 'Richtung']
    const pairs = dep.readings.flatMap((_, index) => [`Δp${index + 1} Pa`, `V̇${index + 1} m³/h`])
    const { tests } = interpretLog({
      bytes: await book({
        2026: [
          [...head, 'Ruhe vor Pa', 'Ruhe nach Pa', ...pairs],
          line('1a', dep),
          line('1b', pres),
          line('2a', dep),
          line('2b', pres),
        ],
      }),
      fileName: 'log.xlsx',
    })
    expect(tests.length).toBe(2)
    for (const { record } of tests) {
      expect(record?.runs.map(({ direction }) => direction)).toEqual(['depressurisation', 'pressurisation'])
      expect(record?.runs.map((run) => run.zeroFlowBefore_Pa)).toEqual([[dep.before], [pres.before]])
    }
  })
})

describe('two tests of a house', () => {
  it('side by side have their own temperatures below labels in front of both', async () => {
    const { tests } = interpretLog({
      bytes: await book({
        'Burn Farm': [
          ['Burn Farm, volume 412.6 m³'],
          [null, 'Interim', null, 'Final'],
          ['Date', day('2026-03-02'), null, day('2026-06-09')],
          ['Inside °C', 19.4, null, 22.8],
          ['Outside °C', 7.5, null, 9.9],
          ['Depressurisation', 'Pa', 'm³/h', 'Pa', 'm³/h'],
          ...dep.readings.map(([pressure, flow], index) => [
            index + 1,
            pressure,
            flow,
            pressure,
            Math.round(flow * 0.8),
          ]),
        ],
      }),
      fileName: 'log.xlsx',
    })
    expect(tests.map(({ record }) => record?.conditions.indoorTemperature_C)).toEqual([19.4, 22.8])
    expect(tests.map(({ record }) => record?.test.date)).toEqual(['2026-03-02', '2026-06-09'])
  })

  it('below each other have the days of their titles', async () => {
    const block = (title: string, date: string): Rows => [
      [null],
      [title, day(date)],
      ['Depressurisation'],
      ...zeroRows(dep),
      HEADINGS,
      ...dep.readings,
    ]
    const { tests } = interpretLog({
      bytes: await book({
        Test: [
          ...FORM.filter(([label]) => label !== 'Date'),
          ...block('First test', '2026-03-02'),
          ...block('Second test (after sealing)', '2026-06-09'),
        ],
      }),
      fileName: 'log.xlsx',
    })
    expect(tests.map(({ record }) => record?.test.date)).toEqual(['2026-03-02', '2026-06-09'])
  })
})

describe('the name of a building', () => {
  it.each([
    ['beside a project', [['Project', 'Harlow phase 3', 'House name', 'Willow Barn']], 'Willow Barn'],
    [
      'beside a number of the firm',
      [
        ['Job', '26-014'],
        ['Address', '14 Mill Lane'],
      ],
      '14 Mill Lane',
    ],
  ] as [string, Rows, string][])('%s is the house', async (_, lines, name) => {
    const form = FORM.filter(([label]) => label !== 'House')
    const { record } = read(
      await book({
        Test: [...lines, ...form, ['Depressurisation'], ...zeroRows(dep), HEADINGS, ...dep.readings],
      }),
    )
    expect(record?.building.name).toBe(name)
  })
})

describe('what is no part of the test', () => {
  it('is a check with a known opening above the runs, and is named', async () => {
    // An opening of 200 cm² by the orifice law, in m³/h: 0.61 · 0.02 m² · √(2 Δp / 1.2) · 3600.
    const check = [50, 40, 30, 20].map((pressure) => [
      pressure,
      Math.round(0.61 * 0.02 * Math.sqrt((2 * pressure) / 1.2) * 3600),
    ])
    const bytes = await sheet([
      ['Check with a known opening of 200 cm²'],
      ['Pa', 'm³/h'],
      ...check,
      [null],
      ...bothRuns(zeroRows),
    ])
    const { tests, findings } = interpretLog({ bytes, fileName: 'log.xlsx' })
    expect(tests.length).toBe(1)
    expect(findings.map(({ message }) => message).join()).toContain('Check with a known opening')
    close(read(bytes).n50, n50Of(RUNS))
  })

  it('is a tank of some litres beside the volume', async () => {
    const { asked, n50 } = read(await sheet([['Tank', 300, 'l'], ...bothRuns(zeroRows)]))
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })
})

describe('a list of readings that repeats the values of its test', () => {
  it('gives them, and does not say that they were not used', async () => {
    const lines = RUNS.flatMap((run) => {
      const own = [HOUSE.volume_m3, HOUSE.indoor_C, HOUSE.outdoor_C, run.direction]
      return [
        [...own, 'zero before', run.before, null],
        ...run.readings.map(([pressure, flow]) => [...own, 'reading', pressure, flow]),
        [...own, 'zero after', run.after, null],
      ]
    })
    const head = ['volume_m3', 't_in_c', 't_out_c', 'direction', 'kind', 'pressure_pa', 'flow_m3h']
    const bytes = await book({ export: [head, ...lines] })
    const { record, asked } = read(bytes, { 'test.date': '2026-04-22', barometer: '1008.4 hPa' })
    expect(asked).toEqual([])
    expect(record?.building.volume_m3).toBe(HOUSE.volume_m3)
    expect(record?.conditions.indoorTemperature_C).toBe(HOUSE.indoor_C)
    const said = interpretLog({ bytes, fileName: 'log.xlsx' }).tests.flatMap(({ findings }) => findings)
    expect(said.map(({ message }) => message).join()).not.toContain('volume_m3')
  })
})

describe('a run is not lost', () => {
  it.each([
    ['left blank', null],
    ['called "not measured"', 'not measured'],
  ])('where the zero flow after its readings was %s', async (_, after) => {
    const { record } = read(
      await sheet(
        bothRuns((run) => [
          ['Zero before (Pa)', run.before],
          ['Zero after (Pa)', after],
        ]),
      ),
    )
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual(
      RUNS.map((run) => run.readings.length),
    )
    expect(record?.runs.map((run) => run.zeroFlowBefore_Pa)).toEqual([[dep.before], [pres.before]])
  })

  it('nor read twice where its flows are written again in l/s', async () => {
    const again = dep.readings.map(([pressure, flow]) => [pressure, Number((flow / 3.6).toFixed(2))])
    const bytes = await sheet([
      ['Depressurisation'],
      ...zeroRows(dep),
      HEADINGS,
      ...dep.readings,
      [null],
      ['Same in l/s'],
      ['Pa', 'l/s'],
      ...again,
    ])
    const { tests } = interpretLog({ bytes, fileName: 'log.xlsx' })
    expect(tests.map(({ record }) => record?.runs.length)).toEqual([1])
  })
})

describe('areas and temperatures of several kinds', () => {
  it('are the sum of the floors, and what was measured', async () => {
    const form = FORM.filter(([label]) => !String(label).startsWith('Outside'))
    const { record } = read(
      await book({
        Test: [
          ...form,
          ['Thermostat set to °C', 22.5],
          ['Measured outside °C', HOUSE.outdoor_C],
          ['Floor area GF m²', 82],
          ['Floor area 1F m²', 70.5],
          ['Floor area 2F m²', 28],
          ['Floor area total m²', 180.5],
          ...bothRuns(zeroRows),
        ],
      }),
    )
    expect(record?.building.floorArea_m2).toBe(180.5)
    expect(record?.conditions.outdoorTemperature_C).toBe(HOUSE.outdoor_C)
  })
})
