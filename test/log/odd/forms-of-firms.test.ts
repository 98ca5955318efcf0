import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const BOTH = n50Of([dep, pres])

describe('more of how firms write zero flow', () => {
  const both: Rows = [
    ['Depressurisation', null, null, 'Pressurisation', null],
    [...HEADINGS, null, ...HEADINGS],
  ]
  const readings: Rows = dep.readings.map((reading, index) => [
    ...reading,
    null,
    ...(pres.readings[index] ?? []),
  ])

  it('as a line with its label in a line of its own over both blocks', async () => {
    const line = (which: 'before' | 'after'): Rows => [
      [`Zero flow ${which}`, null, null, `Zero flow ${which}`],
      [dep[which], null, null, pres[which]],
    ]
    const { n50, asked } = read(
      await sheetOfForm([...both, ...line('before'), ...readings, ...line('after')]),
    )
    expect(asked).toEqual([])
    close(n50, BOTH)
  })

  it('with how long it was taken behind it', async () => {
    const lines = [dep, pres].flatMap((run) => [
      [`Zero flow ${run.direction}, before`, run.before, 'Pa', '30 s'],
      [`Zero flow ${run.direction}, after`, run.after, 'Pa', '30 s'],
    ])
    const { n50, asked, problems } = read(await sheetOfForm([...lines, [null], ...both, ...readings]))
    expect([asked, problems]).toEqual([[], []])
    close(n50, BOTH)
  })

  it('in three columns each of a list with one row a test, and the letter of the direction in front', async () => {
    const numbers = [1, 2, 3]
    const headings = ['D', 'P'].flatMap((letter) => [
      ...numbers.map((at) => `${letter} zero before ${at} Pa`),
      ...dep.readings.flatMap((_, at) => [`${letter} ${at + 1} Pa`, `${letter} ${at + 1} m3/h`]),
      ...numbers.map((at) => `${letter} zero after ${at} Pa`),
    ])
    const values = [dep, pres].flatMap((run) => [
      ...[-0.2, 0.2, 0].map((off) => Number((run.before + off).toFixed(1))),
      ...run.readings.flat(),
      ...[0.1, -0.1, 0].map((off) => Number((run.after + off).toFixed(1))),
    ])
    const air = [HOUSE.indoor_C, HOUSE.outdoor_C, HOUSE.barometer_Pa / 100]
    const row = (name: string, volume: number) => [name, day('2026-07-11'), volume, ...air, ...values]
    const bytes = await book({
      Wide: [
        ['Ref', 'Date', 'Vol m3', 'T in °C', 'T out °C', 'Baro mbar', ...headings],
        row('W-101', HOUSE.volume_m3),
        row('W-102', 500),
      ],
    })
    const { n50, asked, record } = read(bytes, { test: 'W-101' })
    expect(asked).toEqual([])
    expect(record?.runs.map(({ zeroFlowBefore_Pa }) => zeroFlowBefore_Pa?.length)).toEqual([3, 3])
    close(n50, BOTH)
  })
})

it('steps of several rows may have the direction in their name', async () => {
  const rows = dep.readings.flatMap(([p, q], index) =>
    [-1, 1].map((off) => [`depressurisation ${index + 1}`, p + off * 0.2, q * (1 + off * 0.003)]),
  )
  const { record, n50 } = read(
    await sheetOfForm([
      ['Step', ...HEADINGS],
      ['depressurisation zero before', dep.before, null],
      ...rows,
      ['depressurisation zero after', dep.after, null],
    ]),
  )
  expect(record?.runs[0]?.readings).toHaveLength(dep.readings.length)
  close(n50, n50Of([dep]))
})

