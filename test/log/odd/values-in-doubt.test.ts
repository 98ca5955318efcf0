import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, type OddRun, pres, read, sheetOfForm } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres] as const
const ZERO: (run: OddRun) => Rows = ({ before, after }) => [
  ['Zero before (Pa)', before],
  ['Zero after (Pa)', after],
]
const title = (run: OddRun) => [run === dep ? 'Depressurisation' : 'Pressurisation']
const bothRuns = (of: (run: OddRun) => Rows): Rows =>
  RUNS.flatMap((run): Rows => [title(run), ...of(run), [null]])
const usual = bothRuns((run) => [...ZERO(run), HEADINGS, ...run.readings])
const INDOOR = 'conditions.indoorTemperature_C'

describe('temperatures that the log states twice', () => {
  const LATER = HOUSE.indoor_C + 3.4
  const log = () => sheetOfForm([...usual, ['For the office'], ['Inside temperature (°C)', LATER]])

  it('are asked for with their cells, and each answer is taken', async () => {
    const bytes = await log()
    const { asked, texts, choices } = read(bytes)
    expect(asked).toEqual([INDOOR])
    expect(texts[0]).toMatch(/20\.5 °C in B4 and 23\.9 °C in B\d+/)
    expect(choices).toEqual(['20.5 °C', '23.9 °C', '22.2 °C'])
    for (const value of [HOUSE.indoor_C, LATER]) {
      const { n50, record } = read(bytes, { [INDOOR]: `${value} °C` })
      expect(record?.conditions.indoorTemperature_C).toBeCloseTo(value, 6)
      close(n50, n50Of(RUNS, { ...HOUSE, indoor_C: value }))
    }
  })

  it('are one where the second is the first in °F', async () => {
    const { asked } = read(
      await sheetOfForm([...usual, ['Inside temperature (°F)', HOUSE.indoor_C * 1.8 + 32]]),
    )
    expect(asked).toEqual([])
  })

  it('are averaged where each run has its own', async () => {
    const own = (run: OddRun): Rows => [['Inside temperature (°C)', run === dep ? 20.1 : 20.9], ...ZERO(run)]
    const form = FORM.filter(([label]) => label !== 'Inside temperature (°C)')
    const bytes = await book({
      Test: [...form, [null], ...bothRuns((run) => [...own(run), HEADINGS, ...run.readings])],
    })
    const { asked, record } = read(bytes)
    expect(asked).toEqual([])
    expect(record?.conditions.indoorTemperature_C).toBeCloseTo(20.5, 6)
  })
})

describe('a unit of pressure that no test can have', () => {
  const log = (unit: string) =>
    sheetOfForm(
      bothRuns(({ before, after, readings }) => [
        [`Zero before (${unit})`, before],
        [`Zero after (${unit})`, after],
        [`Pressure (${unit})`, 'Flow (m³/h)'],
        ...readings,
      ]),
    )

  it.each(['mbar', 'kPa', 'mmH2O'])(
    '%s over numbers in Pa is asked, and zero flow is read as answered',
    async (unit) => {
      const bytes = await log(unit)
      expect(read(bytes).asked).toEqual(['pressure.unit'])
      expect(read(bytes).choices[0]).toBe('Pa')
      close(read(bytes, { 'pressure.unit': 'Pa' }).n50, n50Of(RUNS))
    },
  )

  it('Pa over numbers in mm of water is asked', async () => {
    const mm = (pascal: number) => Number((pascal / 9.80665).toFixed(3))
    const bytes = await sheetOfForm(
      bothRuns(({ before, after, readings }) => [
        ['Zero before (Pa)', mm(before)],
        ['Zero after (Pa)', mm(after)],
        HEADINGS,
        ...readings.map(([p, q]) => [mm(p), q]),
      ]),
    )
    expect(read(bytes).asked).toEqual(['pressure.unit'])
    closeTo(0.004)(read(bytes, { 'pressure.unit': 'mmH2O' }).n50, n50Of(RUNS))
  })
})

it('one flow in two units below the headings of each other is asked by its unit', async () => {
  const bytes = await sheetOfForm(
    bothRuns((run) => [
      ...ZERO(run),
      ['Pressure (Pa)', 'Flow (m³/h)', 'Flow (l/s)'],
      ...run.readings.map(([p, q]) => [p, Number((q / 3.6).toFixed(2)), q]),
    ]),
  )
  expect(read(bytes).asked).toEqual(['flow.unit'])
  close(read(bytes, { 'flow.unit': read(bytes).choices[0] as string }).n50, n50Of(RUNS))
})

