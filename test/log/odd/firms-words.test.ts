import { evaluate } from '@draughtbook/shared-calc'
import { interpretLog, openLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'

// Truth: Q = C·Δp^n with the same air on both sides and no zero flow, so that n50 = C·50^n / V but for the density of the reference
// air, which is within 0.4 % of that at 20 °C and 101 325 Pa.
const PRESSURES = [70, 60, 50, 40, 30, 20]
const flowOf = (coefficient: number, exponent: number) => (pressure: number) =>
  Number((coefficient * pressure ** exponent).toFixed(1))
const flow = flowOf(20, 0.65)
const other = flowOf(35, 0.6)
const FORM: Rows = [
  ['Building', 'Oak Barn (invented)'],
  ['Date', '2026-07-02'],
  ['Volume', '330 m³'],
  ['Inside', '20 °C'],
  ['Outside', '20 °C'],
]
const n50 = { flow: (20 * 50 ** 0.65) / 330, other: (35 * 50 ** 0.6) / 400 }

async function read(rows: Rows, answers: Record<string, string> = {}) {
  const { tests, questions, problems } = interpretLog(openLog(await book({ Test: rows }), 'log.xlsx'), {
    answers,
  })
  const asked = [...questions, ...tests.flatMap((test) => test.questions)].map(({ path }) => path)
  const read = tests.map(({ record, findings }) => ({
    findings,
    result: record && evaluate(record, { findings }),
  }))
  return { asked, problems, read }
}
const close = (value: number | undefined, truth: number) =>
  expect(Math.abs((value ?? Number.NaN) / truth - 1)).toBeLessThan(0.005)

describe('which way the fan blows', () => {
  it.each([
    ['Fan blowing', 'out', 'in'],
    ['Blower', 'exhaust', 'supply'],
    ['Test', 'extract', 'supply'],
    ['Richtung', 'saugend', 'drückend'],
    ['Sens', 'aspiration', 'soufflage'],
  ])('is read from a column "%s" of "%s" and "%s"', async (heading, out, into) => {
    const rows = (word: string): Rows => PRESSURES.map((pressure) => [word, pressure, flow(pressure)])
    const { asked, read: tests } = await read([
      ...FORM,
      [],
      [heading, 'dp (Pa)', 'Q (m³/h)'],
      ...rows(out),
      ...rows(into),
    ])
    expect(asked).toEqual([])
    expect(tests[0]?.result?.runs.map(({ direction }) => direction)).toEqual([
      'depressurisation',
      'pressurisation',
    ])
    close(tests[0]?.result?.results.n50?.value, n50.flow)
  })

  it('is read from a line above the readings', async () => {
    const { asked, read: tests } = await read([
      ...FORM,
      ['Fan blowing out'],
      ['dp (Pa)', 'Q (m³/h)'],
      ...PRESSURES.map((pressure) => [pressure, flow(pressure)]),
    ])
    expect(asked).toEqual([])
    expect(tests[0]?.result?.runs.map(({ direction }) => direction)).toEqual(['depressurisation'])
  })

  it('is not read from a column that says which readings are in', async () => {
    const { asked } = await read([
      ...FORM,
      [],
      ['Limits', 'dp (Pa)', 'Q (m³/h)'],
      ...PRESSURES.map((pressure) => ['in', pressure, flow(pressure)]),
    ])
    expect(asked).toContain('runs[0].direction')
  })
})

it('a word that is no direction is not taken for the direction above it', async () => {
  const { read: tests } = await read([
    ...FORM,
    [],
    ['Direction', 'dp (Pa)', 'Q (m³/h)'],
    ...PRESSURES.map((pressure, i) => [i === 0 ? 'dep' : '"', pressure, flow(pressure)]),
    ...PRESSURES.map((pressure) => ['abracadabra', pressure, other(pressure)]),
  ])
  close(tests[0]?.result?.results.n50?.value, n50.flow)
  const left = tests[0]?.findings.filter(({ message }) => message.includes('abracadabra'))
  expect(left?.flatMap(({ cells }) => cells)).toEqual(['Test!B14:B19'])
})

describe('a list of houses with a flow for each pressure', () => {
  it.each(['Flow at # Pa (m³/h)', 'Q@#Pa m3/h', 'Caudal a # Pa (m³/h)', 'V bei # Pa [m³/h]'])(
    'is read by its headings, "%s", and says so',
    async (heading) => {
      const { asked, read: tests } = await read(
        [
          [
            'House',
            'Date',
            'Volume (m³)',
            'T in (°C)',
            'T out (°C)',
            ...PRESSURES.map((one) => heading.replace('#', String(one))),
          ],
          ['Plot 1', '2026-09-01', 330, 20, 20, ...PRESSURES.map(flow)],
          ['Plot 2', '2026-09-02', 400, 20, 20, ...PRESSURES.map(other)],
        ],
        { 'runs[0].direction': 'depressurisation' },
      )
      expect(asked).toEqual([])
      close(tests[0]?.result?.results.n50?.value, n50.flow)
      close(tests[1]?.result?.results.n50?.value, n50.other)
      for (const { findings } of tests)
        expect(findings.find(({ rule }) => rule === 'log-pressures-in-headings')?.cells).toEqual([
          'Test!F1:K1',
        ])
    },
  )
})

describe('a date of figures', () => {
  it.each([
    [
      'Dutch',
      ['Datum', '04-02-2026'],
      ['Netto inhoud', '330 m³'],
      ['Binnentemperatuur', 20],
      ['Buitentemperatuur', 20],
      ['Onderdruk'],
    ],
    [
      'French',
      ['Date de mesure', '04/02/2026'],
      ['Volume intérieur (m³)', 330],
      ['Température intérieure', 20],
      ['Température extérieure', 20],
      ['Dépressurisation'],
    ],
  ] as [string, ...Rows][])('has its day first in a log in %s, with a caution', async (_, ...form) => {
    const { asked, read: tests } = await read([
      ['', 'Maison (invented)'],
      ...form,
      ['Δp (Pa)', 'Q (m³/h)'],
      ...PRESSURES.map((pressure) => [-pressure, flow(pressure)]),
    ])
    expect(asked).toEqual([])
    const caution = tests[0]?.findings.find(({ rule }) => rule === 'log-day-first')
    expect(caution?.message).toContain('4 February 2026')
  })

  it('is asked about in a log in English', async () => {
    const { asked } = await read([
      ['Building', 'Oak Barn (invented)'],
      ['Date', '04/02/2026'],
      ...FORM.slice(2),
      ['dp (Pa)', 'Q (m³/h)'],
      ...PRESSURES.map((pressure) => [-pressure, flow(pressure)]),
    ])
    expect([...new Set(asked)]).toEqual(['test.date'])
  })
})

it('a mean of samples with the unit over the mean alone is the flow', async () => {
  const samples = (pressure: number) => [-0.3, 0.1, 0.2].map((off) => pressure + off)
  const { asked, read: tests } = await read(
    [
      ...FORM,
      [],
      ['Pa 1', 'Pa 2', 'Pa 3', 'Mean Pa', 'Flow 1', 'Flow 2', 'Flow 3', 'Mean flow (m3/hr)'],
      ...PRESSURES.map((one) => {
        const flows = samples(one).map((pressure) => flow(pressure))
        return [...samples(one), one, ...flows, Number((flows.reduce((a, b) => a + b) / 3).toFixed(1))]
      }),
    ],
    { 'runs[0].direction': 'depressurisation' },
  )
  expect(asked).toEqual([])
  close(tests[0]?.result?.results.n50?.value, n50.flow)
})

it('the unit of the flows may be spelt out below the table', async () => {
  const { asked, read: tests } = await read([
    ...FORM,
    ['dp (Pa)', 'Flow'],
    ...PRESSURES.map((pressure) => [-pressure, Number((flow(pressure) / 3.6).toFixed(2))]),
    [],
    ['All flows in litres per second'],
  ])
  expect(asked).toEqual([])
  close(tests[0]?.result?.results.n50?.value, n50.flow)
})

it('flows of this year and of last year are not offered as fans that ran together', async () => {
  const both: Rows = [
    ...FORM,
    ['', 'This year', '', 'Last year', ''],
    ['', 'dp (Pa)', 'Flow (m3/h)', 'dp (Pa)', 'Flow (m3/h)'],
    ...PRESSURES.map((pressure) => ['', -pressure, flow(pressure), -pressure, other(pressure)]),
  ]
  const { questions } = interpretLog(openLog(await book({ Test: both }), 'log.xlsx'), {})
  const question = questions.find(({ path }) => path === 'flow.column')
  expect(question?.choices.map(({ value }) => value)).not.toContain('together')
  expect(question?.noneLikelier).toBe(true)
})

it('a value in a line right above the headings is no heading', async () => {
  const { asked, read: tests } = await read([
    ...FORM,
    ['Air pressure of the day 1013 hPa'],
    ['dp (Pa)', 'Q (m³/h)'],
    ...PRESSURES.map((pressure) => [-pressure, flow(pressure)]),
  ])
  expect(asked).toEqual([])
  close(tests[0]?.result?.results.n50?.value, n50.flow)
})
