import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import { book } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, type OddRun, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const both = n50Of([dep, pres])
const runs: readonly OddRun[] = [dep, pres]
const titleOf = ({ direction }: OddRun) => direction[0]?.toUpperCase() + direction.slice(1)

describe('the zero flow of a line with other values behind it', () => {
  it.each<[string, (run: OddRun) => Rows]>([
    [
      'those of the fan under a heading of their own',
      ({ before, after }) => [
        [null, 'Building', 'Fan'],
        ['Zero before', before, 0.1],
        ['Zero after', after, -0.2],
      ],
    ],
    [
      'a temperature by two letters',
      ({ before, after }) => [
        ['P0 start', before, 'Pa', 'Te', 6.5],
        ['P0 end', after, 'Pa'],
      ],
    ],
  ])('does not take %s', async (_, zero) => {
    const { n50, asked } = read(
      await sheetOfForm(
        runs.flatMap((run) => [[titleOf(run)], ...zero(run), HEADINGS, ...run.readings, [null]]),
      ),
    )
    expect(asked).toEqual([])
    close(n50, both)
  })

  const years = (first: string, second: string) =>
    sheetOfForm([
      ['Zero flow pressure (Pa)', first, second],
      ...runs.flatMap(
        (run): Rows => [
          [`${titleOf(run)}, before`, -1.9, run.before],
          [`${titleOf(run)}, after`, -1.6, run.after],
        ],
      ),
      [null],
      ...runs.flatMap((run) => [[titleOf(run)], HEADINGS, ...run.readings, [null]]),
    ])

  it('takes that of the year of the test and names the other', async () => {
    const { n50, asked, said } = read(await years('2025', '2026'))
    expect(asked).toEqual([])
    expect(said.join('\n')).toMatch(/"Depressurisation, before" was not used/)
    close(n50, both)
  })

  it('asks where no date tells', async () => {
    expect(read(await years('Gauge 4711', 'Spare gauge')).asked).toEqual([
      'runs[0].zeroFlow',
      'runs[1].zeroFlow',
    ])
  })
})

