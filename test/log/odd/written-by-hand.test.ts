import { describe, expect, it } from 'vitest'
import { moistAirDensity, platePressure } from '../generated/truth/air'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const bracketed = (value: number) => `(${Math.abs(value).toFixed(1)})`

describe('pressures in brackets', () => {
  it('are negative where a whole table is written so, and it is said', async () => {
    const { n50, asked, said } = read(
      await sheetOfForm([
        ['Zero flow before (Pa)', bracketed(dep.before)],
        ['Zero flow after (Pa)', bracketed(dep.after)],
        HEADINGS,
        ...dep.readings.map(([p, q]) => [bracketed(p), q]),
      ]),
    )
    expect(asked).toEqual([])
    expect(said.join('\n')).toMatch(/brackets were read as negative/)
    close(n50, n50Of([dep]))
  })

  it('are asked about where only some are', async () => {
    const bytes = await sheetOfForm([
      ['Depressurisation'],
      ...zeroRows(dep),
      HEADINGS,
      ['(44.0)', 999],
      ...dep.readings,
    ])
    expect(read(bytes).asked).toEqual(['readings.remarked'])
    close(read(bytes, { 'readings.remarked': 'leave out' }).n50, n50Of([dep]))
  })
})

describe('readings in pairs in one cell', () => {
  it('are no pressure and flow where they are the extremes of one', async () => {
    const rows = dep.readings.map(([p, q]) => [`${(p - 0.4).toFixed(1)} / ${(p + 0.4).toFixed(1)}`, q])
    const { n50, problems } = read(await sheetOfForm([...zeroRows(dep), ['Pa (min / max)', 'm³/h'], ...rows]))
    expect(n50).toBeUndefined()
    expect(problems.join()).toMatch(/no table of pressures and air flows/)
  })

  it.each([
    ['below a heading for both', ['Pa / m³/h'], (p: number, q: number) => `${p} / ${q}`],
    ['with their units', [], (p: number, q: number) => `${p} Pa  ${q} m³/h`],
    ['with commas', ['dp, Pa; q, m³/h'], (p: number, q: number) => `${p}; ${q}`],
  ] as const)('%s are read', async (_, heading, written) => {
    const { n50, asked } = read(
      await sheetOfForm([
        ['Depressurisation'],
        ...zeroRows(dep),
        [...heading],
        ...dep.readings.map(([p, q]) => [written(p, q)]),
      ]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })
})

it('reads values written as a sentence, and the day in it', async () => {
  const { record, n50, asked } = read(
    await book({
      Test: [
        ['Luftdichtheitsmessung vom 22. April 2026, Haus am Hang'],
        [`Volumen ca. ${HOUSE.volume_m3} m³, innen 20,5 °C, außen 6,5 °C, Luftdruck 1008,4 hPa`],
        ['Nulldruck vor -1,4 Pa / nach -0,9 Pa'],
        ['Δp in Pa', 'V in m³/h'],
        ...dep.readings,
      ],
    }),
  )
  expect(asked).toEqual([])
  expect(record?.test.date).toBe('2026-04-22')
  close(n50, n50Of([dep]))
})

it('takes the unit that stands behind the number in every row', async () => {
  const rows = dep.readings.map(([p, q], index) => [index + 1, p, 'Pa', q / 3.6, 'l/s'])
  const { n50, asked } = read(
    await sheetOfForm([...zeroRows(dep), ['No', 'Pressure', null, 'Flow', null], ...rows]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

describe('zero flow', () => {
  it('in a column of directions belongs to the run it stands at', async () => {
    const phase = (word: string, { before, after, readings }: typeof dep): Rows => [
      ['zero', before, 0],
      ...readings.map(([p, q]) => [word, p, q]),
      ['zero', after, 0],
    ]
    const bytes = await sheetOfForm([['Phase', ...HEADINGS], ...phase('dep', dep), ...phase('press', pres)])
    const { record, n50 } = read(bytes)
    expect(record?.runs.map((run) => [run.zeroFlowBefore_Pa, run.zeroFlowAfter_Pa])).toEqual([
      [[dep.before], [dep.after]],
      [[pres.before], [pres.after]],
    ])
    close(n50, n50Of([dep, pres]))
  })

  it('in two columns below one heading is before and after', async () => {
    const spread = [-0.2, 0.1, 0.3, -0.1, -0.3, 0.2]
    const rows = Array.from({ length: 8 }, (_, index) => [
      ...(dep.readings[index] ?? []),
      null,
      index < 6 ? dep.before + (spread[index] as number) : null,
      index < 6 ? dep.after - (spread[index] as number) : null,
    ])
    const { record, n50 } = read(
      await sheetOfForm([
        [...HEADINGS, null, 'Zero flow pressure (Pa)'],
        [null, null, null, 'pre', 'post'],
        ...rows,
      ]),
    )
    expect(record?.runs[0]?.zeroFlowAfter_Pa).toHaveLength(6)
    close(n50, n50Of([dep]))
  })

  it('is "0 flow" as well', async () => {
    const { n50 } = read(
      await sheetOfForm([
        ['0 flow before', dep.before],
        ['0 flow after', dep.after],
        HEADINGS,
        ...dep.readings,
      ]),
    )
    close(n50, n50Of([dep]))
  })

  it('tells the pressure as measured from the one it is taken off, where the headings do not', async () => {
    const zero = (dep.before + dep.after) / 2
    const { n50, asked, said } = read(
      await sheetOfForm([
        ...zeroRows(dep),
        ['Δp1 (Pa)', 'Δp2 (Pa)', 'Flow (m³/h)'],
        ...dep.readings.map(([p, q]) => [Number((p - zero).toFixed(1)), p, q]),
      ]),
    )
    expect(asked).toEqual([])
    expect(said.join('\n')).toMatch(/differ by the zero-flow pressure/)
    close(n50, n50Of([dep]))
  })
})

describe('the same or refused readings', () => {
  it('on a sheet that calculates are read once', async () => {
    const copied = dep.readings.map(([p, q], index) => [
      { formula: `Input!A${11 + index}`, result: p },
      { formula: `Input!B${11 + index}/3600`, result: q / 3600 },
    ])
    const { tests, n50 } = read(
      await book({
        Input: [...FORM, [null], ...zeroRows(dep), HEADINGS, ...dep.readings],
        Report: [['Test report'], ['Pressure (Pa)', 'Flow (m³/s)'], ...copied],
      }),
    )
    expect(tests).toBe(1)
    close(n50, n50Of([dep]))
  })

  it.each(['Test 1: invalid, window open', 'Run 1, stopped: door blew open'])(
    'titled "%s" are left out',
    async (title) => {
      const other = dep.readings.map(([p, q]) => [p, q * 1.5])
      const { tests, n50 } = read(
        await sheetOfForm([
          [title],
          ...zeroRows(dep),
          HEADINGS,
          ...other,
          [null],
          ['Test 2'],
          ...zeroRows(dep),
          HEADINGS,
          ...dep.readings,
        ]),
      )
      expect(tests).toBe(1)
      close(n50, n50Of([dep]))
    },
  )
})

it.each(['Nm³/h', 'scfm'])('asks what flows in %s are flows of', async (unit) => {
  const bytes = await sheetOfForm([...zeroRows(dep), ['p', 'Q'], ['Pa', unit], ...dep.readings])
  expect(read(bytes).asked).toContain('flowStatedAt')
})

describe('a flow device', () => {
  const plate = { label: '1', coefficient: 61.2, exponent: 0.512 }
  const density = moistAirDensity(HOUSE.indoor_C, HOUSE.barometer_Pa)
  const rows: Rows = dep.readings.map(([p, q]) => [p, Number(platePressure(q, plate, density).toFixed(2))])

  it.each([
    ['as a formula', [['Fan: Q = 61.2 · Δp^0.512 (m³/h, Pa)']]],
    [
      'as two values',
      [
        ['Fan C (m³/h·Pa^n)', 61.2],
        ['Fan n', 0.512],
      ],
    ],
    [
      'as a table along lines',
      [
        ['Fan range', 1],
        ['C (m³/h)', 61.2],
        ['n', 0.512],
      ],
    ],
  ] as [string, Rows][])('given %s turns fan pressures into flows', async (_, device) => {
    const { n50, asked } = read(
      await sheetOfForm([...zeroRows(dep), ['Building (Pa)', 'Fan (Pa)'], ...rows, [null], ...device]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })
})
