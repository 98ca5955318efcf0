import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import {
  closeTo,
  dep,
  HEADINGS,
  HOUSE,
  listOf,
  n50Of,
  type OddRun,
  pres,
  RUNS,
  read,
  sheetOfForm,
  titleOf,
  zeroRows,
} from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)

async function expectRead(rows: Rows) {
  const { asked, n50, record, said } = read(await sheetOfForm(rows))
  expect(asked).toEqual([])
  expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
  close(n50, n50Of(RUNS))
  return { record, said: said.join('\n') }
}

describe('zero flow in the lines right below the readings', () => {
  it.each<[string, (run: OddRun) => Rows]>([
    [
      'both in one line, each behind its word',
      ({ before, after }) => [['Zero flow (Pa)', 'before', before, 'after', after]],
    ],
    [
      'lists',
      ({ before, after }) => [
        ['Zero flow before (Pa)', ...listOf(before)],
        ['Zero flow after (Pa)', ...listOf(after)],
      ],
    ],
    ['behind a requirement', (run) => [['Requirement n50', 1.5, '1/h'], ...zeroRows(run)]],
  ])('is that of the run: %s', async (_, zero) => {
    const { record } = await expectRead(
      RUNS.flatMap(
        (run): Rows => [
          titleOf(run),
          ['No', 'Pressure (Pa)', 'Fan 1 flow (m³/h)', 'Fan 2 flow (m³/h)', 'Total flow (m³/h)'],
          ...run.readings.map(([p, q], at) => {
            const one = Number((q * 0.55).toFixed(1))
            return [at + 1, p, one, Number((q - one).toFixed(1)), q]
          }),
          ...zero(run),
          [null],
        ],
      ),
    )
    const mean = (values: readonly number[] = []) => values.reduce((sum, one) => sum + one, 0) / values.length
    expect(mean(record?.runs[0]?.zeroFlowBefore_Pa)).toBeCloseTo(dep.before, 6)
    expect(mean(record?.runs[0]?.zeroFlowAfter_Pa)).toBeCloseTo(dep.after, 6)
  })
})

describe('a column of flows on the fitted curve', () => {
  it.each(['Flow from curve (m³/h)', 'Volumenstrom aus Kurve (m³/h)', 'Calculated flow (m³/h)'])(
    'is not read in place of the flows measured: %s',
    async (heading) => {
      await expectRead(
        RUNS.flatMap(
          (run): Rows => [
            titleOf(run),
            ...zeroRows(run),
            [...HEADINGS, heading],
            // On a curve exactly, and 1 % off.
            ...run.readings.map(([p, q]) => [
              p,
              q,
              Number((42.1 * Math.abs(p - (run.before + run.after) / 2) ** 0.644).toFixed(1)),
            ]),
            [null],
          ],
        ),
      )
    },
  )
})

it('headings of two lines, once more in the middle of a table, part no readings', async () => {
  const headings: Rows = [
    ['No', 'Pressure', 'Flow'],
    [null, '(Pa)', '(m³/h)'],
  ]
  await expectRead(
    RUNS.flatMap((run): Rows => {
      const rows = run.readings.map((reading, at) => [at + 1, ...reading])
      return [
        titleOf(run),
        ...zeroRows(run),
        ...headings,
        ...rows.slice(0, 4),
        ...headings,
        ...rows.slice(4),
        [null],
      ]
    }),
  )
})

describe('samples of a reading', () => {
  const samples = (at: number, p: number, q: number): Rows =>
    [0.3, -0.2, -0.1].map((off, index) => [
      `${at + 1}.${index + 1}`,
      Number((p + off).toFixed(1)),
      Number((q + 3 * off).toFixed(1)),
    ])

  it.each<[string, (at: number, p: number, q: number) => Rows]>([
    ['numbered 1.1, 1.2, 1.3 give their mean', samples],
    [
      'give way to the mean below them, also where one reading was taken only once',
      (at, p, q) => (at === 7 ? [[8, p, q]] : [...samples(at, p, q), ['Mean', p, q]]),
    ],
  ])('%s', async (_, linesOf) => {
    await expectRead(
      RUNS.flatMap(
        (run): Rows => [
          titleOf(run),
          ...zeroRows(run),
          ['Step', ...HEADINGS],
          ...run.readings.flatMap(([p, q], at) => linesOf(at, p, q)),
          [null],
        ],
      ),
    )
  })
})

it('sheets with the number of their test make two tests, each with its own form and zero flow', async () => {
  const form = (volume: number, indoor: number): Rows => [
    ['Date', day('2026-04-22')],
    ['Volume (m³)', volume],
    ['Inside temperature (°C)', indoor],
    ['Outside temperature (°C)', HOUSE.outdoor_C],
    ['Barometer (hPa)', HOUSE.barometer_Pa / 100],
  ]
  // A zero-flow pressure of 1 Pa is not the name of test 1.
  const run = (own: OddRun, share = 1): Rows => [
    titleOf(own),
    ['Zero flow before (Pa)', ...listOf(own.before)],
    ['Zero flow after (Pa)', ...(own === pres ? [1, 1.2, 1.4] : listOf(own.after))],
    HEADINGS,
    ...own.readings.map(([p, q]) => [p, Number((q * share).toFixed(1))]),
  ]
  const bytes = await book({
    'Test 1': form(412.6, 20.5),
    'Depressurisation 1': run(dep),
    'Pressurisation 1': run(pres),
    'Test 2': form(305.1, 18.5),
    'Depressurisation 2': run(dep, 0.8),
    'Pressurisation 2': run(pres, 0.8),
  })
  const { asked, records } = read(bytes)
  expect(asked).toEqual([])
  expect(records.map((record) => record?.building?.volume_m3)).toEqual([412.6, 305.1])
  expect(records.map((record) => record?.conditions?.indoorTemperature_C)).toEqual([20.5, 18.5])
  for (const record of records)
    expect(record?.runs.map(({ zeroFlowAfter_Pa }) => zeroFlowAfter_Pa)).toEqual([
      listOf(dep.after),
      [1, 1.2, 1.4],
    ])
})

describe('a list of areas with its unit in the title alone', () => {
  const areas: Rows = [['Envelope areas in m²'], ['Walls', 143.3], ['Roof', 91.5], ['Floor', 80.2]]
  const readings = RUNS.flatMap(
    (run): Rows => [titleOf(run), ...zeroRows(run), HEADINGS, ...run.readings, [null]],
  )

  it.each(['Sum', 'Envelope'])('gives its sum, whatever its last line is called: %s', async (name) => {
    const { record } = await expectRead([...areas, [name, 315], [null], ...readings])
    expect(record?.building?.envelopeArea_m2).toBe(315)
  })

  it('without a sum gives no area, and is told so', async () => {
    const { record, said } = await expectRead([...areas, [null], ...readings])
    expect(record?.building?.envelopeArea_m2).toBeUndefined()
    expect(said).toContain('areas of parts of the building')
  })
})
