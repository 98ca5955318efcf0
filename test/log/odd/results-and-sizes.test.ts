import { expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, pres, read, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const both = n50Of([dep, pres])
const runs = [dep, pres]
const numbered = (heads: Rows[number] = ['Point', ...HEADINGS]): Rows =>
  runs.flatMap(
    (run): Rows => [
      [run.direction],
      ...zeroRows(run),
      heads,
      ...run.readings.map((reading, index) => [index + 1, ...reading]),
      [null],
    ],
  )

it.each<[string, Rows]>([
  ['under a line of headings with a mean', [['Results', 'Depress.', 'Press.', 'Mean']]],
  ['without a heading', []],
])('takes no results below the readings as readings, %s', async (_, heads) => {
  const rows = [...numbered().slice(0, -1), ...heads, ['C', 41.7, 41.7], ['n', 0.64, 0.65], ['q50', 518, 519]]
  const { n50, asked, record } = read(await book({ Test: [...FORM, [null], ...rows] }))
  expect(asked).toEqual([])
  expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
  close(n50, both)
})

it('does not take the area without the lowest floor for the envelope, nor "surface" before a floor', async () => {
  const areas: Rows = [
    ['Surface déperditive hors plancher bas (m²)', 398],
    ['Surface plancher (m²)', 171],
  ]
  const { record } = read(await book({ Test: [...FORM, ...areas, [null], ...numbered()] }))
  expect(record?.building).toMatchObject({ lossArea_m2: 398, floorArea_m2: 171 })
  expect(record?.building.envelopeArea_m2).toBeUndefined()
})

it('reads an area with words behind it, and names one with two numbers', async () => {
  const withArea = async (area: string) =>
    read(await book({ Test: [...FORM, ['Envelope area', area], [null], ...numbered()] }))
  expect((await withArea('512 m2 incl. ground floor')).record?.building.envelopeArea_m2).toBe(512)
  const { record, saidOfFile } = await withArea('512 m2 and 40 m2')
  expect(record?.building.envelopeArea_m2).toBeUndefined()
  expect(saidOfFile.join('\n')).toContain('Envelope area')
})

it('takes the mean of temperatures logged with each reading', async () => {
  const form = FORM.filter(([label]) => !String(label).includes('temperature'))
  const rows = runs.flatMap(
    (run): Rows => [
      [run.direction],
      ...zeroRows(run),
      [...HEADINGS, 'T in (°C)', 'T out (°C)'],
      ...run.readings.map((reading, index) => [
        ...reading,
        HOUSE.indoor_C - 0.7 + 0.2 * index,
        HOUSE.outdoor_C + 0.35 - 0.1 * index,
      ]),
      [null],
    ],
  )
  const { record, asked, n50, said } = read(await book({ Test: [...form, [null], ...rows] }))
  expect(asked).toEqual([])
  expect(record?.conditions.indoorTemperature_C).toBeCloseTo(HOUSE.indoor_C, 6)
  expect(record?.conditions.outdoorTemperature_C).toBeCloseTo(HOUSE.outdoor_C, 6)
  close(n50, both)
  expect(said.join('\n')).toContain('Their mean was used')
})

it('does not give the zero flow of a later test to an earlier one that has none', async () => {
  const earlier = runs.flatMap(
    (run): Rows => [
      [run.direction],
      HEADINGS,
      ...run.readings.map(([pressure, flow]) => [pressure, Number((flow * 1.3).toFixed(1))]),
      [null],
    ],
  )
  const rows = [['Test 1 of 3 March'], ...earlier, ['Test 2 of 22 April'], ...numbered()]
  const log = await book({ Test: [...FORM, [null], ...rows] })
  expect(read(log).tests).toBe(2)
  // Whether the earlier test had any is asked, as the log speaks of zero flow.
  const { asked } = read(log, { test: '1' })
  expect(asked).toEqual(['runs[0].zeroFlow', 'runs[1].zeroFlow'])
  const { record } = read(log, { test: '1', 'runs[0].zeroFlow': 'none', 'runs[1].zeroFlow': 'none' })
  expect(record?.runs.map(({ zeroFlowBefore_Pa }) => zeroFlowBefore_Pa ?? [])).toEqual([[], []])
})

it('reads a form of several pairs a line right above a table across', async () => {
  const form: Rows = [
    ['House', 'Pear Tree Barn', 'Volume (m³)', HOUSE.volume_m3, 'Inside (°C)', HOUSE.indoor_C],
    ['Date', '2026-04-22', 'Barometer (hPa)', HOUSE.barometer_Pa / 100, 'Outside (°C)', HOUSE.outdoor_C],
  ]
  const across = runs.flatMap(
    (run): Rows => [
      [run.direction],
      ...zeroRows(run),
      [HEADINGS[0] ?? '', ...run.readings.map(([pressure]) => pressure)],
      [HEADINGS[1] ?? '', ...run.readings.map(([, flow]) => flow)],
    ],
  )
  const { n50, asked } = read(await book({ Test: [...form, ...across] }))
  expect(asked).toEqual([])
  close(n50, both)
})

it('takes the total of fans in m³/h whose own flows are in l/s', async () => {
  const rows = runs.flatMap(
    (run): Rows => [
      [run.direction],
      ...zeroRows(run),
      ['Pressure (Pa)', 'Fan 1 (l/s)', 'Fan 2 (l/s)', 'Total (m³/h)'],
      ...run.readings.map(([pressure, flow]) => [
        pressure,
        Number((flow / 9).toFixed(2)),
        Number((flow / 6).toFixed(2)),
        flow,
      ]),
      [null],
    ],
  )
  const { n50, asked } = read(await book({ Test: [...FORM, [null], ...rows] }))
  expect(asked).toEqual([])
  close(n50, both)
})

it('asks which of two temperatures side by side counts, and takes no slab for the floor area', async () => {
  const form = FORM.map((row) =>
    row[0] === 'Inside temperature (°C)' ? ['Inside, ground / first floor (°C)', 20, 21] : row,
  )
  const { asked } = read(await book({ Test: [...form, [null], ...numbered()] }))
  expect(asked).toEqual(['conditions.indoorTemperature_C'])
  const areas: Rows = [
    ['Floor slab (m²)', 112],
    ['Envelope area (m²)', 512],
  ]
  const { record, said } = read(await book({ Test: [...FORM, ...areas, [null], ...numbered()] }))
  expect(record?.building.floorArea_m2).toBeUndefined()
  expect(record?.building.envelopeArea_m2).toBe(512)
  expect(said.join('\n')).toContain('floor area was left open')
})

it('takes no number further off in the line of a list of zero flow', async () => {
  const rows = runs.flatMap(
    (run): Rows => [
      [run.direction],
      ['Zero flow before (Pa)', run.before - 0.1, run.before + 0.1, null, null, null, 20],
      ['Zero flow after (Pa)', run.after - 0.1, run.after + 0.1],
      HEADINGS,
      ...run.readings,
      [null],
    ],
  )
  const { n50 } = read(await book({ Test: [...FORM, [null], ...rows] }))
  close(n50, both)
})
