import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)

describe('a zero flow that no run took', () => {
  const bytes = () =>
    sheetOfForm([
      ...zeroRows(dep),
      HEADINGS,
      ...dep.readings,
      [null],
      ['Zero flow after the third attempt (Pa)', 3.7],
    ])

  it('is asked about beside those that were read', async () => {
    const { asked, texts, choices, n50 } = read(await bytes())
    expect(asked).toEqual(['runs[0].zeroFlow'])
    expect(texts.join()).toContain('"Zero flow after the third attempt (Pa)"')
    expect(choices).toEqual(['as read', '-1.4 Pa before, 3.7 Pa after'])
    expect(n50).toBeUndefined()
  })

  it.each([
    ['as read', dep.before, dep.after],
    ['3.7 Pa', 3.7, 3.7],
    [`${dep.before} Pa before, 3.7 Pa after`, dep.before, 3.7],
    ['-2.1 before, 0.4 after', -2.1, 0.4],
    ['−2.1 / 0.4', -2.1, 0.4],
  ])('is settled by the answer "%s"', async (answer, before, after) => {
    const { n50, asked } = read(await bytes(), { 'runs[0].zeroFlow': answer })
    expect(asked).toEqual([])
    close(n50, n50Of([{ ...dep, before, after } as typeof dep]))
  })

  it('is settled by nothing that is no pressure', async () => {
    const { problems } = read(await bytes(), { 'runs[0].zeroFlow': 'the usual' })
    expect(problems.join()).toMatch(/"the usual" is not a zero-flow pressure/)
  })

  it('is neither asked about nor named where it is the mean of those read', async () => {
    const { asked, said } = read(
      await sheetOfForm([
        ...zeroRows(dep),
        ['Zero flow mean (Pa)', (dep.before + dep.after) / 2],
        HEADINGS,
        ...dep.readings,
      ]),
    )
    expect(asked).toEqual([])
    expect(said.join()).not.toMatch(/was not used for any run/)
  })
})

describe('a text on zero flow that could not be read', () => {
  const titled = (title: string) => sheetOfForm([[title], HEADINGS, ...dep.readings])
  const title = `Depressurisation, baseline fluctuating about ${dep.before} Pa`

  it('is asked about, and not left out of the result', async () => {
    const open = read(await titled(title))
    expect(open.asked).toEqual(['runs[0].zeroFlow'])
    const { n50 } = read(await titled(title), {
      'runs[0].zeroFlow': `${dep.before} before, ${dep.after} after`,
    })
    close(n50, n50Of([dep]))
  })

  it('may be answered with none, and it is said', async () => {
    const { said, n50 } = read(await titled(title), { 'runs[0].zeroFlow': 'none' })
    expect(said.join('\n')).toMatch(/has no zero-flow pressures, as you answered/)
    close(n50, n50Of([{ ...dep, before: 0, after: 0 } as unknown as typeof dep]))
  })

  it('is not asked about where the pressures are corrected already', async () => {
    const mean = (dep.before + dep.after) / 2
    const { asked } = read(
      await sheetOfForm([
        ['Zero flow about -1.2 Pa all day'],
        ['Corrected pressure (Pa)', 'Flow (m³/h)'],
        ...dep.readings.map(([p, q]) => [Number((p - mean).toFixed(2)), q]),
      ]),
    )
    expect(asked).toEqual([])
  })

  it('without a value is named', async () => {
    const { said, asked } = read(await titled('Zero flow was measured with the fan sealed'))
    expect(asked).toEqual([])
    expect(said.join('\n')).toMatch(/"Zero flow was measured with the fan sealed" was not used/)
  })
})

describe('zero flow in a title', () => {
  it.each([
    ['Depressurisation (zero flow B / A Pa)', 'Pressurisation (zero flow B / A Pa)'],
    ['Unterdruck, Nulldruck vorher B Pa, nachher A Pa', 'Überdruck, Nulldruck vorher B Pa, nachher A Pa'],
    [
      'Depressurisation, natural pressure before test B Pa, after test A Pa',
      'Pressurisation, natural pressure before test B Pa, after test A Pa',
    ],
    ['Dépression [pression nulle : B → A Pa]', 'Surpression [pression nulle : B → A Pa]'],
  ])('is read: %s', async (first, second) => {
    const filled = (text: string, { before, after }: typeof dep) =>
      text.replace('B', String(before)).replace(/A(?= Pa)/, String(after))
    const { n50, asked } = read(
      await sheetOfForm([
        [filled(first, dep)],
        HEADINGS,
        ...dep.readings,
        [null],
        [filled(second, pres as unknown as typeof dep)],
        HEADINGS,
        ...pres.readings,
      ]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep, pres]))
  })
})

describe('zero flow in a column beside the readings', () => {
  const withColumn = (values: readonly (number | null)[]) =>
    sheetOfForm([
      [...HEADINGS, 'Baseline (Pa)'],
      ...dep.readings.map((row, at) => [...row, values[at] ?? null]),
    ])

  it('of two values is that before and after', async () => {
    const { record, n50 } = read(
      await withColumn([dep.before, null, null, null, null, null, null, dep.after]),
    )
    expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual([dep.before])
    expect(record?.runs[0]?.zeroFlowAfter_Pa).toEqual([dep.after])
    close(n50, n50Of([dep]))
  })

  it('with a value in each row is their mean, with a caution', async () => {
    const step = (dep.after - dep.before) / 7
    const { said, n50 } = read(await withColumn(dep.readings.map((_, at) => dep.before + at * step)))
    expect(said.join('\n')).toMatch(/does not say whether the zero-flow pressures were taken before or after/)
    close(n50, n50Of([dep]))
  })
})

