import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
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

// Truth: what is written into each log, and the independent fit of ./house.
const close = closeTo(0.0008)
const TITLES = { depressurisation: 'Depressurisation', pressurisation: 'Pressurisation' }
const block = (run: OddRun): Rows => [
  [TITLES[run.direction]],
  ...zeroRows(run),
  HEADINGS,
  ...run.readings,
  [null],
]

describe('readings that go on in columns beside', () => {
  const halves = (run: OddRun, title: string | null = null): Rows => [
    [TITLES[run.direction]],
    ...zeroRows(run),
    [null, null, null, null, title],
    ['No', ...HEADINGS, null, 'No', ...HEADINGS],
    ...run.readings
      .slice(0, 4)
      .map((row, index) => [index + 1, ...row, null, index + 5, ...(run.readings[index + 4] as number[])]),
    [null],
  ]

  it('are one run', async () => {
    const { asked, record, n50 } = read(await sheetOfForm([...halves(dep), ...halves(pres)]))
    expect(asked).toEqual([])
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
    expect(record?.runs[1]?.readings.at(-1)?.pressure_Pa).toBe(pres.readings.at(-1)?.[0])
    close(n50, n50Of([dep, pres]))
  })

  it('are another run where they have a title', async () => {
    const { record } = read(await sheetOfForm([...halves(dep, 'House 2')]))
    expect(record?.runs.map(({ readings }) => readings.length)).not.toEqual([8])
  })
})

it('leaves the column of a test of an earlier year out', async () => {
  const form: Rows = [
    [null, 'This test', 'Test of 2024'],
    ['Date', day('2026-04-22'), day('2024-05-03')],
    ['Internal volume (m³)', HOUSE.volume_m3, 404.4],
    ['Inside temperature (°C)', HOUSE.indoor_C, 18.5],
    ['Outside temperature (°C)', HOUSE.outdoor_C, 12.5],
    ['Barometer (hPa)', HOUSE.barometer_Pa / 100, 1003.2],
    [null],
  ]
  const { asked, record, saidOfFile, n50 } = read(
    await book({ Test: [...form, ...block(dep), ...block(pres)] }),
  )
  expect(asked).toEqual([])
  expect(record?.test.date).toBe('2026-04-22')
  expect(saidOfFile.join()).toContain('"Test of 2024"')
  close(n50, n50Of([dep, pres]))
})

it('takes a client called "Sample" for no heading of the zero flow below', async () => {
  const form: Rows = [
    ['Client:', 'Sample'],
    ['Internal volume:', HOUSE.volume_m3, 'm³'],
    ['Inside temperature:', HOUSE.indoor_C, '°C', 'Outside temperature:', HOUSE.outdoor_C, '°C'],
    ['Date:', day('2026-04-22'), null, 'Barometer:', HOUSE.barometer_Pa / 100, 'hPa'],
    ['Depressurisation'],
    ['Zero flow, start', dep.before, 'Pa', 'Zero flow, end', dep.after, 'Pa'],
    HEADINGS,
    ...dep.readings,
  ]
  const { asked, n50 } = read(await book({ Test: form }))
  expect(asked).toEqual([])
  close(n50, n50Of([dep]))
})

describe('flows that hardly any building has', () => {
  const times = (factor: number, rows: Rows = []) =>
    sheetOfForm([
      ...block({ ...dep, readings: dep.readings.map(([p, q]) => [p, Number((q * factor).toFixed(2))]) }),
      ...rows,
    ])
  // 41.7 m³/h at 1 Pa and exponent 0.644: 518 m³/h at 50 Pa, about 1.3 air changes an hour in 412.6 m³ (curve and volume of ./house).
  it.each([
    [1, undefined],
    [100, 'about 1[23]\\d per hour. Buildings seldom leak so much'],
    [0.01, 'about 0.01 per hour. Buildings seldom leak so little'],
  ])('times %d are said', async (factor, words) => {
    const said = read(await times(factor)).said.filter((one) => one.includes('Buildings seldom leak'))
    expect(said).toHaveLength(words === undefined ? 0 : 1)
    if (words !== undefined) expect(said[0]).toMatch(new RegExp(words))
  })

  it('are not said where a result of the log agrees', async () => {
    const { said } = read(await times(15, [['n50', 18.8, '1/h']]))
    expect(said.join()).not.toContain('Buildings seldom leak')
  })
})

describe('a temperature in words', () => {
  it('is quoted in the question', async () => {
    const form = FORM.map(([label, value]) =>
      label === 'Inside temperature (°C)' ? ['Inside temperature', 'room temperature'] : [label, value],
    ) as Rows
    const { asked, texts } = read(await book({ Test: [...form, [null], ...block(dep)] }))
    expect(asked).toEqual(['conditions.indoorTemperature_C'])
    expect(texts[0]).toContain('says "room temperature", which is not one number')
  })

  it('is quoted where only its unit says what it is', async () => {
    const form = FORM.map(([label, value]) =>
      label === 'Outside temperature (°C)' ? ['Outside', 'minus 4.5 °C'] : [label, value],
    ) as Rows
    const { asked, texts } = read(await book({ Test: [...form, [null], ...block(dep)] }))
    expect(asked).toEqual(['conditions.outdoorTemperature_C'])
    expect(texts[0]).toContain('"minus 4.5 °C"')
  })

  it('is not looked for where nothing stands', async () => {
    const form = FORM.filter(([label]) => label !== 'Inside temperature (°C)')
    expect(read(await book({ Test: [...form, [null], ...block(dep)] })).texts[0]).toContain('was not found')
  })
})

it.each([
  ['2026-04-20', true],
  ['2026-04-21', false],
  ['2026-05-02', false],
])('a file last changed on %s before its test date is said: %s', async (fileDate, isSaid) => {
  const bytes = await sheetOfForm(block(dep))
  const { tests } = interpretLog({ bytes, fileName: 'log.xlsx' }, { fileDate })
  const said = tests[0]?.findings.map(({ message }) => message).join()
  expect(said?.includes('but the file was last changed on')).toBe(isSaid)
})
