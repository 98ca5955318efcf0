import { expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, pres, read, zeroRows } from './house'

// Truth: what is typed into the sheet, and n50 of an independent fit; nothing comes from the reader.
const close = closeTo(0.0008)
const runs: Rows = [dep, pres].flatMap((run, index) => [
  [null],
  [index === 0 ? 'Depressurisation' : 'Pressurisation'],
  ...zeroRows(run),
  HEADINGS,
  ...run.readings,
])
const withRows = (...rows: Rows) => book({ Test: [...FORM, ...rows, ...runs] })

it('what a line says of a previous test is not taken for this one', async () => {
  const former: Rows = [['Previous test', day('2025-02-14'), 'n50', 5.21, 'at volume (m³)', 431]]
  const { asked, record, n50 } = read(await book({ Test: [...former, ...FORM, ...runs] }))
  expect(asked).toEqual([])
  expect(record?.test.date).toBe('2026-04-22')
  expect(record?.building.volume_m3).toBe(HOUSE.volume_m3)
  close(n50, n50Of([dep, pres]))
})

it('two days that are both called the date are asked about; that of the test goes before others', async () => {
  const without = FORM.filter(([label]) => label !== 'Date')
  const log = (...rows: Rows) => book({ Test: [...without, ...rows, ...runs] })
  const open = read(await log(['Date', day('2026-04-22')], ['Date', day('2026-05-06')]))
  expect(open.asked).toEqual(['test.date'])
  expect(open.choices).toEqual(['2026-04-22', '2026-05-06'])
  const clear = read(await log(['Ordered', day('2026-03-02')], ['Tested on', day('2026-04-22')]))
  expect(clear.asked).toEqual([])
  expect(clear.record?.test.date).toBe('2026-04-22')
})

it('the net floor area is taken where a gross one is listed too', async () => {
  const { asked, record } = read(
    await withRows(['Gross floor area (m²)', 196.4], ['Net floor area (m²)', 163.2]),
  )
  expect(asked).toEqual([])
  expect(record?.building.floorArea_m2).toBe(163.2)
})

it('net and gross side by side are told apart by their headings', async () => {
  const form = FORM.filter(([label]) => !/volume/i.test(String(label)))
  const sizes: Rows = [
    ['', 'net', 'gross'],
    ['Volume (m³)', HOUSE.volume_m3, 498.5],
    ['Floor area (m²)', 163.2, 196.4],
  ]
  const { asked, record } = read(await book({ Test: [...form, ...sizes, ...runs] }))
  expect(asked).toEqual([])
  expect(record?.building).toMatchObject({ volume_m3: HOUSE.volume_m3, floorArea_m2: 163.2 })
})

it.each([
  [
    'below one another',
    [
      ['Envelope area (m²)', 512.4],
      ['Envelope area as built (m²)', 498.1],
    ],
    'envelopeArea_m2',
  ],
  ['side by side', [['Floor area (m²)', 163.2, 171.8]], 'floorArea_m2'],
] as [string, Rows, 'envelopeArea_m2' | 'floorArea_m2'][])(
  'two areas that nothing tells apart are asked about: %s',
  async (_, rows, field) => {
    const bytes = await withRows(...rows)
    const { asked, choices } = read(bytes)
    expect(asked).toEqual([`building.${field}`])
    expect(choices).toHaveLength(2)
    const answered = read(bytes, { [`building.${field}`]: choices[1] as string })
    expect(answered.record?.building[field]).toBe(Number.parseFloat(choices[1] as string))
  },
)

it('a hidden column in front of the values that are shown is passed over', async () => {
  const shifted = FORM.map(([label, value]): Rows[number] => [
    label as string,
    typeof value === 'number' ? value * 1.5 : value instanceof Date ? day('2024-01-09') : 'Draft House',
    value as number,
  ])
  const bytes = await book(
    {
      Test: [...shifted, ...runs.map(([first = null, second = null]): Rows[number] => [first, null, second])],
    },
    (workbook) => {
      const sheet = workbook.getWorksheet('Test')
      if (sheet) sheet.getColumn(2).hidden = true
    },
  )
  const { record } = read(bytes)
  expect(record?.building).toMatchObject({ name: 'Pear Tree Barn', volume_m3: HOUSE.volume_m3 })
  expect(record?.conditions).toMatchObject({ indoorTemperature_C: 20.5, outdoorTemperature_C: 6.5 })
  expect(record?.test.date).toBe('2026-04-22')
})

it('readings of an earlier visit in a table beside do not hide those of the test', async () => {
  const old = dep.readings.map(([pressure, flow]) => [pressure, Number((flow * 1.4).toFixed(1))])
  const table: Rows = [['Last visit, for comparison'], HEADINGS, ...old] as Rows
  const form = [...FORM, ...runs]
  const rows = form.map((row, index): Rows[number] => {
    const beside = table[index - FORM.length - 1]
    return beside ? [...row, ...Array(4 - row.length).fill(null), ...beside] : row
  })
  const bytes = await book({ Test: rows })
  const { asked, choices } = read(bytes)
  expect(asked).toContain('test')
  expect(choices).toContain('Last visit, for comparison')
  close(read(bytes, { test: choices[0] as string }).n50, n50Of([dep, pres]))
})

it('the day of an export is the date of the test only with a word about it, whatever number stands above', async () => {
  const others = FORM.filter(([label]) => label !== 'Date')
  expect(others.length).toBe(FORM.length - 1)
  const head: Rows = [['Serial', 'G-0098'], ['Exported', day('2026-04-23')], [null]]
  const { record, said, asked } = read(await book({ Test: [...head, ...others, ...runs] }))
  expect(asked).toEqual([])
  expect(record?.test.date).toBe('2026-04-23')
  expect(said.join()).toContain('No date in the log is labelled as the date of the test')
})