it('the humidity behind a temperature is read, and a percentage needs no note', async () => {
  const { record, said } = read(
    await book({
      Test: [
        ['House', 'Pear Tree Barn'],
        ['Date', day('2026-04-22')],
        ['Internal volume (m³)', HOUSE.volume_m3],
        ['Enclosure area', 480, 'm²'],
        ['Indoor', HOUSE.indoor_C, '°C', 45, '% RH'],
        ['Outdoor', HOUSE.outdoor_C, '°C', 80, '%'],
        ['Barometer (hPa)', HOUSE.barometer_Pa / 100],
        ['Depressurisation'],
        ...zeroRows(dep),
        HEADINGS,
        ...dep.readings,
      ],
    }),
  )
  expect(record?.conditions).toMatchObject({ indoorRelativeHumidity: 0.45, outdoorRelativeHumidity: 0.8 })
  expect(record?.building.envelopeArea_m2).toBe(480)
  expect(said.filter((message) => message.includes('%'))).toEqual([])
})

describe('what stands under the wrong heading', () => {
  const exchanged = async () =>
    sheetOfForm([['Depressurisation'], ...zeroRows(dep), ['Flow (m³/h)', 'Pressure (Pa)'], ...dep.readings])

  it('is asked where only the exchanged columns follow a leakage curve', async () => {
    const { asked, n50 } = read(await exchanged())
    expect([asked, n50]).toEqual([['pressure.column'], undefined])
  })

  it('is read as answered', async () => {
    const { asked, n50 } = read(await exchanged(), { 'pressure.column': 'Flow (m³/h)' })
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })
})

it('a long remark that speaks of leaving something out is asked about', async () => {
  const rows: Rows = dep.readings.map((reading, index) =>
    index === 2 ? [...reading, 'repeated, the first attempt at 55 Pa was discarded'] : [...reading],
  )
  const bytes = await sheetOfForm([...zeroRows(dep), [...HEADINGS, 'Remark'], ...rows])
  expect(read(bytes).asked).toEqual(['readings.remarked'])
  close(read(bytes, { 'readings.remarked': 'read' }).n50, n50Of([dep]))
})

it('the unit of the flows may stand in a cell of its own behind "Flow unit"', async () => {
  const { n50, asked } = read(
    await sheetOfForm([
      ['Flow unit', 'l/s'],
      ['Pressure unit', 'Pa'],
      ...zeroRows(dep),
      ['Pressure', 'Flow'],
      // 1 l/s is 3.6 m³/h.
      ...dep.readings.map(([p, q]) => [p, q / 3.6]),
    ]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

it('zones that are tested one by one are no rooms of one house', async () => {
  const block = (name: string, share: number): Rows => [
    [name],
    ['Depressurisation', null, null, 'Pressurisation'],
    [...HEADINGS, null, ...HEADINGS],
    ['zero before'],
    [dep.before, null, null, pres.before],
    ...dep.readings.map(([p, q], index) => {
      const [other, flow] = pres.readings[index] ?? [0, 0]
      return [p, q * share, null, other, flow * share]
    }),
    ['zero after'],
    [dep.after, null, null, pres.after],
    [null],
  ]
  const bytes = await book({
    Test: [
      ['School extension', null, 'Date', day('2026-06-25')],
      ['Zone', 'Volume m³', 'Envelope m²'],
      ['Zone A', 800, 700],
      ['Zone B', 950, 790],
      [
        'T in',
        HOUSE.indoor_C,
        '°C',
        'T out',
        HOUSE.outdoor_C,
        '°C',
        'Barometer',
        HOUSE.barometer_Pa / 100,
        'hPa',
      ],
      [null],
      ...block('Zone A', 1),
      ...block('Zone B', 1.3),
    ],
  })
  const [a, b] = ['1', '2'].map((test) => read(bytes, { test }))
  expect([a?.asked, b?.asked]).toEqual([[], []])
  expect([a, b].map((one) => [one?.record?.building.name, one?.record?.building.volume_m3])).toEqual([
    ['Zone A', 800],
    ['Zone B', 950],
  ])
  expect(a?.record?.runs.map(({ zeroFlowAfter_Pa }) => zeroFlowAfter_Pa)).toEqual([[dep.after], [pres.after]])
})
