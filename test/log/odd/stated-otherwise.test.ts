import { describe, expect, it } from 'vitest'
import { standardPressure } from '../generated/truth/air'
import { book, type Rows } from '../support/book'
import { FORM, HOUSE, n50Of, read, runOf } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const dep = runOf('depressurisation')
const HEADINGS = ['Pressure (Pa)', 'Flow (m³/h)']
const zeros: Rows = [
  ['Zero flow before (Pa)', dep.before],
  ['Zero flow after (Pa)', dep.after],
]
const close = (value: number | undefined, truth: number) => {
  expect(value).toBeDefined()
  expect(Math.abs((value as number) / truth - 1)).toBeLessThan(0.0008)
}
/** The form with one of its lines changed. */
const formWith = (label: string, ...line: Rows[number]): Rows =>
  FORM.map((row) => (row[0] === label ? line : row))
const logOf = (form: Rows, rows: Rows = [...zeros, HEADINGS, ...dep.readings]) =>
  book({ Test: [...form, [null], ...rows] })

it.each([
  ['written without signs', 20260422],
  ['as a count of days', 46134],
])('takes a day %s', async (_, value) => {
  const { record, asked } = read(await logOf(formWith('Date', 'Date', value)))
  expect(asked).toEqual([])
  expect(record?.test.date).toBe('2026-04-22')
})

