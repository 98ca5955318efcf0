import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import { book } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, type OddRun, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const both = n50Of([dep, pres])
const runs: readonly OddRun[] = [dep, pres]
const titleOf = ({ direction }: OddRun) => direction[0]?.toUpperCase() + direction.slice(1)

describe('zero flow around a table', () => {
  const across = (run: OddRun, ...lines: Rows): Rows => [
    [titleOf(run)],
    ...lines,
    ['Δp (Pa)', ...run.readings.map(([p]) => p)],
    ['Flow (m³/h)', ...run.readings.map(([, q]) => q)],
    [null],
  ]
  it.each<[string, Rows]>([
    [
      'across: mean, extremes and number over the first columns of the readings',
      runs.flatMap((run) =>
        across(
          run,
          ['Static pressure (Pa)', 'mean', 'min', 'max', 'n'],
          ['initial', run.before, run.before - 0.6, run.before + 0.5, 20],
          ['final', run.after, run.after - 0.6, run.after + 0.5, 20],
        ),
      ),
    ],
    [
      'across: the means of each sign before that of all',
      runs.flatMap((run) =>
        across(
          run,
          ['Δp01+', run.before > 0 ? run.before + 0.3 : 0.2, 'Pa'],
          ['Δp01-', run.before > 0 ? -0.2 : run.before - 0.3, 'Pa'],
          ['Δp01', run.before, 'Pa'],
          ['Δp02+', run.after > 0 ? run.after + 0.3 : 0.2, 'Pa'],
          ['Δp02-', run.after > 0 ? -0.2 : run.after - 0.3, 'Pa'],
          ['Δp02', run.after, 'Pa'],
        ),
      ),
    ],
    [
      'across: lists with their means between the title and the readings',
      runs.flatMap((run) =>
        across(
          run,
          ['Bias pre (Pa)', run.before - 0.2, run.before, run.before + 0.2, 'mean', run.before],
          ['Bias post (Pa)', run.after - 0.2, run.after, run.after + 0.2, 'mean', run.after],
        ),
      ),
    ],
    [
      'below: a list that begins in the column of the pressures and ends with its mean',
      runs.flatMap(
        (run): Rows => [
          [titleOf(run)],
          ['Baseline before (Pa)', run.before - 0.2, run.before, run.before + 0.2, 'mean', run.before],
          ['No.', 'Δp (Pa)', 'Flow (m³/h)'],
          ...run.readings.map(([p, q], index): Rows[number] => [index + 1, p, q]),
          ['Baseline after (Pa)', run.after - 0.2, run.after, run.after + 0.2, 'mean', run.after],
          [null],
        ],
      ),
    ],
    [
      'below: two values by numbers instead of before and after',
      runs.flatMap(
        (run): Rows => [
          [titleOf(run)],
          ['No.', 'Δp (Pa)', 'Flow (m³/h)'],
          ...run.readings.map(([p, q], index): Rows[number] => [index + 1, p, q]),
          ['Zero flow 1', run.before, 'Pa'],
          ['Zero flow 2', run.after, 'Pa'],
          [null],
        ],
      ),
    ],
    [
      'below a list of both directions: a table of directions and moments',
      [
        ['Direction', 'Δp (Pa)', 'Flow (m³/h)'],
        ...runs.flatMap((run) => run.readings.map(([p, q]): Rows[number] => [titleOf(run), p, q])),
        [null],
        ['Zero-flow pressure', 'start', 'end'],
        ...runs.map((run): Rows[number] => [titleOf(run), run.before, run.after]),
      ],
    ],
  ])('%s', async (_, rows) => {
    const { n50, asked, record } = read(await sheetOfForm(rows))
    expect(asked).toEqual([])
    close(n50, both)
    for (const [index, run] of (record?.runs ?? []).entries()) {
      const truth = runs[index] as OddRun
      const mean = (values: readonly number[] = []) =>
        values.reduce((sum, one) => sum + one, 0) / values.length
      expect(mean(run.zeroFlowBefore_Pa)).toBeCloseTo(truth.before, 6)
      expect(mean(run.zeroFlowAfter_Pa)).toBeCloseTo(truth.after, 6)
    }
  })
})

it('is asked about where only the names of sheets call it zero flow', async () => {
  const list = (mean: number): Rows => [['Pa'], ...[-0.2, 0.1, 0.1].map((by) => [mean + by])]
  const { asked } = read(
    await book({
      House: FORM,
      'Zero before': list(-1.2),
      Depressurisation: [HEADINGS, ...dep.readings],
      Pressurisation: [HEADINGS, ...pres.readings],
      'Zero after': list(0.9),
    }),
  )
  expect(asked).toContain('runs[0].zeroFlow')
})

describe('zero flow of the other run', () => {
  it('is not taken for that of a run whose own could not be read', async () => {
    const { asked, n50 } = read(
      await sheetOfForm(
        runs.flatMap(
          (run): Rows => [
            [titleOf(run)],
            ...([run.before, run.after] as const).map((value, index): Rows[number] => [
              `Static pressure ${index === 0 ? 'before' : 'after'} (Pa)`,
              value < 0 ? `minus ${-value}` : value,
            ]),
            HEADINGS,
            ...run.readings,
            [null],
          ],
        ),
      ),
    )
    if (asked.length === 0) close(n50, both)
    else expect(asked).toEqual(['runs[0].zeroFlow'])
  })

  it('is not taken for that of a run repeated later', async () => {
    const block = (run: OddRun): Rows => [[titleOf(run)], ...zeroRows(run), HEADINGS, ...run.readings, [null]]
    const { asked } = read(
      await sheetOfForm([
        ...block(dep),
        ...block(pres),
        ['Depressurisation repeated after sealing the hatch'],
        HEADINGS,
        ...dep.readings.map(([p, q]): Rows[number] => [p + 0.3, q * 0.8]),
      ]),
    )
    expect(asked).toEqual(['runs[0].zeroFlow'])
  })

  it('is told from its drift and its limit', async () => {
    const { asked, n50 } = read(
      await sheetOfForm([
        ['Baseline limit', 5, 'Pa'],
        ...runs.flatMap(
          (run): Rows => [
            [titleOf(run)],
            ['Baseline pre-test (Pa)', run.before],
            ['Baseline post-test (Pa)', run.after],
            HEADINGS,
            ...run.readings,
            ['Baseline drift (Pa)', run.after - run.before],
            [null],
          ],
        ),
      ]),
    )
    expect(asked).toEqual([])
    close(n50, both)
  })
})
