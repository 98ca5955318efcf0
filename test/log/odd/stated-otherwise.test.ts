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