it('reads a table of flats whose name, volume and zero flow stand in the first row of each', async () => {
  const other = 398.2
  const [, ...blank] = ['', null, null, null, null, null, null]
  const rowsOf = (name: string, volume: number, run: typeof dep): Rows =>
    run.readings.map((row, at) => [
      ...(at === 0
        ? [name, volume, HOUSE.indoor_C, HOUSE.outdoor_C, HOUSE.barometer_Pa / 100, run.before, run.after]
        : [null, ...blank]),
      ...row,
    ])
  const later = { ...dep, before: -2.2, after: -2.8 } as unknown as typeof dep
  const bytes = await book({
    Test: [
      ['Date', day('2026-04-22')],
      [
        'Flat',
        'Volume m³',
        'Ti °C',
        'Te °C',
        'Baro hPa',
        'Zero before Pa',
        'Zero after Pa',
        'Δp Pa',
        'q m³/h',
      ],
      ...rowsOf('Flat 1', HOUSE.volume_m3, dep),
      ...rowsOf('Flat 2', other, later),
    ],
  })
  const { n50, tests } = read(bytes)
  expect(tests).toBe(2)
  close(n50, n50Of([dep]))
  const second = read(bytes, { test: 'Flat 2' })
  close(second.n50, (n50Of([later]) * HOUSE.volume_m3) / other)
})

describe('readings in lines below one another', () => {
  const lines = (run: typeof dep): Rows =>
    run.readings.flatMap(
      ([p, q], at): Rows => [[`Point ${at + 1}`], ['pressure', p, 'Pa'], ['flow', q, 'm³/h']],
    )

  it('are read with their units', async () => {
    const { n50, asked } = read(await sheetOfForm([...zeroRows(dep), [null], ...lines(dep)]))
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })

  it('of two runs are parted by the titles between them', async () => {
    const second = pres as unknown as typeof dep
    const { n50, asked } = read(
      await sheetOfForm([
        ['Depressurisation'],
        ...zeroRows(dep),
        ...lines(dep),
        ['Pressurisation'],
        ...zeroRows(second),
        ...lines(second),
      ]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep, pres]))
  })
})

it('takes the mean of zero flow from a column headed so, between the least and the highest value', async () => {
  const { n50, asked } = read(
    await sheetOfForm([
      ['Zero flow', 'min', 'mean', 'max'],
      ['before (Pa)', -2.6, dep.before, -0.3],
      ['after (Pa)', -2.1, dep.after, 0.2],
      HEADINGS,
      ...dep.readings,
    ]),
  )
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

it.each(['Samples', 'No. of points', 'Stichproben'])(
  'takes no number of zero-flow values for one, headed "%s"',
  async (heading) => {
    const { n50, asked } = read(
      await sheetOfForm([
        ['Static pressure', 'Average', heading],
        ['Before (Pa)', dep.before, 12],
        ['After (Pa)', dep.after, 12],
        HEADINGS,
        ...dep.readings,
      ]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  },
)

it('asks for the zero flow of a run where only the other run has one', async () => {
  const { asked } = read(
    await sheetOfForm([
      ['Depressurisation'],
      ['Dep zero flow before (Pa)', dep.before],
      ['Dep zero flow after (Pa)', dep.after],
      HEADINGS,
      ...dep.readings,
      [null],
      ['Pressurisation'],
      HEADINGS,
      ...pres.readings,
    ]),
  )
  expect(asked).toEqual(['runs[1].zeroFlow'])
})

// Some standards ask for the means of the positive and of the negative values beside the mean of all.
describe('means of one sign beside the mean of all', () => {
  const [b, a] = [dep.before, dep.after]
  it.each([
    ['signs alone', ['', '+', '−', 'all']],
    ['words and signs', ['Zero flow', 'mean + (Pa)', 'mean − (Pa)', 'mean (Pa)']],
    ['words', ['', 'mean of positive values', 'mean of negative values', 'mean']],
  ])('are no zero-flow pressures: columns headed with %s', async (_, heads) => {
    const rows: Rows = [heads, ['Zero flow before', 0.3, b - 0.4, b], ['Zero flow after', 0.2, a - 0.3, a]]
    close(read(await sheetOfForm([...rows, HEADINGS, ...dep.readings])).n50, n50Of([dep]))
  })

  it('give way to the mean in brackets behind them', async () => {
    const text = (mean: number) => `${(mean - 0.4).toFixed(1)} / +0.3 (mean ${mean.toFixed(1)} Pa)`
    const rows: Rows = [
      ['Zero flow before', text(b)],
      ['Zero flow after', text(a)],
    ]
    close(read(await sheetOfForm([...rows, HEADINGS, ...dep.readings])).n50, n50Of([dep]))
  })

  it('are told from columns of the two directions', async () => {
    const rows: Rows = [
      ['', 'Negative pressure', 'Positive pressure'],
      ['Zero flow before (Pa)', dep.before, pres.before],
      ['Zero flow after (Pa)', dep.after, pres.after],
      ['Depressurisation'],
      HEADINGS,
      ...dep.readings,
      ['Pressurisation'],
      HEADINGS,
      ...pres.readings,
    ]
    close(read(await sheetOfForm(rows)).n50, n50Of([dep, pres]))
  })
})
