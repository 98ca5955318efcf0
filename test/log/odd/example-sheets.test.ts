import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { dep, FORM, HEADINGS, pres, read, zeroRows } from './house'

// Truth: what is written into each sheet.
const RUNS = [dep, pres]
const testWith = (factor: number): Rows => [
  ...FORM,
  [null],
  ...RUNS.flatMap(
    (run): Rows => [
      [run === dep ? 'Depressurisation' : 'Pressurisation'],
      ...zeroRows(run),
      HEADINGS,
      ...run.readings.map(([pressure, flow]) => [pressure, Number((flow * factor).toFixed(1))]),
      [null],
    ],
  ),
]
const TEST = testWith(1)

describe('a sheet that shows how the log is filled in', () => {
  it.each(['Example (do not delete)', 'Beispiel:', 'Voorbeeld'])(
    '"%s" at its head: left out, and said with its cell',
    async (title) => {
      const bytes = await book({ 'How to fill in': [[title], ...testWith(2.6)], Test: TEST })
      const { tests, record, saidOfFile, said } = read(bytes)
      expect(tests).toBe(1)
      expect(record?.runs.map(({ readings }) => readings.map((one) => one.flow_m3_h))).toEqual(
        RUNS.map(({ readings }) => readings.map(([, flow]) => flow)),
      )
      expect([...saidOfFile, ...said].some((message) => message.includes(title))).toBe(true)
    },
  )

  it('is read where it is all there is', async () => {
    expect(read(await book({ Log: [['Example'], ...TEST] })).record?.runs).toHaveLength(2)
  })
})

describe('a flow at standard conditions beside the flow that is read', () => {
  it('raises no question about the air of the other', async () => {
    const bytes = await book({
      Log: [
        ...FORM,
        [null],
        ...RUNS.flatMap(
          (run): Rows => [
            [run === dep ? 'Depressurisation' : 'Pressurisation'],
            ...zeroRows(run),
            [...HEADINGS, 'Flow at standard conditions (m³/h)'],
            ...run.readings.map(([pressure, flow]) => [pressure, flow, Number((flow * 1.013).toFixed(1))]),
            [null],
          ],
        ),
      ],
    })
    const { asked, record } = read(bytes)
    expect(asked).toEqual([])
    expect(record?.runs.map(({ readings }) => readings.map((one) => one.flow_m3_h))).toEqual(
      RUNS.map(({ readings }) => readings.map(([, flow]) => flow)),
    )
  })
})
