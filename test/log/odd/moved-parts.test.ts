import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, pres, read, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const both = n50Of([dep, pres])
const logOf = (rows: Rows) => book({ Test: [...FORM, [null], ...rows] })
const zeros = [...zeroRows(dep), ...zeroRows(pres)]
const titled = (title: string, run: typeof dep): Rows => [[title], HEADINGS, ...run.readings]

describe('zero flow that stands beyond both runs', () => {
  it('keeps the order of blocks side by side, and says so', async () => {
    const blank = Array.from({ length: 5 }, () => null)
    const rows: Rows = [
      ['Depressurisation', null, null, 'Pressurisation'],
      [
        ...HEADINGS,
        null,
        ...HEADINGS,
        ...blank,
        'Zero before (Pa)',
        dep.before,
        ...blank,
        'Zero before (Pa)',
        pres.before,
      ],
      ...dep.readings.map((own, index) => [
        ...own,
        null,
        ...(pres.readings[index] as [number, number]),
        ...(index === 0
          ? [...blank, 'Zero after (Pa)', dep.after, ...blank, 'Zero after (Pa)', pres.after]
          : []),
      ]),
    ]
    const { n50, said } = read(await logOf(rows))
    close(n50, both)
    expect(said.join('\n')).toMatch(/does not say which run each belongs to\. They are used in the order/)
  })

  it('keeps the order of blocks one below the other', async () => {
    const rows = [
      ...titled('Depressurisation', dep),
      [null],
      ...titled('Pressurisation', pres),
      [null],
      ...zeros,
    ]
    close(read(await logOf(rows)).n50, both)
  })
})

it('asks whether a reading counts that has lost its minus inside a table of both directions', async () => {
  const lost = dep.readings.map(([pressure, flow], index) => [index === 3 ? -pressure : pressure, flow])
  const rows: Rows = [...zeroRows(dep), HEADINGS, ...lost, ...pres.readings]
  const { asked, texts } = read(await logOf(rows))
  expect(asked).toContain('readings.remarked')
  expect(texts.join()).toMatch(/ts sign differs from that of the readings before and after it/)
})

it('leaves out the sums of a table that nothing marks as such', async () => {
  const sum = (of: 0 | 1) => dep.readings.reduce((all, reading) => all + reading[of], 0)
  const rows: Rows = [...zeroRows(dep), HEADINGS, ...dep.readings, [sum(0), sum(1)]]
  const { n50, said } = read(await logOf(rows))
  close(n50, n50Of([dep]))
  expect(said.join('\n')).toMatch(/it is the sum of the rows above, not a reading/)
})

it('keeps the runs of two sheets together where one of them also has readings of another year', async () => {
  const earlier: Rows = [60, 50, 40, 30, 20].map((pressure) => [-pressure, 95 * pressure ** 0.63])
  const { n50 } = read(
    await book({
      House: FORM,
      Dep: [
        ...titled('Depressurisation', dep),
        ...zeroRows(dep),
        [null],
        [null],
        [null],
        ['Test of 12 May 2025'],
        HEADINGS,
        ...earlier,
      ],
      Pres: [...titled('Pressurisation', pres), ...zeroRows(pres)],
    }),
  )
  close(n50, both)
})

describe('a flow whose heading was lost beside a block that has one', () => {
  const rows: Rows = [
    ['Depressurisation', null, null, 'Pressurisation'],
    [HEADINGS[0] as string, null, null, ...HEADINGS],
    ...dep.readings.map((own, index) => [...own, null, ...(pres.readings[index] as [number, number])]),
  ]

  it('is asked about', async () => {
    const { asked, record } = read(await logOf([...zeroRows(dep), ...rows]))
    expect(record).toBeUndefined()
    expect(asked.some((path) => path.endsWith('.column'))).toBe(true)
  })
})
