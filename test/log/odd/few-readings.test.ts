import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { FORM, HOUSE, read } from './house'

// One reading at 50.2 Pa: whatever the exponent between 0.5 and 1, the flow at 50 Pa is that flow to 0.4 %, and air of
// 6.5 to 20.5 °C changes it by the ratio of the absolute temperatures, 1.050, at most. Nothing of it comes from the reader.
const reading = { pressure_Pa: -50.2, flow_m3_h: 903 }
const METHOD = ['Method', 'ASTM E1827 one-point'] as const
const near = (n50: number | undefined) => {
  expect(n50).toBeDefined()
  expect(Math.abs(((n50 as number) * HOUSE.volume_m3) / reading.flow_m3_h - 1)).toBeLessThan(0.055)
}
const logOf = (rows: Rows) => book({ Test: rows })
const table: Rows = [
  ['Depressurisation'],
  ['Pressure (Pa)', 'Flow (m³/h)'],
  [reading.pressure_Pa, reading.flow_m3_h],
]
const labelled: Rows = [
  ['Building pressure', reading.pressure_Pa, 'Pa'],
  ['Fan flow', reading.flow_m3_h, 'm³/h'],
]

describe('a test of one reading', () => {
  it.each([
    ['in a table', [...FORM, METHOD, [null], ...table]],
    ['behind its labels', [...FORM, METHOD, ...labelled]],
  ] as [string, Rows][])('%s is read where the log names its method', async (_, rows) => {
    const { record, asked, n50 } = read(await logOf(rows))
    expect(asked).toEqual([])
    expect(record?.runs.map(({ readings }) => readings)).toEqual([[reading]])
    near(n50)
  })

  it('is read where the method is an answer', async () => {
    near(read(await logOf([...FORM, ...labelled]), { method: 'astm-e1827-22-one-point' }).n50)
  })

  it('says that the method has to be named where it is not', async () => {
    const { problems } = read(await logOf([...FORM, ...labelled]))
    expect(problems.join()).toMatch(/one pressure and one air flow.* --set method=astm-e1827-22-one-point/)
  })

  it('says so, with the cell, of a table of one reading without a method', async () => {
    const form = FORM.filter(([label]) => label !== 'Method')
    const bytes = await logOf([...form, [null], ...table])
    expect(interpretLog({ bytes, fileName: 'log.xlsx' }).problems).toEqual([
      expect.objectContaining({
        cell: `Test!A${form.length + 4}`,
        message: expect.stringMatching(
          /only one reading: choose a method .*--set method=astm-e1827-22-one-point/,
        ),
      }),
    ])
  })

  it('says that a method is not known before it says that there is no table', async () => {
    const { problems } = read(await logOf([...FORM, [null], ...table]), { 'test.method': 'one' })
    expect(problems.join()).toMatch(/there is no test method "one"\. Known methods: iso-9972:2015, /)
  })

  it('is refused by a method that fits a curve, naming the run', async () => {
    const bytes = await logOf([...FORM, [null], ...table, [-40, 780]])
    const [test] = interpretLog({ bytes, fileName: 'log.xlsx' }).tests
    expect(test?.record?.runs[0]?.readings).toHaveLength(2)
    expect(() => evaluate(test?.record as TestRecord)).toThrow(
      /runs\[0\]\.readings: a run needs at least 3 readings by this method/,
    )
  })
})
