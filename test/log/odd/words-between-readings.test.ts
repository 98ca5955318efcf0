import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import { closeTo, dep, HEADINGS, n50Of, type OddRun, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const runs = [dep, pres]
const titles = ['Depressurisation', 'Pressurisation']
const logOf = (rowsOf: (run: OddRun) => Rows, headings: Rows[number] = HEADINGS): Rows =>
  runs.flatMap(
    (run, index): Rows => [
      [null],
      [null, titles[index] as string],
      ...zeroRows(run).map((row) => [null, ...row]),
      [null, ...headings],
      ...rowsOf(run),
    ],
  )

describe('what stands between readings', () => {
  it.each<[string, Rows]>([
    [
      'a remark in the column of flows',
      logOf(({ readings }) =>
        readings.flatMap(
          ([p, q], index): Rows =>
            index === 1
              ? [
                  [null, null, 'wind picking up'],
                  [null, p, q],
                ]
              : [[null, p, q]],
        ),
      ),
    ],
    [
      'a row of what was aimed at',
      logOf(({ readings }) => [
        ['Zielwert', 50, 300],
        ...readings.map(([p, q]): Rows[number] => [null, p, q]),
      ]),
    ],
  ])('%s is no reading, and ends none', async (_, rows) => {
    const { n50, asked, record } = read(await sheetOfForm(rows))
    expect(asked).toEqual([])
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
    close(n50, n50Of(runs))
  })

  it('a word for the last pressure but one leaves out that reading only, and is named', async () => {
    const { record, said } = read(
      await sheetOfForm(
        logOf(({ readings }) =>
          readings.map(([p, q], index): Rows[number] => [null, index === 6 ? 'not read' : p, q]),
        ),
      ),
    )
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual([7, 7])
    expect(said.filter((one) => one.includes('says “not read”') || one.includes('"not read"'))).not.toEqual(
      [],
    )
  })
})

describe('columns that are not two flows', () => {
  it('flows beside their mean in another unit are samples, and are not added up', async () => {
    const { asked, record } = read(
      await sheetOfForm(
        logOf(
          ({ readings }) =>
            readings.map(([p, q]): Rows[number] => [
              null,
              p,
              Number((q * 1.01).toFixed(1)),
              Number((q * 0.99).toFixed(1)),
              Number((q / 3.6).toFixed(2)),
            ]),
          ['Pressure (Pa)', 'Flow 1 (m³/h)', 'Flow 2 (m³/h)', 'Average (l/s)'],
        ),
      ),
    )
    expect(record).toBeUndefined()
    expect(asked).toContain('flow.column')
  })

  it('a column of flows that repeats the pressures is none', async () => {
    const { asked, record } = read(
      await sheetOfForm(
        logOf(({ readings }) => readings.map(([p, q]): Rows[number] => [null, q, Math.abs(p)]), HEADINGS),
      ),
    )
    expect(record).toBeUndefined()
    expect(asked).toContain('pressure.column')
  })
})

it('1, 2, 3 … behind a label of zero flow number its places', async () => {
  const { asked, record } = read(
    await sheetOfForm([
      ['Zero-flow pressures (Pa)', 1, 2, 3, 4, 5],
      ...logOf(({ readings }) => readings.map(([p, q]): Rows[number] => [null, p, q])).filter(
        (row) => !row.some((cell) => typeof cell === 'string' && cell.startsWith('Zero flow')),
      ),
    ]),
  )
  expect(record).toBeUndefined()
  expect(asked).toEqual(['runs[0].zeroFlow', 'runs[1].zeroFlow'])
})