describe('formulas of which the file holds no result', () => {
  const formula = { formula: 'AVERAGE(K1:K9)' }

  it('of zero flow are asked for, naming the cell and what to do', async () => {
    const bytes = await sheetOfForm(
      bothRuns(({ after, readings }) => [
        ['Zero before (Pa)', formula],
        ['Zero after (Pa)', after],
        HEADINGS,
        ...readings,
      ]),
    )
    const { asked, texts, record } = read(bytes)
    expect(record).toBeUndefined()
    expect(asked).toEqual(['runs[0].zeroFlow', 'runs[1].zeroFlow'])
    expect(texts[0]).toMatch(/B9 .*formulas without results\. Open the log in a spreadsheet program/)
    const answers = Object.fromEntries(
      RUNS.map(({ before, after }, index) => [`runs[${index}].zeroFlow`, `${before} before, ${after} after`]),
    )
    close(read(bytes, answers).n50, n50Of(RUNS))
  })

  it('of volume and temperature are asked for as such', async () => {
    const bytes = await book({
      Test: [
        ['House', 'Pear Tree Barn'],
        ['Date', day('2026-04-22')],
        ['Internal volume (m³)', formula],
        ['Inside temperature (°C)', formula],
        ['Outside temperature (°C)', HOUSE.outdoor_C],
        [null],
        ...usual,
      ],
    })
    const { texts } = read(bytes)
    expect(texts).toHaveLength(2)
    for (const [text, cell] of [
      [texts[0], 'B4'],
      [texts[1], 'B3'],
    ])
      expect(text).toContain(
        `Cell ${cell} holds a formula without a result. Open the log in a spreadsheet program`,
      )
  })

  it('beside flows that are logged are named as what they are', async () => {
    const { n50, said } = read(
      await sheetOfForm(
        bothRuns((run) => [
          ...ZERO(run),
          ['Pressure (Pa)', 'Flow (l/s)', 'Flow (m³/h)'],
          ...run.readings.map(([p, q]) => [p, Number((q / 3.6).toFixed(2)), formula]),
        ]),
      ),
    )
    close(n50, n50Of(RUNS))
    expect(said.join()).toMatch(
      /Column "Flow \(m³\/h\)" was not used: the file holds its formulas without results/,
    )
  })
})

describe('means of the zero-flow values of one sign', () => {
  const rows = (run: OddRun, both: boolean): Rows => {
    const line = (label: string, mean: number): Rows =>
      both
        ? [
            [`${label}+`, Math.max(0, mean) + 0.3],
            [`${label}-`, Math.min(0, mean) - 0.2],
          ]
        : [
            [`${label}+`, Math.max(0, mean)],
            [`${label}-`, Math.min(0, mean)],
          ]
    return [...line('Δp01', run.before), ...line('Δp02', run.after)]
  }
  const table = (run: OddRun): Rows => [
    ['Soll (Pa)', 'Δp (Pa)', 'V̇ (m³/h)'],
    ...run.readings.map(([p, q], index) => [60 - 5 * index, p, q]),
  ]
  const wholes = ({ before, after }: OddRun): Rows => [
    ['Δp01', before],
    ['Δp02', after],
  ]

  it.each([
    ['below a column of targets', (run: OddRun): Rows => [...table(run), ...rows(run, true), ...wholes(run)]],
    [
      'above the readings',
      (run: OddRun): Rows => [...rows(run, true), ...wholes(run), HEADINGS, ...run.readings],
    ],
    [
      'without the mean of all, one of them nought',
      (run: OddRun): Rows => [...table(run), ...rows(run, false)],
    ],
  ])('%s are none', async (_, of) => {
    const { asked, n50 } = read(await sheetOfForm(bothRuns(of)))
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it.each([
    ['below the readings', (run: OddRun): Rows => [...table(run), ...rows(run, true)]],
    ['above them', (run: OddRun): Rows => [...rows(run, true), HEADINGS, ...run.readings]],
  ])('and no mean of all, %s, is asked for', async (_, of) => {
    const { asked, record } = read(await sheetOfForm(bothRuns(of)))
    expect(record).toBeUndefined()
    expect(asked).toEqual(['runs[0].zeroFlow', 'runs[1].zeroFlow'])
  })
})
