import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, type OddRun, pres, read, zeroRows } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres]
const titleOf = (run: OddRun) => (run === dep ? 'Depressurisation' : 'Pressurisation')
const sheet = (rows: Rows) => book({ Test: [...FORM, [null], ...rows] })
const bothRuns = (of: (run: OddRun) => Rows): Rows =>
  RUNS.flatMap((run): Rows => [[titleOf(run)], ...of(run)])
const table = (run: OddRun): Rows => [...zeroRows(run), HEADINGS, ...run.readings]

describe('tables that are no test of the house', () => {
  it.each([
    [
      'air terminals above the readings',
      [
        ['Balancing of the ventilation'],
        ['Room', 'Flow (m³/h)', 'Pressure (Pa)'],
        ['Kitchen', 78, 92],
        ['Bath', 31, 104],
        ['WC', 30, 101],
        ['Store', 16, 98],
        [null],
        ...bothRuns(table),
      ],
    ],
    [
      'a list of leaks, all at one pressure',
      [
        ...bothRuns(table),
        [null],
        ['Leaks'],
        ['No.', 'Place', 'Δp (Pa)', 'v (m/s)', 'Flow (m³/h)'],
        [1, 'Window', 50, 1.9, 8.2],
        [2, 'Cable', 50, 2.4, 5.2],
        [3, 'Hatch', 50, 3.3, 23.8],
      ],
    ],
    [
      'flows read off the curve',
      [
        ...bothRuns(table),
        [null],
        ['Evaluation: flows at reference pressures'],
        ['Pressure (Pa)', 'Flow (m³/h)'],
        ...[10, 20, 30, 40, 50, 60].map((p): [number, number] => [p, Number((41.7 * p ** 0.644).toFixed(1))]),
      ],
    ],
  ] as [string, Rows][])('%s are left out, and said to be', async (_, rows) => {
    const { asked, tests, n50 } = read(await sheet(rows))
    expect([tests, asked]).toEqual([1, []])
    close(n50, n50Of(RUNS))
  })

  it('ducts on a sheet of their own are left out', async () => {
    const bytes = await book({
      House: [...FORM, [null], ...bothRuns(table)],
      Ducts: [
        ['Duct leakage'],
        ['Pressure (Pa)', 'Leakage (m³/h)'],
        [100, 6.3],
        [200, 9.9],
        [300, 12.8],
        [400, 15.5],
      ],
    })
    const { asked, tests, n50 } = read(bytes)
    expect([tests, asked]).toEqual([1, []])
    close(n50, n50Of(RUNS))
  })

  it('a first try whose title right above its headings says that it is invalid is left out', async () => {
    const { asked, tests, n50 } = read(
      await sheet([
        ['First try (invalid, window open)'],
        HEADINGS,
        [-50.3, 811],
        [-40.1, 702],
        [-30.2, 588],
        [null],
        ...bothRuns(table),
      ]),
    )
    expect([tests, asked]).toEqual([1, []])
    close(n50, n50Of(RUNS))
  })
})

describe('rows of a table that are worked out', () => {
  const numbered = (run: OddRun): Rows => run.readings.map(([p, q], index) => [index + 1, p, q])
  const flowAt50 = 518.3

  it.each(['calculated at 50 Pa', 'interpoliert', 'q50'])('"%s" is no reading', async (label) => {
    const { asked, n50, said } = read(
      await sheet(
        bothRuns((run) => [
          ...zeroRows(run),
          ['Step', ...HEADINGS],
          ...numbered(run),
          [label, run === dep ? -50 : 50, flowAt50],
        ]),
      ),
    )
    expect(asked).toEqual([])
    expect(said.join()).toContain(label)
    close(n50, n50Of(RUNS))
  })

  it('one with a name among numbered rows is asked about', async () => {
    const { asked } = read(
      await sheet(
        bothRuns((run) => [
          ...zeroRows(run),
          ['Step', ...HEADINGS],
          ...numbered(run),
          ['at reference', run === dep ? -50 : 50, flowAt50],
        ]),
      ),
    )
    expect(asked).toContain('readings.remarked')
  })

  it('a word for a pressure leaves its line out and does not end the table', async () => {
    const { record, said } = read(
      await sheet(
        bothRuns((run) => [
          ...zeroRows(run),
          HEADINGS,
          ...run.readings.map(([p, q], index): Rows[number] => [index === 5 && run === pres ? 'n.d.' : p, q]),
        ]),
      ),
    )
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 7])
    expect(said.join()).toContain('n.d.')
  })

  it('headings that come again, as on a printed page, part no table', async () => {
    const { asked, n50 } = read(
      await sheet(
        bothRuns((run) => [
          ...zeroRows(run),
          HEADINGS,
          ...run.readings.slice(0, 5),
          HEADINGS,
          ...run.readings.slice(5),
        ]),
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })
})

describe('two houses in a workbook', () => {
  const form = (name: string, volume: number): Rows => [
    ['House', name],
    ['Date', day('2026-04-22')],
    ['Internal volume (m³)', volume],
    ['Inside temperature (°C)', HOUSE.indoor_C],
    ['Outside temperature (°C)', HOUSE.outdoor_C],
    [null],
  ]
  const other = {
    ...dep,
    readings: dep.readings.map(([p, q]): [number, number] => [p, Number((q * 1.3).toFixed(1))]),
  }

  it('the readings of one on the sheet of the other are asked about', async () => {
    const bytes = await book({
      'House A': [...form('Barn A', HOUSE.volume_m3), ...bothRuns(table)],
      'House B': [
        ...form('Barn B', 388),
        ['Depressurisation'],
        ...table(other),
        ['Pressurisation'],
        ...table(pres),
      ],
    })
    expect(read(bytes).asked).toEqual(['readings.copied'])
    const [, second] = interpretLog(
      { bytes, fileName: 'log.xlsx' },
      { answers: { 'readings.copied': 'leave out' } },
    ).tests
    expect(second?.record?.runs.map(({ direction }) => direction)).toEqual(['depressurisation'])
  })

  it('take their zero flow from the row of a list that names them', async () => {
    const second = [other, pres].map(
      (run, index): OddRun => ({ ...run, before: 0.3 - index, after: 0.5 - index }) as OddRun,
    )
    const bare = (run: OddRun): Rows => [[run.direction], HEADINGS, ...run.readings]
    const bytes = await book({
      'House A': [...form('Barn A', HOUSE.volume_m3), ...RUNS.flatMap(bare)],
      'House B': [...form('Barn B', 388), ...second.flatMap(bare)],
      'Zero flow': [
        ['Zero-flow pressures (Pa)'],
        [
          'House',
          'Depressurisation before',
          'Depressurisation after',
          'Pressurisation before',
          'Pressurisation after',
        ],
        ['House A', dep.before, dep.after, pres.before, pres.after],
        ['House B', ...second.flatMap(({ before, after }) => [before, after])],
      ],
    })
    const { tests } = interpretLog(
      { bytes, fileName: 'log.xlsx' },
      { answers: { 'readings.copied': 'read' } },
    )
    const zeros = tests.map(({ draft }) =>
      (draft.runs as { zeroFlowBefore_Pa: number[]; zeroFlowAfter_Pa: number[] }[]).map((run) => [
        ...run.zeroFlowBefore_Pa,
        ...run.zeroFlowAfter_Pa,
      ]),
    )
    expect(zeros).toEqual([RUNS, second].map((runs) => runs.map(({ before, after }) => [before, after])))
  })
})
