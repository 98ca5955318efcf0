import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, HEADINGS, HOUSE, n50Of, type OddRun, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const BOTH = n50Of([dep, pres])

describe('zero flow in a line of the form', () => {
  it('has the moment of each value behind it', async () => {
    const block = (run: OddRun, title: string): Rows => [
      [title],
      ['Natural pressure difference', run.before, 'Pa before', run.after, 'Pa after'],
      HEADINGS,
      ...run.readings,
      [null],
    ]
    const { n50, asked } = read(
      await sheetOfForm([...block(dep, 'Depressurisation'), ...block(pres, 'Pressurisation')]),
    )
    expect(asked).toEqual([])
    close(n50, BOTH)
  })

  it('is no line of readings that are written across, in Dutch', async () => {
    const block = (run: OddRun, title: string): Rows => [
      [title],
      ['Nuldruk voor', run.before, 'na', run.after, 'Pa'],
      ['Drukverschil [Pa]', ...run.readings.map(([pressure]) => pressure)],
      ['Luchtvolumestroom [m³/h]', ...run.readings.map(([, flow]) => flow)],
      [null],
    ]
    const { record, asked } = read(
      await sheetOfForm([...block(dep, 'Onderdruk'), ...block(pres, 'Overdruk')]),
    )
    expect(asked).toEqual([])
    expect(
      record?.runs.map(({ zeroFlowBefore_Pa, zeroFlowAfter_Pa }) => [zeroFlowBefore_Pa, zeroFlowAfter_Pa]),
    ).toEqual([dep, pres].map(({ before, after }) => [[before], [after]]))
  })

  it('has its labels below, right above the headings of the readings', async () => {
    const block = (run: OddRun, title: string): Rows => [
      [title],
      [run.before, run.after],
      ['Zero flow at the start (Pa)', 'Zero flow at the end (Pa)'],
      HEADINGS,
      ...run.readings,
      [null],
    ]
    const { n50, asked } = read(
      await book({
        Test: [
          ['Pear Tree Barn', day('2026-04-22'), HOUSE.volume_m3],
          ['House', 'Date of the test', 'Internal volume (m³)'],
          [HOUSE.indoor_C, HOUSE.outdoor_C, HOUSE.barometer_Pa / 100],
          ['Inside temperature (°C)', 'Outside temperature (°C)', 'Barometer (hPa)'],
          [null],
          ...block(dep, 'Depressurisation'),
          ...block(pres, 'Pressurisation'),
        ],
      }),
    )
    expect(asked).toEqual([])
    close(n50, BOTH)
  })
})

describe('several tests on one sheet', () => {
  it('keep to the values above their own readings, though the next test begins right below', async () => {
    const block = (plot: string, volume: number, share: number): Rows => [
      [null],
      [plot, null, 'Volume', volume, 'm³', 'Indoor', HOUSE.indoor_C, '°C'],
      ['Zero', dep.before, dep.after],
      HEADINGS,
      ...dep.readings.map(([p, q], index) => [p, q * share * (1 + (index % 3) * (share - 1) * 0.02)]),
    ]
    const bytes = await book({
      Test: [
        ['Elm Fields', null, 'Test day', day('2026-06-11')],
        [`Outside ${HOUSE.outdoor_C} °C, barometer ${HOUSE.barometer_Pa / 100} hPa`],
        ...block('Plot 21', 320, 1.0),
        ...block('Plot 22', 340, 1.13),
        ...block('Plot 23', 360, 1.4),
      ],
    })
    const volumes = ['1', '2', '3'].map((test) => read(bytes, { test }).record?.building.volume_m3)
    expect([read(bytes).asked, volumes]).toEqual([[], [320, 340, 360]])
  })

  it('side by side take the date over their own columns', async () => {
    const bytes = await book({
      Test: [
        ['Pear Tree Barn', null, null, 'First test', null, 'After sealing'],
        [`Volume ${HOUSE.volume_m3} m³`],
        ['Date', null, null, day('2026-04-22'), null, day('2026-05-06')],
        [
          `Inside ${HOUSE.indoor_C} °C`,
          `Outside ${HOUSE.outdoor_C} °C`,
          `Barometer ${HOUSE.barometer_Pa / 100} hPa`,
        ],
        [null],
        ['Depressurisation only', null, null, ...HEADINGS, ...HEADINGS],
        ['zero before', null, null, dep.before, null, dep.before],
        ...dep.readings.map(([p, q], index) => [`reading ${index + 1}`, null, null, p, q, p, q * 0.8]),
        ['zero after', null, null, dep.after, null, dep.after],
      ],
    })
    const dates = ['1', '2'].map((test) => read(bytes, { test }).record?.test.date)
    expect([read(bytes).asked, dates]).toEqual([[], ['2026-04-22', '2026-05-06']])
    close(read(bytes, { test: '1' }).n50, n50Of([dep]))
  })
})

