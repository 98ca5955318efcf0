import { expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, pres, read, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const both = n50Of([dep, pres])
const runs = [dep, pres]
const across = runs.flatMap(
  (run): Rows => [
    [run.direction],
    ...zeroRows(run),
    [HEADINGS[0] ?? '', ...run.readings.map(([pressure]) => pressure)],
    [HEADINGS[1] ?? '', ...run.readings.map(([, flow]) => flow)],
    [null],
  ],
)
const results: Rows = [
  ['', 'Depressurisation', 'Pressurisation', 'Mean'],
  ['n', 0.64, 0.65],
  ['q50 (m³/h)', 518, 519],
  ['n50 (1/h)', 1.25, 1.26],
]

it.each<[string, Rows]>([
  ['below a blank line', across],
  ['right below the readings', across.slice(0, -1)],
])('takes no results for readings below tables across, %s', async (_, rows) => {
  const { n50, asked, tests } = read(await book({ Test: [...FORM, [null], ...rows, ...results] }))
  expect(asked).toEqual([])
  expect(tests).toBe(1)
  close(n50, both)
})

it('reads labels in one line and their values in the next, right above the readings', async () => {
  const form: Rows = [
    ['House', 'Date', 'Volume (m³)', 'Inside (°C)', 'Outside (°C)', 'Barometer (hPa)'],
    ['Elm Row 3', '22/04/2026', HOUSE.volume_m3, HOUSE.indoor_C, HOUSE.outdoor_C, HOUSE.barometer_Pa / 100],
  ]
  const rows = runs.flatMap((run): Rows => [[run.direction], HEADINGS, ...run.readings, ...zeroRows(run)])
  const { n50, asked, record } = read(await book({ Test: [...form, ...rows] }))
  expect(asked).toEqual([])
  expect(record?.building.name).toBe('Elm Row 3')
  close(n50, both)
})

it('takes neither a title nor the label of zero flow for the number of the test', async () => {
  const rows: Rows = [
    ['Airtightness test record', null, 'Sheet 1 of 1'],
    ...FORM,
    [`${dep.direction} test: zero flow before (Pa)`, dep.before],
    [`${dep.direction} test: zero flow after (Pa)`, dep.after],
    [null],
    HEADINGS,
    ...dep.readings,
  ]
  const { record, n50 } = read(await book({ Test: rows }))
  expect(record?.test.id).toBeUndefined()
  close(n50, n50Of([dep]))
})
