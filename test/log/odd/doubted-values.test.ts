import { describe, expect, it } from 'vitest'
import { book, type Rows, sheetOf } from '../support/book'
import {
  closeTo,
  dep,
  FORM,
  HEADINGS,
  HOUSE,
  n50Of,
  type OddRun,
  pres,
  read,
  sheetOfForm,
  zeroRows,
} from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres]
const nameOf = (run: OddRun) => (run === dep ? 'Depressurisation' : 'Pressurisation')
const titled = (run: OddRun, rows: Rows = run.readings): Rows => [
  [nameOf(run)],
  ...zeroRows(run),
  HEADINGS,
  ...rows,
  [null],
]
const formWith = (label: string, row: Rows[number]) =>
  book({
    Test: [
      ...FORM.map((one) => (one[0] === label ? row : one)),
      [null],
      ...RUNS.flatMap((run) => titled(run)),
    ],
  })

describe('a remark behind a value', () => {
  it('that doubts it makes it a question', async () => {
    const wrong = HOUSE.volume_m3 * 1.2
    const bytes = await formWith('Internal volume (m³)', [
      'Internal volume',
      wrong,
      'm³',
      `wrong, use ${HOUSE.volume_m3}`,
    ])
    const { asked, texts } = read(bytes)
    expect(asked).toEqual(['building.volume_m3'])
    expect(texts[0]).toContain(`wrong, use ${HOUSE.volume_m3}`)
    close(read(bytes, { volume: String(HOUSE.volume_m3) }).n50, n50Of(RUNS))
  })

  it('that says a volume is that of the outside is one that doubts it', async () => {
    const row = ['Volume (m³)', HOUSE.volume_m3, 'outside dimensions']
    expect(read(await formWith('Internal volume (m³)', row)).asked).toEqual(['building.volume_m3'])
  })

  it('that does not is named', async () => {
    const bytes = await formWith('Internal volume (m³)', [
      'Internal volume (m³)',
      HOUSE.volume_m3,
      'from the drawings',
    ])
    const { asked, said } = read(bytes)
    expect(asked).toEqual([])
    expect(said.join()).toContain('from the drawings')
  })

  it('is none where it is an example or the label of the next value', async () => {
    const bytes = await formWith('Internal volume (m³)', [
      'Internal volume (m³)',
      HOUSE.volume_m3,
      'e.g. 350.0',
    ])
    expect(read(bytes).said.join()).not.toContain('350')
    const beside = await formWith('House', ['House', 'Pear Tree Barn', 'Envelope area (m²)', 520])
    expect(read(beside).said.join()).not.toContain('remark')
  })
})

describe('rows of a table', () => {
  it('with a mean in front of the samples it was taken of hold one reading a step', async () => {
    const sampled = (run: OddRun) =>
      titled(
        run,
        run.readings.flatMap(([pressure, flow]) => [
          [pressure, flow],
          [pressure - 0.6, flow - 2],
          [pressure + 0.6, flow + 2],
        ]),
      )
    const { record, said, n50 } = read(await sheetOfForm(RUNS.flatMap(sampled)))
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
    expect(said.join()).toContain('one of the values averaged in')
    close(n50, n50Of(RUNS))
  })

  it('without a flow, of which a remark says that there was no flow, are no zero flow', async () => {
    const rows = titled(dep, [[-70.2, null, 'fan at its limit, no flow reading'], ...dep.readings])
    const { asked, said, n50 } = read(await sheetOfForm([...rows, ...titled(pres)]))
    expect(asked).toEqual([])
    expect(said.join()).toContain('no pressure or no flow')
    close(n50, n50Of(RUNS))
  })
})

describe('zero flow by an abbreviation nobody knows', () => {
  it('is asked about where each run has two values that hardly differ, none of them below zero', async () => {
    const rows = [dep, pres].flatMap(
      (run): Rows => [[nameOf(run)], ['ZF1', 1.4], ['ZF2', 1.1], HEADINGS, ...run.readings, [null]],
    )
    const { asked } = read(await sheetOfForm(rows))
    expect(asked).toEqual(['zeroFlow.labels'])
  })
})

describe('a direction that comes twice', () => {
  it('is named in both tests that were made of it', async () => {
    const again = dep.readings.map(([pressure, flow]) => [pressure - 0.5, flow * 1.004])
    const { tests, said } = read(await sheetOfForm([...titled(dep), ...titled(dep, again), ...titled(pres)]))
    expect(tests).toBe(2)
    expect(said.filter((message) => message.includes('two depressurisation runs')).length).toBeGreaterThan(1)
  })

  it('is not where both tests are whole', async () => {
    const { said } = read(
      await sheetOfForm([...titled(dep), ...titled(pres), ...titled(dep), ...titled(pres)]),
    )
    expect(said.join()).not.toContain('twice')
  })
})

describe('a humidity without a label', () => {
  it('in per cent behind a temperature is no second temperature', async () => {
    const bytes = await book(
      {
        Test: [
          ...FORM.map((row) => (row[0] === 'Outside temperature (°C)' ? [...row, '°C', 0.81] : row)),
          [null],
          ...RUNS.flatMap((run) => titled(run)),
        ],
      },
      (workbook) => {
        sheetOf(workbook, 'Test').getCell('D5').numFmt = '0%'
      },
    )
    expect(read(bytes).asked).toEqual([])
  })
})
