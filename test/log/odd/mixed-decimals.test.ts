import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, type OddRun, pres, read, zeroRows } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const point = (value: number) => value.toFixed(1)
const comma = (value: number) => point(value).replace('.', ',')
const rowsOf = (run: OddRun, written: (value: number, index: number) => string): Rows => [
  [run.direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'],
  ...zeroRows(run),
  HEADINGS,
  ...run.readings.map(([pressure, flow], index) => [written(pressure, index), written(flow, index)]),
  [null],
]
const log = (dep_: Rows, pres_: Rows) => book({ Test: [...FORM, [null], ...dep_, ...pres_] })

describe('numbers with a decimal point beside others with a comma', () => {
  it('are read each with its own sign, and the log says so', async () => {
    const { saidOfFile, n50 } = read(await log(rowsOf(dep, point), rowsOf(pres, comma)))
    expect(saidOfFile.join()).toContain('decimal comma')
    close(n50, n50Of([dep, pres]))
  })

  it('whose digits are grouped are read, however they take turns', async () => {
    const big = (run: OddRun): OddRun => ({
      ...run,
      readings: run.readings.map(([pressure, flow]): [number, number] => [
        pressure,
        Number((flow * 4).toFixed(1)),
      ]),
    })
    const english = (value: number) => value.toLocaleString('en', { minimumFractionDigits: 1 })
    const german = (value: number) => value.toLocaleString('de', { minimumFractionDigits: 1 })
    const turns = (value: number, index: number) => (index % 2 ? english : german)(value)
    const [one, other] = [big(dep), big(pres)]
    const { record } = read(await log(rowsOf(one, turns), rowsOf(other, turns)))
    expect(record?.runs.map(({ readings }) => readings.map(({ flow_m3_h }) => flow_m3_h))).toEqual(
      [one, other].map(({ readings }) => readings.map(([, flow]) => flow)),
    )
  })

  it('are not named where one sign alone is used, nor for a time of day', async () => {
    const rows = rowsOf(pres, comma)
    const { saidOfFile } = read(
      await log([['Begin', '10.30 Uhr'], ['End', '11.45 Uhr'], ...rowsOf(dep, comma)], rows),
    )
    expect(saidOfFile.join()).not.toContain('decimal comma')
  })

  it('make a number that may be two a question, on whatever sheets they stand', async () => {
    const form = FORM.map((row) => (row[0] === 'Internal volume (m³)' ? [row[0], '41,412'] : row))
    const bytes = await book({ Form: form, A: rowsOf(dep, point), B: rowsOf(pres, comma) })
    expect(read(bytes).asked).toContain('decimal')
  })
})
