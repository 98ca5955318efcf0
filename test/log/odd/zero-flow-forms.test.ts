import { describe, expect, it } from 'vitest'
import { book, type Rows, sheetOf } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, type OddRun, pres, read, sheetOfForm } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)

/** One mm of water at 4 °C is 9.80665 Pa: standard gravity, NIST SP 811. */
const MM_OF_WATER = 9.80665
const PAIR: Rows = [
  ['Depressurisation', null, 'Pressurisation', null],
  [...HEADINGS, ...HEADINGS],
  ...dep.readings.map((reading, index) => [...reading, ...(pres.readings[index] ?? [])]),
]
const meanOf = ({ before, after }: OddRun) => (before + after) / 2

describe('zero flow is read', () => {
  const alone: [string, Rows][] = [
    [
      'behind a label of least, greatest and mean',
      [
        ['Zero flow before min/max/avg (Pa)', `${dep.before - 0.7} / ${dep.before + 0.5} / ${dep.before}`],
        ['Zero flow after min/max/avg (Pa)', dep.after - 0.6, dep.after + 0.4, dep.after],
      ],
    ],
    [
      'below headings of mean and of what is no word of ours',
      [
        ['Zero-flow pressure (Pa)', 'st. dev.', 'mean', 'p95'],
        ['Depressurisation before', 0.5, dep.before, dep.before + 0.9],
        ['Depressurisation after', 0.4, dep.after, dep.after + 0.8],
      ],
    ],
    [
      'in the unit in front of it',
      [
        ['Static pressure before', 'hPa', dep.before / 100],
        ['Static pressure after', 'hPa', dep.after / 100],
      ],
    ],
    [
      'in a sentence among others',
      [[`Remarks: zero flow ${dep.before} Pa before and ${dep.after} Pa after. Light wind.`]],
    ],
    [
      'as two notes with the time of day',
      [
        [`09:45 fan covered: ${dep.before} Pa`],
        ['09:50 start of the readings'],
        [`10:15 fan covered: ${dep.after} Pa`],
      ],
    ],
    [
      'as samples behind a colon',
      [
        [`Zero flow before: ${[-0.2, 0.2, 0].map((off) => (dep.before + off).toFixed(1)).join(', ')} Pa`],
        [`Zero flow after: ${[0.1, -0.1, 0].map((off) => (dep.after + off).toFixed(1)).join(', ')} Pa`],
      ],
    ],
    [
      'in a title, and not from a line about an earlier test',
      [
        ['Last test 2024: n50 2.31, zero -0.4 Pa'],
        [`Depressurisation, P0 = ${dep.before} / ${dep.after} Pa`],
      ],
    ],
    [
      'in front of its labels',
      [
        [dep.before, 'Pa zero flow before'],
        [dep.after, 'Pa zero flow after'],
      ],
    ],
    [
      'with its sign as a remark',
      [
        ['Zero flow before (Pa)', `${-dep.before} (neg)`],
        ['Zero flow after (Pa)', `${-dep.after} (neg)`],
      ],
    ],
    ['behind single letters for before and after', [['Zero flow b', dep.before, 'Pa', 'a', dep.after, 'Pa']]],
  ]
  it.each(alone)('%s', async (_, rows) => {
    const { n50, asked } = read(await sheetOfForm([...rows, [null], HEADINGS, ...dep.readings]))
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })

  const both: [string, Rows][] = [
    [
      'from the mean below those of each sign',
      [
        ['Zero flow (Pa)', 'Dep. before', 'Dep. after', 'Pres. before', 'Pres. after'],
        ['mean of positive values', 0.2, 0.1, 1.2, 1.6],
        ['mean of negative values', -1.8, -1.3, -0.2, -0.1],
        ['mean of all values', dep.before, dep.after, pres.before, pres.after],
      ],
    ],
    [
      'below the headings before, after and mean',
      [
        ['', 'Before', 'After', 'Mean'],
        ['Zero flow dep. (Pa)', dep.before, dep.after, meanOf(dep)],
        ['Zero flow pres. (Pa)', pres.before, pres.after, meanOf(pres)],
      ],
    ],
  ]
  it.each(both)('%s', async (_, rows) => {
    const { n50, asked, record } = read(await sheetOfForm([...rows, [null], ...PAIR]))
    expect(asked).toEqual([])
    expect(record?.runs.map((run) => [run.zeroFlowBefore_Pa, run.zeroFlowAfter_Pa])).toEqual(
      [dep, pres].map(({ before, after }) => [[before], [after]]),
    )
    close(n50, n50Of([dep, pres]))
  })

  it('in the unit behind it, also where the pressures have another', async () => {
    const rows = (['before', 'after'] as const).map((when) => [
      `Zero flow ${when}`,
      Number((dep[when] / MM_OF_WATER).toFixed(5)),
      'mmH2O',
    ])
    const { n50 } = read(await sheetOfForm([...rows, HEADINGS, ...dep.readings]))
    close(n50, n50Of([dep]))
  })

  it('behind a value that was struck out', async () => {
    const bytes = await sheetOfForm(
      [
        ['Zero flow before (Pa)', -4.2, dep.before],
        ['Zero flow after (Pa)', dep.after],
        HEADINGS,
        ...dep.readings,
      ],
      (workbook) => {
        sheetOf(workbook, 'Test').getCell('B8').font = { strike: true }
      },
    )
    close(read(bytes).n50, n50Of([dep]))
  })

  it('from comments on the first and last reading', async () => {
    const bytes = await sheetOfForm([HEADINGS, ...dep.readings], (workbook) => {
      sheetOf(workbook, 'Test').getCell('A9').note = `zero flow before: ${dep.before} Pa`
      sheetOf(workbook, 'Test').getCell('A16').note = `zero flow after: ${dep.after} Pa`
    })
    close(read(bytes).n50, n50Of([dep]))
  })

  it('between two runs as the end of the one and the begin of the other', async () => {
    const [start, between, end] = [dep.before, -0.3, pres.after]
    const { n50 } = read(
      await sheetOfForm([
        ['Zero flow at start (Pa)', start],
        ['Depressurisation'],
        HEADINGS,
        ...dep.readings,
        ['Zero flow between (Pa)', between],
        ['Pressurisation'],
        HEADINGS,
        ...pres.readings,
        ['Zero flow at end (Pa)', end],
      ]),
    )
    close(n50, n50Of([{ ...dep, after: between } as OddRun, { ...pres, before: between } as OddRun]))
  })

  it('before the first run and after the last as that of both', async () => {
    const { n50, asked } = read(
      await sheetOfForm([
        ['Zero flow at start of visit (Pa)', dep.before],
        ['Depressurisation'],
        HEADINGS,
        ...dep.readings,
        ['Pressurisation'],
        HEADINGS,
        ...pres.readings,
        ['Zero flow at end of visit (Pa)', pres.after],
      ]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([{ ...dep, after: pres.after } as OddRun, { ...pres, before: dep.before } as OddRun]))
  })

  it.each(['fan covered', 'sealed'])('from rows that say "%s" where the flow would stand', async (word) => {
    const runOf = ({ before, after, readings }: OddRun): Rows => [
      HEADINGS,
      [before, word],
      ...readings,
      [after, word],
    ]
    const { n50, asked } = read(
      await sheetOfForm([['Depressurisation'], ...runOf(dep), ['Pressurisation'], ...runOf(pres)]),
    )
    expect(asked).toEqual([])
    close(n50, n50Of([dep, pres]))
  })

  it('that a heading calls corrected for: it is added back, and not read as one of before', async () => {
    const { n50, asked, said } = read(
      await sheetOfForm([
        ['Zero flow before (Pa)', dep.before, 'after', dep.after],
        ['Δp corrected for zero flow (Pa)', 'm³/h'],
        ...dep.readings.map(([p, q]) => [p - meanOf(dep), q]),
      ]),
    )
    expect(asked).toEqual([])
    expect(said.join(' ')).toMatch(/already subtracted/)
    close(n50, n50Of([dep]))
  })

  it('of each reading where each has its own, and not as one mean', async () => {
    const drift = dep.readings.map((_, index) => Number((-2 + 0.2 * index).toFixed(1)))
    const rows = dep.readings.map(([pressure, flow], index): [number, number, number, number] => {
      const zero = drift[index] as number
      return [pressure, zero, Number((pressure - zero).toFixed(1)), flow]
    })
    const { n50 } = read(
      await sheetOfForm([['p total (Pa)', 'p zero (Pa)', 'p net (Pa)', 'Flow (m³/h)'], ...rows]),
    )
    const net = {
      ...dep,
      before: 0,
      after: 0,
      readings: rows.map((row): [number, number] => [row[2], row[3]]),
    }
    close(n50, n50Of([net as unknown as OddRun]))
  })
})

it('zero flow is read as far from its label as everything else of a form', async () => {
  const far = (label: string, value: unknown) => [label, null, null, null, null, null, value]
  const { record, n50, said } = read(
    await book({
      Test: [
        ...FORM.map(([label, value]) => far(String(label), value)),
        far('Zero flow before (Pa)', dep.before),
        far('Zero flow after (Pa)', dep.after),
        HEADINGS,
        ...dep.readings,
      ] as Rows,
    }),
  )
  expect(said.join('\n')).not.toMatch(/not used/)
  expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual([dep.before])
  close(n50, n50Of([dep]))
})