it('reads a temperature with its spread', async () => {
  const { n50, asked } = read(
    await logOf(formWith('Inside temperature (°C)', 'Inside temperature', '20.5 °C ± 0.5')),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

it('reads a zero flow with a remark in brackets', async () => {
  const rows: Rows = [['Δp0,1 = -1.4 Pa (30 s)'], ['Δp0,2 = -0.9 Pa (30 s)'], HEADINGS, ...dep.readings]
  close(read(await logOf(FORM, rows)).n50, n50Of([dep]))
})

it('reads a humidity of 0.45 headed "%" as 45 %', async () => {
  const form: Rows = [...FORM, ['Relative humidity inside (%)', 0.45]]
  expect(read(await logOf(form)).record?.conditions.indoorRelativeHumidity).toBe(0.45)
})

describe('an air pressure worked out for sea level', () => {
  it('is not taken for that at the site where the altitude is known', async () => {
    const form: Rows = [...formWith('Barometer (hPa)', 'QNH (hPa)', 1013.25), ['Altitude (m)', 540]]
    const { record, n50, said } = read(await logOf(form))
    expect(record?.conditions.barometricPressure_Pa).toBeUndefined()
    expect(said.join('\n')).toMatch(/reduced to sea level, so it was not used/)
    const pressure_Pa = standardPressure(540)
    close(n50, n50Of([dep], { ...HOUSE, barometer_Pa: pressure_Pa }))
  })

  it('is used with a caution where it is not', async () => {
    const { record, said } = read(await logOf(formWith('Barometer (hPa)', 'Barometer, QNH (hPa)', 1008.4)))
    expect(record?.conditions.barometricPressure_Pa).toBeCloseTo(100_840, 6)
    expect(said.join('\n')).toMatch(/was used as the pressure at the site/)
  })
})

describe('two fans with a table each', () => {
  const share = 0.62
  const tables = (shift: number): Rows => [
    ...zeros,
    ['Fan 1', null, null, 'Fan 2'],
    [...HEADINGS, null, ...HEADINGS],
    ...dep.readings.map(([p, q]) => [p, q * share, null, p + shift, q * (1 - share)]),
  ]

  it('are added where their pressures are the same', async () => {
    const { n50, tests, said } = read(await logOf(FORM, tables(0)))
    expect(tests).toBe(1)
    expect(said.join('\n')).toMatch(/flows are added/)
    close(n50, n50Of([dep]))
  })

  it('are asked about where their pressures differ a little', async () => {
    const bytes = await logOf(FORM, tables(0.2))
    expect(read(bytes).asked).toEqual(['fans'])
    close(read(bytes, { fans: 'together' }).n50, n50Of([dep]))
    expect(read(bytes, { fans: 'separate' }).tests).toBe(2)
  })
})

describe('pressures that a sentence calls corrected', () => {
  const zero = (dep.before + dep.after) / 2
  const induced: Rows = dep.readings.map(([p, q]) => [Number((p - zero).toFixed(1)), q])

  it('have no zero flow taken off again', async () => {
    const rows: Rows = [...zeros, ['All pressures below are corrected for zero flow'], HEADINGS, ...induced]
    const { n50, said } = read(await logOf(FORM, rows))
    expect(said.join('\n')).toMatch(/already subtracted/)
    close(n50, n50Of([dep]))
  })

  it.each([
    ['Pressures corrected for zero flow?', 'no'],
    ['Druckwerte um Nulldruck korrigiert?', 'Nein'],
    ['Pressures corrected for zero flow?', null],
    ['Pressures corrected for zero flow? No', null],
  ])('are as measured where the log says they are not: "%s" %s', async (question, answer) => {
    const rows: Rows = [[question, answer], ...zeros, HEADINGS, ...dep.readings]
    close(read(await logOf(FORM, rows)).n50, n50Of([dep]))
  })

  it.each(['yes', 'Ja', '✓'])('are induced where the answer beside it is %s', async (answer) => {
    const rows: Rows = [['Pressures corrected for zero flow?', answer], ...zeros, HEADINGS, ...induced]
    close(read(await logOf(FORM, rows)).n50, n50Of([dep]))
  })

  it.each([
    ['Baseline before (already subtracted), Pa', 'Baseline after (already subtracted), Pa'],
    ['Nulldruck vorher, bereits abgezogen', 'Nulldruck nachher, bereits abgezogen'],
    ['Zero flow before, taken off below', 'Zero flow after, taken off below'],
  ])('nor where the labels of zero flow say so: "%s"', async (before, after) => {
    const rows: Rows = [[before, dep.before], [after, dep.after], HEADINGS, ...induced]
    const { n50, said } = read(await logOf(FORM, rows))
    expect(said.join('\n')).toMatch(/already subtracted/)
    close(n50, n50Of([dep]))
  })

  it.each([
    'Pressures must be corrected for zero flow',
    'Pressures not corrected for zero flow',
    'Zero flow is not yet subtracted',
  ])('but not where it says "%s"', async (sentence) => {
    close(read(await logOf(FORM, [...zeros, [sentence], HEADINGS, ...dep.readings])).n50, n50Of([dep]))
  })
})

it('finds values one line below and one column behind their labels', async () => {
  const form: Rows = [
    ['1. Enter the volume'],
    [null, HOUSE.volume_m3, 'm³'],
    ['2. Barometer'],
    [null, HOUSE.barometer_Pa / 100, 'hPa'],
    ['Inside (°C)', HOUSE.indoor_C],
    ['Outside (°C)', HOUSE.outdoor_C],
    ['Date', '2026-04-22'],
    ['3. Zero flow before'],
    [null, dep.before, 'Pa'],
    ['4. Zero flow after'],
    [null, dep.after, 'Pa'],
  ]
  const { n50, asked } = read(await logOf(form, [HEADINGS, ...dep.readings]))
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

it('leaves out the sheet that shows how the form is filled in', async () => {
  const example: Rows = dep.readings.map(([p, q]) => [p, q * 1.7])
  const { tests, n50, record } = read(
    await book({
      Beispiel: [...FORM, [null], ...zeros, HEADINGS, ...example],
      Messung: [...FORM, [null], ...zeros, HEADINGS, ...dep.readings],
    }),
  )
  expect(tests).toBe(1)
  expect(record?.building.name).toBe('Pear Tree Barn')
  close(n50, n50Of([dep]))
})

it('reads temperatures headed "out / in" the right way round', async () => {
  const form = formWith(
    'Inside temperature (°C)',
    'Temp out / in',
    `${HOUSE.outdoor_C} / ${HOUSE.indoor_C} °C`,
  ).filter(([label]) => label !== 'Outside temperature (°C)')
  close(read(await logOf(form)).n50, n50Of([dep]))
})

it('asks about values before and after in words it does not know, with or without a unit', async () => {
  const rows: Rows = [['N.DR. VOR', dep.before], ['N.DR. NACH', dep.after], HEADINGS, ...dep.readings]
  const bytes = await logOf(FORM, rows)
  expect(read(bytes).asked).toEqual(['zeroFlow.labels'])
  close(read(bytes, { 'zeroFlow.labels': 'zero flow' }).n50, n50Of([dep]))
})

it.each([
  [
    [
      ['Site', 'Oak Park'],
      ['Plot', 12],
    ],
    'Plot 12',
    'Oak Park',
  ],
  [
    [
      ['Flat no.', '3b'],
      ['Development', 'Oak Park'],
    ],
    'Flat 3b',
    'Oak Park',
  ],
  [
    [
      ['Projekt', 'Am Hang'],
      ['Wohnung', 'Dachgeschoss links'],
    ],
    'Dachgeschoss links',
    'Am Hang',
  ],
] as [Rows, string, string][])('names the home of a site: %j', async (rows, name, site) => {
  const form = [...rows, ...FORM.filter(([label]) => label !== 'House')]
  expect(read(await logOf(form)).record?.building).toMatchObject({ name, site })
})