describe('zero flow that no list of labels foresees', () => {
  it('is asked about where its rows end a table and hold a mean', async () => {
    const listed = (mean: number) => ['Zero', mean - 0.2, mean + 0.3, mean - 0.1, 'mean', mean]
    const { asked, n50 } = read(
      await sheetOfForm(
        runs.flatMap(
          ({ before, after, readings, ...run }): Rows => [
            [titleOf({ before, after, readings, ...run } as OddRun)],
            listed(before),
            ['Pa 1', 'Pa 2', 'Pa 3', 'Mean Pa', 'Flow (m³/h)'],
            ...readings.map(([p, q]) => [p - 0.2, p + 0.1, p + 0.1, p, q]),
            listed(after),
            [null],
          ],
        ),
      ),
    )
    if (asked.length === 0) close(n50, both)
    else expect(asked).toEqual(['runs[0].zeroFlow', 'runs[1].zeroFlow'])
  })

  it('is none where it numbers the values, counts them, or gives their extremes', async () => {
    const { n50, asked } = read(
      await sheetOfForm([
        ['Zero flow', 1, 2, 3, 'number', 'min', 'max', 'mean'],
        ['before (Pa)', dep.before - 0.1, dep.before, dep.before + 0.1, 3, -2.9, 0.3, dep.before],
        ['after (Pa)', dep.after - 0.1, dep.after, dep.after + 0.1, 3, -2.2, 0.4, dep.after],
        HEADINGS,
        ...dep.readings,
      ]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })
})

it('takes a sentence over both runs for both: their pressures are net of zero flow', async () => {
  const net = ({ before, after, readings }: OddRun): Rows =>
    readings.map(([p, q]) => [p - (before + after) / 2, q])
  const { n50, asked } = read(
    await sheetOfForm([
      ['All building pressures below are net of the baseline'],
      ...runs.map((run): Rows[number] => [
        `Baseline before / after, ${run.direction} (Pa)`,
        run.before,
        run.after,
      ]),
      ...runs.flatMap((run) => [[titleOf(run)], HEADINGS, ...net(run), [null]]),
    ]),
  )
  expect(asked).toEqual([])
  close(n50, both)
})

it('takes a block that stands twice on a sheet for one run', async () => {
  const block = (run: OddRun): Rows => [...zeroRows(run), HEADINGS, ...run.readings, [null]]
  const { n50, tests } = read(
    await sheetOfForm([
      [titleOf(dep)],
      ...block(dep),
      [titleOf(pres)],
      ...block(pres),
      ['Depressurisation (copy for the report)'],
      ...block(dep),
    ]),
  )
  expect(tests).toBe(1)
  close(n50, both)
})

it('takes two columns of one form, a direction each, for one test', async () => {
  const across = (label: string, of: (run: OddRun) => number): Rows[number] => [label, ...runs.map(of)]
  const { n50, tests } = read(
    await book({
      Log: [
        ...FORM,
        [null],
        [null, ...runs.map(titleOf)],
        across('Zero flow before [Pa]', ({ before }) => before),
        across('Zero flow after [Pa]', ({ after }) => after),
        ...dep.readings.flatMap(
          (_, index): Rows => [
            across(`Δp ${index + 1} [Pa]`, ({ readings }) => readings[index]?.[0] as number),
            across(`q ${index + 1} [m³/h]`, ({ readings }) => readings[index]?.[1] as number),
          ],
        ),
      ],
    }),
  )
  expect(tests).toBe(1)
  close(n50, both)
})

describe('tests and runs beside one another', () => {
  const other = { ...dep, before: -2.2, after: -2.8 } as unknown as OddRun
  const otherPres = { ...pres, before: 2.2, after: 1.8 } as unknown as OddRun
  const beside = (left: OddRun, right: OddRun, titles: [string, string]): Rows => [
    [titles[0], null, null, titles[1]],
    ['Zero before', left.before, null, 'Zero before', right.before],
    ['Zero after', left.after, null, 'Zero after', right.after],
    ['Pa', 'm³/h', null, 'Pa', 'm³/h'],
    ...left.readings.map(([p, q], index): Rows[number] => [
      p,
      q,
      null,
      right.readings[index]?.[0] as number,
      0.7 * (right.readings[index]?.[1] as number),
    ]),
    [null],
  ]

  it('are two tests of two runs where each test has its columns', async () => {
    const { n50, tests } = read(
      await sheetOfForm([
        ['Test 1', null, null, 'Test 2 (after sealing)'],
        ...beside(dep, other, [titleOf(dep), titleOf(dep)]),
        ...beside(pres, otherPres, [titleOf(pres), titleOf(pres)]),
      ]),
    )
    expect(tests).toBe(2)
    close(n50, both)
  })

  it('are asked about where the second is headed as that of last year', async () => {
    const { asked } = read(
      await sheetOfForm([
        ...beside(dep, other, [titleOf(dep), 'Last year']),
        ...beside(pres, otherPres, [titleOf(pres), 'Last year']),
      ]),
    )
    expect(asked).toContain('test')
  })
})

it('keeps the zero flow in the title line of each run to its run', async () => {
  const one = { ...dep, after: dep.before } as unknown as OddRun
  const two = { ...pres, after: pres.before } as unknown as OddRun
  const { n50, asked } = read(
    await sheetOfForm(
      [one, two].flatMap((run) => [
        [titleOf(run), 'Zero flow', run.before, 'Pa'],
        HEADINGS,
        ...run.readings,
        [null],
      ]),
    ),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([one, two]))
})

it('asks for the zero flow after the readings of a run where only the other has one', async () => {
  const { asked, texts } = read(
    await sheetOfForm([
      [titleOf(dep)],
      ...zeroRows(dep),
      HEADINGS,
      ...dep.readings,
      [null],
      [titleOf(pres)],
      ...zeroRows(pres).slice(0, 1),
      HEADINGS,
      ...pres.readings,
    ]),
  )
  expect(asked).toEqual(['runs[1].zeroFlow'])
  expect(texts.join()).toMatch(/after the readings was found for the pressurisation run/)
})

it('asks about small pressures by words of no language at the same place of each run', async () => {
  const { asked, texts } = read(
    await sheetOfForm(
      runs.flatMap((run) => [
        [titleOf(run), 'z0:', run.before, 'z1:', run.after],
        HEADINGS,
        ...run.readings,
        [null],
      ]),
    ),
  )
  expect(asked).toEqual(['zeroFlow.labels'])
  expect(texts.join()).toContain('"z0:"')
})
