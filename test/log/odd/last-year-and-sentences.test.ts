import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: what is written into each log, and the independent fit of ./house.
const close = closeTo(0.002)
const RUN: Rows = [['Depressurisation'], ...zeroRows(dep), HEADINGS, ...dep.readings]

it('leaves the column of last year out, and says so', async () => {
  const earlier: Rows = [
    ['House', 'Pear Tree Barn', null, 'Last year'],
    ['Date', day('2026-04-22'), null, day('2025-03-11')],
    ['Internal volume (m³)', HOUSE.volume_m3, null, 409.1],
    ['Inside temperature (°C)', HOUSE.indoor_C, null, 18.2],
    ['Outside temperature (°C)', HOUSE.outdoor_C, null, 11.9],
    ['Barometer (hPa)', HOUSE.barometer_Pa / 100, null, 1021],
    [null],
  ]
  const { asked, record, saidOfFile, n50 } = read(await book({ Test: [...earlier, ...RUN] }))
  expect(asked).toEqual([])
  expect(record?.test.date).toBe('2026-04-22')
  expect(saidOfFile.join()).toContain('"Last year"')
  close(n50, n50Of([dep]))
})

describe('a volume written as its sides', () => {
  const form = (volume: string, label = 'Internal volume (m³)'): Rows => [
    ...FORM.filter(([one]) => one !== 'Internal volume (m³)'),
    [label, volume],
    [null],
    ...RUN,
  ]

  it.each([
    ['12.4 x 8.2 x 2.5 m', 'Volume'],
    ['12.4 × 8.2 × 2.5', 'Internal volume (m³)'],
  ])('"%s" behind "%s" is multiplied, and it is said', async (sides, label) => {
    const { asked, record, said } = read(await book({ Test: form(sides, label) }))
    expect(asked).toEqual([])
    expect(record?.building.volume_m3).toBe(254.2)
    expect(said.join()).toContain('the product of')
  })

  it('without a unit is asked for', async () => {
    expect(read(await book({ Test: form('12.4 x 8.2 x 2.5', 'Volume') })).asked).toEqual([
      'building.volume_m3',
    ])
  })
})

it('reads readings written as sentences', async () => {
  const { asked, record, n50 } = read(
    await sheetOfForm([
      ['Depressurisation'],
      ...zeroRows(dep),
      [null],
      ...dep.readings.map(([p, q]) => [`at ${p} Pa the fan moved ${q} m³/h`]),
    ]),
  )
  expect(asked).toEqual([])
  expect(record?.runs[0]?.readings.length).toBe(dep.readings.length)
  close(n50, n50Of([dep]))
})

it('reads both of two columns of pairs', async () => {
  const { record, n50 } = read(
    await sheetOfForm([
      ['Depressurisation', 'Pressurisation'],
      [
        `Zero flow before / after: ${dep.before} / ${dep.after} Pa`,
        `Zero flow before / after: ${pres.before} / ${pres.after} Pa`,
      ],
      ['Pa / m³/h', 'Pa / m³/h'],
      ...dep.readings.map((pair, index) => [pair.join(' / '), pres.readings[index]?.join(' / ') ?? null]),
    ]),
  )
  expect(record?.runs.length).toBe(2)
  close(n50, n50Of([dep, pres]))
})

it('takes no unit of coefficients from the barometer above them', async () => {
  const [coefficient, exponent] = [22.5, 0.51]
  const { record } = read(
    await sheetOfForm(
      [
        ['Fan calibration: q = C x dP^n (m³/h)'],
        ['Ring', 'C', 'n'],
        ['A', coefficient, exponent],
        [null],
        ['Depressurisation'],
        ...zeroRows(dep),
        ['Building Pa', 'Fan Pa', 'Ring'],
        ...dep.readings.map(([p, q]) => [p, Number(((q / coefficient) ** (1 / exponent)).toFixed(1)), 'A']),
      ].map((row) => row as Rows[number]),
    ),
  )
  expect(record?.flowDevice?.ranges?.[0]?.coefficient).toBe(coefficient)
})

it('reads zero flow behind its title in the line above the headings', async () => {
  const { record } = read(
    await sheetOfForm([
      ['Depressurisation', null, 'Zero flow (Pa)', 'before', dep.before, 'after', dep.after],
      HEADINGS,
      ...dep.readings,
    ]),
  )
  expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual([dep.before])
  expect(record?.runs[0]?.zeroFlowAfter_Pa).toEqual([dep.after])
})

it('takes "Press" beside "Depress" for the direction', async () => {
  const { asked, n50 } = read(
    await sheetOfForm([
      ['Zero flow (Pa)', 'Before', 'After'],
      ['Depress', dep.before, dep.after],
      ['Press', pres.before, pres.after],
      [null],
      ['Depress', null, null, 'Press'],
      ['Pa', 'm³/h', null, 'Pa', 'm³/h'],
      ...dep.readings.map((pair, index) => [...pair, null, ...(pres.readings[index] ?? [])]),
    ]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep, pres]))
})

