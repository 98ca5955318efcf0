import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import {
  closeTo,
  dep,
  FORM,
  HEADINGS,
  HOUSE,
  listOf,
  n50Of,
  type OddRun,
  pres,
  RUNS,
  read,
  sheetOfForm,
  titleOf,
  zeroRows,
} from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)

/** Two blocks side by side, with a blank column between. */
function beside(left: Rows, right: Rows): Rows {
  const width = Math.max(...left.map((row) => row.length)) + 1
  return Array.from({ length: Math.max(left.length, right.length) }, (_, at) => {
    const [one = [], other = []] = [left[at], right[at]]
    return [...one, ...Array.from({ length: width - one.length }, () => null), ...other]
  })
}

describe('two blocks side by side, one a row lower than the other', () => {
  const block = (
    run: OddRun,
    blank: boolean,
    headings: string[],
    more: (at: number) => (number | string)[],
  ): Rows => [
    titleOf(run),
    ...zeroRows(run),
    ...(blank ? [[null]] : []),
    headings,
    ...run.readings.map(([p, q], at) => ['B', p, q, ...more(at)]),
    ['Average', 40, 440],
  ]

  it.each([
    [
      'air changes behind the flow',
      ['Ring', ...HEADINGS, 'Air changes (1/h)'],
      (at: number) => [2.4 - at / 10],
    ],
    [
      'remarks and wind',
      ['Ring', ...HEADINGS, 'Notes', 'Wind (m/s)'],
      (at: number) => [at === 2 ? 'gust' : 'calm', 1.5],
    ],
  ])('are two runs: %s', async (_, headings, more) => {
    for (const lower of [0, 1]) {
      const [left, right] = RUNS.map((run, at) => block(run, at === lower, headings, more)) as [Rows, Rows]
      const { asked, n50, record } = read(await sheetOfForm(beside(left, right)))
      expect(asked).toEqual([])
      expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
      close(n50, n50Of(RUNS))
    }
  })

  it('keep zero flow in their lines, with remarks behind it', async () => {
    const inLines = (run: OddRun, blank: boolean): Rows => [
      titleOf(run),
      ...(blank ? [[null]] : []),
      [...HEADINGS, 'Fan speed (%)'],
      [run.before, 0, null, 'Fan off pressure, before'],
      ...run.readings.map(([p, q], at) => [p, q, 90 - 6 * at, null]),
      [run.after, 0, null, 'Fan off pressure, after'],
    ]
    for (const lower of [0, 1]) {
      const [left, right] = RUNS.map((run, at) => inLines(run, at === lower)) as [Rows, Rows]
      const { asked, n50, record } = read(await sheetOfForm(beside(left, right)))
      expect(asked).toEqual([])
      expect(record?.runs.map(({ zeroFlowAfter_Pa }) => zeroFlowAfter_Pa)).toEqual([
        [dep.after],
        [pres.after],
      ])
      close(n50, n50Of(RUNS))
    }
  })

  it('keep lists of zero flow over their own readings', async () => {
    const lists = (run: OddRun, blank: boolean): Rows => [
      titleOf(run),
      ['Zero flow before (Pa)', 'Zero flow after (Pa)'],
      ...listOf(run.before).map((value, at) => [value, listOf(run.after)[at] ?? null]),
      ...(blank ? [[null]] : []),
      [null],
      HEADINGS,
      ...run.readings,
    ]
    const { asked, n50 } = read(await sheetOfForm(beside(lists(dep, true), lists(pres, false))))
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })
})

describe('zero-flow pressures numbered 1 and 2', () => {
  const numbered = (run: OddRun, words: string): Rows => [
    titleOf(run),
    [`${words} 1 (Pa)`, ...listOf(run.before)],
    [`${words} 2 (Pa)`, ...listOf(run.after)],
    HEADINGS,
    ...run.readings,
    [null],
  ]

  it.each(['Fan off pressure', 'Static pressure (fan sealed)', 'Zero-flow pressure difference'])(
    'are those before and after, and the log is said not to say so: %s',
    async (words) => {
      const { asked, n50, said, record } = read(
        await sheetOfForm(RUNS.flatMap((run) => numbered(run, words))),
      )
      expect(asked).toEqual([])
      expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual(listOf(dep.before))
      expect(record?.runs[0]?.zeroFlowAfter_Pa).toEqual(listOf(dep.after))
      expect(said.join('\n')).toContain('does not say when')
      close(n50, n50Of(RUNS))
    },
  )
})

describe('a result in the line below the readings', () => {
  it('is no zero-flow pressure, though it stands in the column of pressures', async () => {
    const rows = RUNS.flatMap(
      (run): Rows => [
        titleOf(run),
        ...zeroRows(run),
        ['Ring', 'Pressure (Pa)', 'Flow (m³/s)'],
        ...run.readings.map(([p, q]) => ['B', p, Number((q / 3600).toFixed(6))]),
        ['Flow at 50 Pa (m³/s)', 0.1439],
        [null],
      ],
    )
    const { asked, n50, record } = read(await sheetOfForm(rows))
    expect(asked).toEqual([])
    expect(record?.runs.map((run) => run.zeroFlowAfter_Pa)).toEqual([[dep.after], [pres.after]])
    close(n50, n50Of(RUNS))
  })
})

describe('a temperature for each reading', () => {
  const rows = (warmer: number): Rows =>
    RUNS.flatMap((run) => [
      titleOf(run),
      ...zeroRows(run),
      [...HEADINGS, 'Outside temperature (°C)'],
      ...run.readings.map((reading, at) => [
        ...reading,
        Number((HOUSE.outdoor_C + warmer + (at % 3) / 10).toFixed(1)),
      ]),
      [null],
    ])

  it('gives way to the one stated for the test, and the log is told so', async () => {
    const { asked, said, record } = read(await sheetOfForm(rows(0)))
    expect(asked).toEqual([])
    expect(record?.conditions?.outdoorTemperature_C).toBe(HOUSE.outdoor_C)
    expect(said.join('\n')).toContain('outdoor temperature for each reading')
  })

  it('is asked about where the one stated is far from it', async () => {
    expect(read(await sheetOfForm(rows(4))).asked).toContain('conditions.outdoorTemperature_C')
  })
})

it('"over pressure" and "under pressure" name the directions, "air barrier area" the envelope', async () => {
  const words = { depressurisation: 'Under pressure', pressurisation: 'Over pressure' }
  const rows: Rows = [
    ['Air barrier area (m²)', 401.5],
    [null],
    ...RUNS.flatMap(
      (run): Rows => [[words[run.direction]], ...zeroRows(run), HEADINGS, ...run.readings, [null]],
    ),
  ]
  const { asked, n50, record } = read(await sheetOfForm(rows))
  expect(asked).toEqual([])
  expect(record?.building?.envelopeArea_m2).toBe(401.5)
  expect(FORM.flat()).not.toContain(401.5)
  close(n50, n50Of(RUNS))
})
