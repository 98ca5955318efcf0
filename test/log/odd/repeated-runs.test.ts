import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: readings of a leakage curve and an independent fit; nothing comes from the reader.
const close = closeTo(0.0008)

it('a direction that comes again in one table begins a second test, and its readings are not added to the first', async () => {
  const again = dep.readings.map(([pressure, flow]): [number, number] => [pressure, flow * 0.8])
  const rows = [
    ...dep.readings.map((one): Rows[number] => [1, 'dep', ...one]),
    ...pres.readings.map((one): Rows[number] => [2, 'pres', ...one]),
    ...again.map((one): Rows[number] => [3, 'dep', ...one]),
  ]
  const bytes = await sheetOfForm([['Run', 'Direction', ...HEADINGS], ...rows])
  const { tests, record } = read(bytes)
  expect(tests).toBe(2)
  expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
})

it('the next stations of a direction, after those of the other, belong to the same run', async () => {
  const part = (from: number, run: typeof dep, word: string): Rows =>
    run.readings.slice(from, from + 4).map((one): Rows[number] => [word, ...one])
  const rows = [
    ...part(0, dep, 'dep'),
    ...part(0, pres, 'pres'),
    ...part(4, dep, 'dep'),
    ...part(4, pres, 'pres'),
  ]
  const { tests, record } = read(await sheetOfForm([['Direction', ...HEADINGS], ...rows]))
  expect(tests).toBe(1)
  expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
})

it('a dash where zero flow has no flow is no sign of the values of the block beside', async () => {
  const zero = (which: 'before' | 'after'): Rows[number] => ['no fan', dep[which], '-', pres[which], '-']
  const { asked, n50 } = read(
    await sheetOfForm([
      ['', 'Depressurisation', '', 'Pressurisation', ''],
      ['', 'dp', 'flow', 'dp', 'flow'],
      ['', 'Pa', 'm³/h', 'Pa', 'm³/h'],
      zero('before'),
      ...dep.readings.map((one, index): Rows[number] => [
        index + 1,
        ...one,
        ...(pres.readings[index] as [number, number]),
      ]),
      zero('after'),
    ]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep, pres]))
})

describe('one of several tests is chosen by its building', () => {
  const sheet = (name: string, share = 1): Rows => [
    ['House', name],
    ...FORM.slice(1),
    [null],
    ['Depressurisation'],
    ...zeroRows(dep),
    HEADINGS,
    ...dep.readings.map(([pressure, flow]): Rows[number] => [pressure, flow * share]),
  ]
  it('where the sheets have other names', async () => {
    const bytes = await book({ A1: sheet('Elm House'), A2: sheet('Ash House', 0.8) })
    const { record } = read(bytes, { test: 'ash house' })
    expect(record?.building).toMatchObject({ name: 'Ash House', volume_m3: HOUSE.volume_m3 })
  })
  it('unless two tests are of it', async () => {
    const bytes = await book({ A1: sheet('Elm House'), A2: sheet('Elm House', 0.8) })
    expect(read(bytes, { test: 'Elm House' }).problems.join()).toContain('no test "Elm House"')
  })
})