it('reads temperatures whose side stands behind the unit', async () => {
  const form: Rows = [
    ...FORM.filter(([one]) => !String(one).includes('temperature')),
    ['Temp', HOUSE.indoor_C, '°C in', HOUSE.outdoor_C, '°C out'],
  ]
  const { record } = read(await book({ Test: [...form, [null], ...RUN] }))
  expect(record?.conditions.indoorTemperature_C).toBe(HOUSE.indoor_C)
  expect(record?.conditions.outdoorTemperature_C).toBe(HOUSE.outdoor_C)
})

it('asks about a reading whose row says that it is repeated below', async () => {
  const [first, ...rest] = dep.readings
  const rows: Rows = [...(first ? [[...first, 'door opened, repeated below']] : []), ...rest]
  const { asked } = read(await sheetOfForm([...zeroRows(dep), HEADINGS, ...rows]))
  expect(asked).toEqual(['readings.remarked'])
})

it('takes "final readings" over the pressures for their title', async () => {
  const { asked, n50 } = read(
    await sheetOfForm([
      ...zeroRows(dep),
      [null],
      ['Depressurisation – final readings'],
      ['Pa', 'm³/h'],
      ...dep.readings,
    ]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

it('reads two labels with their values in one cell', async () => {
  const form: Rows = [['House: Pear Tree Barn / Date: 22.04.2026'], ...FORM.slice(2)]
  const { record } = read(await book({ Test: [...form, [null], ...RUN] }))
  expect(record?.building.name).toBe('Pear Tree Barn')
  expect(record?.test.date).toBe('2026-04-22')
})

it('gives the flow headed "Q press" beside "Q dep" to the pressurisation', async () => {
  const { record, tests } = read(
    await sheetOfForm([
      ['DP', 'Q dep', 'Q press'],
      ['Pa', 'm³/h', 'm³/h'],
      ...dep.readings.map(([p, q], index) => [Math.abs(p), q, pres.readings[index]?.[1] ?? null]),
    ]),
    { 'runs[0].zeroFlow': 'none', 'runs[1].zeroFlow': 'none' },
  )
  expect(tests).toBe(1)
  expect(record?.runs.map(({ direction }) => direction)).toEqual(['depressurisation', 'pressurisation'])
})

it.each([
  ['Temperatura interna', 'Temperatura externa', '°C'],
  ['Tª interior', 'Tª exterior', 'ºC'],
])('knows "%s" and "%s"', async (inside, outside, unit) => {
  const form: Rows = [
    ...FORM.filter(([one]) => !String(one).includes('temperature')),
    [`${inside} (${unit})`, HOUSE.indoor_C],
    [`${outside} (${unit})`, HOUSE.outdoor_C],
  ]
  const { record } = read(await book({ Test: [...form, [null], ...RUN] }))
  expect(record?.conditions.indoorTemperature_C).toBe(HOUSE.indoor_C)
  expect(record?.conditions.outdoorTemperature_C).toBe(HOUSE.outdoor_C)
})

it('asks for zero flow that stands below two attempts where only one was logged', async () => {
  const { asked } = read(
    await sheetOfForm([
      [null, 'Dep 1', 'Dep 2 (repeat)'],
      ['Zero before (Pa)', dep.before, dep.before + 0.4],
      ['Zero after (Pa)', dep.after, dep.after - 0.6],
      [null],
      ['Depressurisation'],
      HEADINGS,
      ...dep.readings,
    ]),
  )
  expect(asked).toContain('runs[0].zeroFlow')
})

it('gives each sheet the line of the list that its title names', async () => {
  const plot = (name: string, share: number): Rows => [
    [name],
    ['Depressurisation'],
    ...zeroRows(dep),
    HEADINGS,
    ...dep.readings.map(([p, q]) => [p, Math.round(q * share)]),
  ]
  const line = (name: string, date: string, volume: number) => [
    name,
    day(date),
    volume,
    HOUSE.indoor_C,
    HOUSE.outdoor_C,
  ]
  const { tests } = interpretLog({
    bytes: await book({
      Site: [
        ['Site', 'Orchard Close'],
        ['Plot', 'Date', 'Volume (m³)', 'In °C', 'Out °C'],
        line('Plot 7', '2026-04-22', 412.6),
        line('Plot 8', '2026-04-23', 380.2),
      ],
      P7: plot('Plot 7', 1),
      P8: plot('Plot 8', 0.8),
    }),
    fileName: 'log.xlsx',
  })
  expect(tests.map(({ record }) => [record?.building.name, record?.building.volume_m3])).toEqual([
    ['Plot 7', 412.6],
    ['Plot 8', 380.2],
  ])
  expect(tests.map(({ record }) => record?.test.date)).toEqual(['2026-04-22', '2026-04-23'])
})