describe('boxes', () => {
  const form = (row: Rows[number]): Rows => [row, ...zeroRows(dep), HEADINGS, ...dep.readings]
  it.each<[string, Rows[number]]>([
    ['in front of the words of each cell', ['Direction', '☐ pressurisation', '☒ depressurisation']],
    ['in one text', ['☐ pressurisation  ☒ depressurisation']],
    ['behind their words', ['Direction: pressurisation [ ]  depressurisation [x]']],
    ['in cells of their own', ['☐', 'Pressurisation', '☒', 'Depressurisation']],
  ])('%s: only what is ticked is said', async (_, row) => {
    const { record, asked, said } = read(await sheetOfForm(form(row)))
    expect(asked).toEqual([])
    expect(record?.runs.map(({ direction }) => direction)).toEqual(['depressurisation'])
    expect(said.filter((message) => message.includes('says pressurisation'))).toEqual([])
  })

  it('choose the method of the test too', async () => {
    const { record } = read(
      await sheetOfForm([['Standard', '☐ ISO 9972  ☒ EN 13829'], ...form(['Depressurisation'])]),
    )
    expect(record?.test.method).toBe('en-13829:2001')
  })
})

it('the sheet of each house takes its name and volume from the list of houses', async () => {
  const sheet = (share: number): Rows => [
    ['Depressurisation'],
    ...zeroRows(dep),
    HEADINGS,
    ...dep.readings.map(([p, q]) => [p, q * share]),
  ]
  const bytes = await book({
    Overview: [
      ['Sheet', 'Building', 'Date', 'Volume [m³]', 'T in [°C]', 'T out [°C]', 'Air pressure [hPa]'],
      ['M1', 'Chestnut Way 1', day('2026-03-11'), 430, 20, 4, 987],
      ['M2', 'Chestnut Way 2', day('2026-03-12'), 450, 21, 3, 987],
    ],
    M1: sheet(1),
    M2: sheet(1.1),
  })
  const buildings = ['1', '2'].map((test) => read(bytes, { test }).record?.building)
  expect(buildings.map((one) => [one?.name, one?.volume_m3])).toEqual([
    ['Chestnut Way 1', 430],
    ['Chestnut Way 2', 450],
  ])
})

it('several rows of one step are one reading: their mean', async () => {
  // Three means of 20 s each, whose mean is the reading.
  const rows = dep.readings.flatMap(([p, q], index) =>
    [-1, 0, 1].map((off) => [`D${index + 1}`, p + off * 0.3, q * (1 + off * 0.003)]),
  )
  const { record, n50, said } = read(await sheetOfForm([...zeroRows(dep), ['Step', ...HEADINGS], ...rows]))
  expect(record?.runs[0]?.readings).toHaveLength(dep.readings.length)
  close(n50, n50Of([dep]))
  expect(said).toContain('Rows with the same entry in column "Step" were averaged: 24 rows give 8 readings.')
})

