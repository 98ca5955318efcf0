import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, type OddRun, pres, read, sheetOfForm } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const both = n50Of([dep, pres])
const runs = [dep, pres]
const titleOf = ({ direction }: OddRun) =>
  direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
const blocks = (each: (run: OddRun) => Rows, headings = HEADINGS): Rows =>
  runs.flatMap((run): Rows => [[null], [titleOf(run)], ...each(run), headings, ...run.readings])
/** Values around a mean that a gauge shows one after the other. */
const samples = (mean: number) => [-0.3, 0.2, 0.1, 0].map((by) => Number((mean + by).toFixed(1)))

describe('zero flow is read', () => {
  it.each<[string, Rows]>([
    [
      'from the mean of all beside the number of values and the means of one sign',
      blocks(({ before, after }) => [
        ['Zero flow', 'No. of values', 'mean of + (Pa)', 'mean of − (Pa)', 'mean of all (Pa)'],
        ['before', '10', 0.4, before - 0.6, before],
        ['after', '10', 0.3, after - 0.5, after],
      ]),
    ],
    [
      'from a table with the unit between the direction and its values, titled by the blower that is covered',
      [
        ['Druckdifferenz bei abgedichtetem Gebläse', null, 'vor Messung', 'nach Messung'],
        ...[pres, dep].map((run): Rows[number] => [titleOf(run), 'Pa', run.before, run.after]),
        ...blocks(() => []),
      ],
    ],
    [
      'from rows whose fan is off',
      [
        ['Retning', 'Vifte', 'Trykkforskjell (Pa)', 'Luftstrøm (m³/h)'],
        ...runs.flatMap((run): Rows => {
          const title = run === dep ? 'Undertrykk' : 'Overtrykk'
          return [
            [title, 'av', run.before, null],
            ...run.readings.map(([p, q]): Rows[number] => [title, 'på', p, q]),
            [title, 'av', run.after, null],
          ]
        }),
      ],
    ],
    [
      'from the first and last column of readings across, in Dutch',
      [
        [null, 'P0 start', ...dep.readings.map((_, index) => String(index + 1)), 'P0 eind'],
        ...runs.flatMap(
          (run): Rows => [
            [
              run === dep ? 'Onderdruk, Pa' : 'Overdruk, Pa',
              run.before,
              ...run.readings.map(([p]) => p),
              run.after,
            ],
            ['Debiet, m³/h', null, ...run.readings.map(([, q]) => q), null],
          ],
        ),
      ],
    ],
    [
      'where it limits the value in brackets behind the word',
      blocks(({ before, after }) => [
        ['Zero flow, start (max. 5 Pa)', before],
        ['Zero flow, end (max. 5 Pa)', after],
      ]),
    ],
  ])('%s', async (_, rows) => {
    const { n50, asked, record } = read(await sheetOfForm(rows))
    expect(asked).toEqual([])
    close(n50, both)
    for (const [index, run] of (record?.runs ?? []).entries()) {
      expect(run.zeroFlowBefore_Pa).toEqual([runs[index]?.before])
      expect(run.zeroFlowAfter_Pa).toEqual([runs[index]?.after])
    }
  })

  it('from sheets of their own, with a column for each run behind the seconds', async () => {
    const list = (which: 'before' | 'after'): Rows => [
      ['Fan off', ...runs.map(titleOf)],
      ['s', 'Pa', 'Pa'],
      ...samples(0).map((by, index): Rows[number] => [
        3 * (index + 1),
        ...runs.map((run) => Number((run[which] + by).toFixed(1))),
      ]),
    ]
    const { n50, asked, record } = read(
      await book({
        '1 House': FORM,
        '2 Zero flow before': list('before'),
        '3 Readings': [
          ['Depressurisation', null, null, 'Pressurisation'],
          ['Pa', 'm³/h', null, 'Pa', 'm³/h'],
          ...dep.readings.map((reading, index) => [...reading, null, ...(pres.readings[index] ?? [])]),
        ],
        '4 Zero flow after': list('after'),
      }),
    )
    expect(asked).toEqual([])
    close(n50, both)
    expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual(samples(dep.before))
    expect(record?.runs[1]?.zeroFlowAfter_Pa).toEqual(samples(pres.after))
  })
})

describe('no figure is taken for a zero-flow pressure', () => {
  it.each<[string, Rows]>([
    ['a limit', [['Zero flow, limit', 5, 'Pa'], ...blocks(() => [])]],
    [
      'the means of one sign without that of all',
      blocks(({ before, after }) => [
        ['Zero flow (Pa)', 'mean of +', 'mean of −'],
        ['before', 0.4, before - 0.6],
        ['after', 0.3, after - 0.5],
      ]),
    ],
  ])('%s: they are asked for', async (_, rows) => {
    const { record, asked, texts } = read(await sheetOfForm(rows))
    expect(record).toBeUndefined()
    expect(asked).toEqual(['runs[0].zeroFlow', 'runs[1].zeroFlow'])
    expect(texts[0]).toContain('says "Zero flow')
  })
})

it('pressures "corrected for zero flow" in Dutch get the mean back, and are not taken for a list before the readings', async () => {
  const { n50, asked, record } = read(
    await sheetOfForm(
      runs.flatMap((run): Rows => {
        const mean = (run.before + run.after) / 2
        return [
          [null],
          [run === dep ? 'Onderdruk' : 'Overdruk'],
          ['Nuldruk voor (Pa)', run.before, 'Nuldruk na (Pa)', run.after],
          ['Drukverschil, gecorrigeerd voor nuldruk [Pa]', 'Luchtstroom [m³/h]'],
          ...run.readings.map(([p, q]): Rows[number] => [Number((p - mean).toFixed(2)), q]),
        ]
      }),
    ),
  )
  expect(asked).toEqual([])
  close(n50, both)
  expect(record?.runs[0]?.readings[0]?.pressure_Pa).toBeCloseTo(dep.readings[0]?.[0] as number, 6)
})

describe('zero flow of both runs is parted by its direction', () => {
  it('on the sheet of the first run, before and after side by side', async () => {
    const { n50, asked } = read(
      await book({
        Depressurisation: [
          ...FORM,
          ['Zero flow (Pa)', 'before', 'after'],
          ...runs.map((run): Rows[number] => [titleOf(run), run.before, run.after]),
          [null],
          HEADINGS,
          ...dep.readings,
        ],
        Pressurisation: [HEADINGS, ...pres.readings],
      }),
    )
    expect(asked).toEqual([])
    close(n50, both)
  })

  it('below one label for before and after, side by side over each block', async () => {
    const { n50, asked } = read(
      await sheetOfForm([
        ['Unterdruck', null, null, 'Überdruck'],
        ['Δp₀ vor/nach [Pa]', null, null, 'Δp₀ vor/nach [Pa]'],
        [dep.before, dep.after, null, pres.before, pres.after],
        ['Δp [Pa]', 'q [m³/h]', null, 'Δp [Pa]', 'q [m³/h]'],
        ...dep.readings.map((reading, index): Rows[number] => [
          ...reading,
          null,
          ...(pres.readings[index] ?? []),
        ]),
      ]),
    )
    expect(asked).toEqual([])
    close(n50, both)
  })
})
