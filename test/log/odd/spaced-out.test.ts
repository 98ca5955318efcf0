import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import {
  closeTo,
  dep,
  FORM,
  HEADINGS,
  n50Of,
  pres,
  RUNS,
  read,
  sheetOfForm,
  titleOf,
  zeroRows,
} from './house'

// Truth: the independent fit of ./house for what is written into each log, and the number of its readings.
const close = closeTo(0.002)
const blanks = (count: number): Rows => Array.from({ length: count }, () => [null])
const pairs = (one: { readings: [number, number][] }): Rows => one.readings
const below: Rows = RUNS.flatMap((run) => [[null], titleOf(run), ...zeroRows(run), HEADINGS, ...pairs(run)])
const FORM_WITH_UNITS: Rows = [
  ...FORM.slice(0, 2),
  ['Internal volume', 412.6, 'm³'],
  ['Inside temperature', 20.5, '°C'],
  ['Outside temperature', 6.5, '°C'],
  ['Barometer', 1008.4, 'hPa'],
]

/** Every reading is there, and the figure is that of what is written. */
async function expectWhole(bytes: Promise<Uint8Array> | Uint8Array): Promise<void> {
  const { asked, record, n50 } = read(await bytes)
  expect(asked).toEqual([])
  expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
  close(n50, n50Of([dep, pres]))
}

describe('a log with empty lines between all that it holds', () => {
  const spread = (rows: Rows, [down, across]: readonly [number, number]): Rows =>
    rows.flatMap((row) => [
      row.flatMap((cell) => [cell, ...Array.from({ length: across }, () => null)]),
      ...blanks(down),
    ])

  it.each([
    ['every second row', [1, 0]],
    ['every second column', [0, 1]],
    ['two rows and two columns', [2, 2]],
    ['three columns', [0, 3]],
  ] as const)('%s: is read as one without them', async (_, spacing) => {
    await expectWhole(book({ Test: spread([...FORM_WITH_UNITS, ...below], spacing) }))
  })

  it('names the cells of the sheet itself', async () => {
    const bad = below.map((row) => (row[0] === dep.readings[2]?.[0] ? [row[0], 'door opened'] : row))
    const rows = spread([...FORM, ...bad], [1, 1])
    const at = rows.findIndex((row) => row.includes('door opened'))
    const { said } = read(await book({ Test: rows }))
    expect(said.join('\n')).toContain('door opened')
    const { tests } = (await import('@draughtbook/shared-calc/log')).interpretLog(
      { bytes: await book({ Test: rows }), fileName: 'log.xlsx' },
      { answers: {} },
    )
    const cells = tests.flatMap(({ findings }) =>
      findings.filter(({ message }) => message.includes('door opened')).flatMap((one) => one.cells ?? []),
    )
    expect(cells.join()).toMatch(new RegExp(`[AC]${at + 1}\\b`))
  })

  it('has its unit in a cell of its own past an empty one', async () => {
    const rows = FORM_WITH_UNITS.map(([label = null, value = null, unit = null]) => [
      label,
      value,
      null,
      unit,
    ])
    await expectWhole(book({ Test: [...rows, ...below] }))
  })
})

it('a name wrapped in its cell or with fixed blanks is the same name', async () => {
  for (const name of ['Pear Tree\nBarn', 'Pear\u00a0Tree  Barn ', 'Pear Tree Barn'])
    expect(
      read(await book({ Test: [['House', name], ...FORM.slice(1), ...below] })).record?.building.name,
    ).toBe('Pear Tree Barn')
})

describe('readings that go on below a gap', () => {
  const cut = (rows: Rows, gap: number): Rows => [...rows.slice(0, 5), ...blanks(gap), ...rows.slice(5)]

  it.each([4, 6, 9, 14])('of %i rows are all read, one run below the other or beside it', async (gap) => {
    const oneBelow: Rows = RUNS.flatMap((run) => [
      [null],
      titleOf(run),
      ...zeroRows(run),
      HEADINGS,
      ...cut(pairs(run), gap),
    ])
    await expectWhole(sheetOfForm(oneBelow))
    const block = (run: (typeof RUNS)[number]): Rows => [
      titleOf(run),
      ...zeroRows(run),
      HEADINGS,
      ...cut(pairs(run), gap),
    ]
    const [left, right] = [block(dep), block(pres)]
    await expectWhole(
      sheetOfForm(
        left.map((row, at) => [...row, ...[null, null].slice(row.length), null, ...(right[at] ?? [])]),
      ),
    )
  })

  it.each([
    ['a remark, then an empty row', [['window came open, closed again'], [null]] as Rows],
    ['an empty row, then a remark', [[null], ['window came open, closed again']] as Rows],
  ])('with %s', async (_, between) => {
    const rows: Rows = RUNS.flatMap((run) => [
      [null],
      titleOf(run),
      ...zeroRows(run),
      HEADINGS,
      ...pairs(run).slice(0, 4),
      ...between,
      ...pairs(run).slice(4),
    ])
    await expectWhole(sheetOfForm(rows))
  })

  it('are not joined where they begin again at the top, as a second run does', async () => {
    const rows: Rows = [titleOf(dep), ...zeroRows(dep), HEADINGS, ...pairs(dep), ...blanks(6), ...pairs(dep)]
    const { record, asked } = read(await sheetOfForm(rows))
    if (asked.length === 0) expect(record?.runs[0]?.readings).toHaveLength(8)
    expect(record?.runs[0]?.readings.length ?? 0).toBeLessThan(16)
  })

  it('are no results: a word in front, or a flow that does not go with the pressure', async () => {
    for (const row of [
      ['n50', 4.3],
      [4.3, 2.1],
      [70, 0.9],
    ]) {
      const rows: Rows = [...below, ...blanks(6), row]
      const { record } = read(await sheetOfForm(rows))
      if (record) expect(record.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
    }
  })
})

it('headings with their units below an empty row are headings still', async () => {
  const rows: Rows = RUNS.flatMap((run) => [
    [null],
    titleOf(run),
    ...zeroRows(run),
    ['Pressure', 'Flow'],
    [null],
    ['(Pa)', '(m³/h)'],
    ...pairs(run),
  ])
  await expectWhole(sheetOfForm(rows))
})

it('two tests side by side, each with its date in front: neither has the date of the other', async () => {
  const test = (title: string, date: string): Rows => [
    [title],
    ['Date', day(date)],
    [null],
    ['Depressurisation', null, 'Pressurisation'],
    ...zeroRows(dep).map((row, at) => [...row, ...(zeroRows(pres)[at] ?? [])]),
    [...HEADINGS, ...HEADINGS],
    ...dep.readings.map((row, at) => [...row, ...(pres.readings[at] ?? [])]),
    [null],
  ]
  const form = FORM.filter(([label]) => label !== 'Date')
  const rows: Rows = [...form, [null], ...test('Test 1', '2026-03-17'), ...test('Test 2', '2026-03-24')]
  const across: Rows = [0, 1, 2, 3].map((at) => rows.map((row) => row[at] ?? null))
  const { records, asked } = read(await book({ Test: across }))
  const dates = asked.includes('test.date') ? 'asked' : records.map((record) => record?.test.date)
  expect(['asked', ['2026-03-17', '2026-03-24']]).toContainEqual(dates)
})