describe('zero flow in the column of pressures with its label in that of flows', () => {
  const table = (...lines: readonly [OddRun, OddRun]): Rows => {
    const line = (value: 'before' | 'after'): Rows[number] => [
      lines[0][value],
      `zero ${value}`,
      null,
      lines[1][value],
      `zero ${value}`,
    ]
    const rows = lines[0].readings.map((reading, index) => [
      ...reading,
      null,
      ...(lines[1].readings[index] ?? []),
    ])
    return [line('before'), ...rows, line('after')]
  }

  it('is that of its own block, above and below the readings', async () => {
    const { record, asked } = read(
      await sheetOfForm([
        ['Depressurisation', null, null, 'Pressurisation'],
        [...HEADINGS, null, ...HEADINGS],
        ...table(dep, pres),
      ]),
    )
    expect(asked).toEqual([])
    expect(
      record?.runs.map(({ zeroFlowBefore_Pa, zeroFlowAfter_Pa }) => [zeroFlowBefore_Pa, zeroFlowAfter_Pa]),
    ).toEqual([dep, pres].map(({ before, after }) => [[before], [after]]))
  })

  it('is in front of its label in lines above the headings too', async () => {
    const [before, after] = [table(dep, pres)[0] ?? [], table(dep, pres).at(-1) ?? []]
    const { n50, asked } = read(
      await sheetOfForm([
        ['Depressurisation', null, null, 'Pressurisation'],
        before,
        after,
        [...HEADINGS, null, ...HEADINGS],
        ...dep.readings.map((reading, index) => [...reading, null, ...(pres.readings[index] ?? [])]),
      ]),
    )
    expect(asked).toEqual([])
    close(n50, BOTH)
  })
})

describe('lists of several houses', () => {
  const air = [HOUSE.indoor_C, HOUSE.outdoor_C, HOUSE.barometer_Pa / 100]

  it('with a column "Parcel" that no word names as the test are parted by it', async () => {
    const lines = (name: string, volume: number, share: number): Rows =>
      [dep, pres].flatMap((run) => {
        const mode = run === dep ? 'Depress' : 'Press'
        return [
          [name, volume, ...air, `${mode} zero pre`, run.before, 0],
          ...run.readings.map(([p, q]) => [name, volume, ...air, mode, p, q * share]),
          [name, volume, ...air, `${mode} zero post`, run.after, 0],
        ]
      })
    const bytes = await book({
      Data: [
        ['Parcel', 'Volume (m³)', 'T in (°C)', 'T out (°C)', 'Barometer (hPa)', 'Mode', ...HEADINGS],
        ...lines('North', 300, 1),
        ...lines('South', 400, 1.2),
      ],
    })
    const given = { 'test.date': '2026-04-22' }
    const [north, south] = ['1', '2'].map((test) => read(bytes, { ...given, test }))
    expect([read(bytes, given).tests, north?.asked, south?.asked]).toEqual([2, [], []])
    close(north?.n50, (BOTH * HOUSE.volume_m3) / 300)
    close(south?.n50, (BOTH * 1.2 * HOUSE.volume_m3) / 400)
  })

  it('with flows below headings that are pressures and nothing else need no answer', async () => {
    const pressures = [60, 50, 40, 30, 20, 10]
    const flow = (pressure: number, share: number) => Number((41.7 * share * pressure ** 0.644).toFixed(1))
    const bytes = await book({
      Data: [
        ['Depressurisation, flows in m³/h'],
        ['House', 'Date', 'Volume m³', 'Ti °C', 'Te °C', ...pressures.map((pressure) => `${pressure} Pa`)],
        ...[1, 1.3, 1.9].map((share, index) => [
          `Type ${index + 1}`,
          day(`2026-02-0${index + 1}`),
          300,
          20,
          20,
          ...pressures.map((pressure) => flow(pressure, share)),
        ]),
      ],
    })
    const { record, asked, tests, said } = read(bytes, { test: '2' })
    expect([tests, asked]).toEqual([1, []])
    expect(record?.runs[0]?.direction).toBe('depressurisation')
    expect(record?.runs[0]?.readings).toEqual(
      pressures.map((pressure) => ({ pressure_Pa: -pressure, flow_m3_h: flow(pressure, 1.3) })),
    )
    expect(said).toContain('The log has no measured pressures. Those in the headings of the flows were used.')
  })
})
