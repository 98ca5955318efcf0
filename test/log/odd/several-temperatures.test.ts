import { expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, pres, read, zeroRows } from './house'

// Truth: the mean of what is written, and n50 of an independent fit with the air of that mean; nothing comes from the reader.
const close = closeTo(0.0008)
const INSIDE = [20.1, 20.9] as const
const OUTSIDE = [6.2, 6.8] as const
const title = (text: string): Rows[number] => [text]
const isOfAir = ([label]: Rows[number]) => /temperature/.test(String(label))
const form = FORM.filter((row) => !isOfAir(row))
const bothRuns: Rows = [
  title('Depressurisation'),
  ...zeroRows(dep),
  HEADINGS,
  ...dep.readings,
  [null],
  title('Pressurisation'),
  ...zeroRows(pres),
  HEADINGS,
  ...pres.readings,
]
const logWith = (rows: Rows) => book({ Test: [...form, ...rows, [null], ...bothRuns] })

const MEANS: [string, Rows][] = [
  [
    'in lines for start and end below headings of the sides',
    [
      ['', 'Inside (°C)', 'Outside (°C)'],
      ['Start', INSIDE[0], OUTSIDE[0]],
      ['End', INSIDE[1], OUTSIDE[1]],
    ],
  ],
  [
    'behind the words start and end in a line',
    [
      ['Inside temperature (°C)', 'start', INSIDE[0], 'end', INSIDE[1]],
      ['Outside temperature (°C)', 'start', OUTSIDE[0], 'end', OUTSIDE[1]],
    ],
  ],
  [
    'both in one cell with a word each',
    [
      ['Inside temperature', `${INSIDE[0]} °C (start), ${INSIDE[1]} °C (end)`],
      ['Outside temperature', `${OUTSIDE[0]} °C (start), ${OUTSIDE[1]} °C (end)`],
    ],
  ],
  [
    'two in a cell behind "before/after"',
    [
      ['Indoor temp (before/after) °C', INSIDE.join('/')],
      ['Outdoor temp (before/after) °C', OUTSIDE.join('/')],
    ],
  ],
  [
    'as pairs of both sides before and after',
    [
      ['Temp (in/out) before °C', INSIDE[0], OUTSIDE[0]],
      ['Temp (in/out) after °C', INSIDE[1], OUTSIDE[1]],
    ],
  ],
]

it.each(MEANS)('two temperatures of each side are averaged: %s', async (_, rows) => {
  const { asked, record, said, n50 } = read(await logWith(rows))
  expect(asked).toEqual([])
  expect(record?.conditions.indoorTemperature_C).toBeCloseTo(20.5, 6)
  expect(record?.conditions.outdoorTemperature_C).toBeCloseTo(6.5, 6)
  expect(said.some((message) => message.includes('mean'))).toBe(true)
  close(n50, n50Of([dep, pres]))
})

it('a pair of temperatures in the title of each run is averaged', async () => {
  const rows: Rows = [dep, pres].flatMap(
    (run, index): Rows => [
      [
        index === 0 ? 'Depressurisation' : 'Pressurisation',
        '',
        'Ti / Te (°C)',
        INSIDE[index] as number,
        OUTSIDE[index] as number,
      ],
      ...zeroRows(run),
      HEADINGS,
      ...run.readings,
      [null],
    ],
  )
  const { asked, record } = read(await book({ Test: [...form, [null], ...rows] }))
  expect(asked).toEqual([])
  expect(record?.conditions.indoorTemperature_C).toBeCloseTo(20.5, 6)
  expect(record?.conditions.outdoorTemperature_C).toBeCloseTo(6.5, 6)
})

it.each([
  ['side by side', ['Inside temperature (°C)', ...INSIDE], ['Outside temperature (°C)', 6.5]],
  ['in one cell', ['Inside temperature', `${INSIDE.join(' / ')} °C`], ['Outside temperature (°C)', 6.5]],
])('two temperatures that no word tells apart are asked: %s', async (_, ...rows) => {
  const bytes = await logWith(rows as Rows)
  const { asked, choices } = read(bytes)
  expect(asked).toEqual(['conditions.indoorTemperature_C'])
  expect(choices.map((choice) => Number.parseFloat(choice))).toEqual([...INSIDE, 20.5])
  close(read(bytes, { 'conditions.indoorTemperature_C': '20.5 °C' }).n50, n50Of([dep, pres]))
})

it('humidity, a letter for a side of the house and temperatures of other rooms are no further temperature', async () => {
  const { asked, record } = read(
    await logWith([
      ['', 'Temperature', 'Humidity'],
      ['', '°C', '%'],
      ['Inside', 20.5, 44],
      ['Outside', 6.5, 81],
      ['Loft temperature (°C)', 11.5],
    ]),
  )
  expect(asked).toEqual([])
  expect(record?.conditions.indoorTemperature_C).toBe(20.5)
  expect(record?.conditions.outdoorTemperature_C).toBe(6.5)
})
