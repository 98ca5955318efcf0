import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import { closeTo, dep, HOUSE, n50Of, type OddRun, pres, read } from './house'

// Truth: what is written into each list, and the independent fit of ./house.
const close = closeTo(0.0008)
const HEADS = ['Job', 'Date', 'Volume', 'Tin', 'Tout', 'Baro', 'Dir']
const UNITS = ['', '', 'm³', '°C', '°C', 'hPa', '']
const PAIRS = dep.readings.flatMap((_, index) => [`p${index + 1}`, `q${index + 1}`])
const PAIR_UNITS = dep.readings.flatMap(() => ['Pa', 'm³/h'])

/** One line a run, with two columns of its own behind the direction and two behind the readings. */
const list = (own: readonly [string, string], of: (run: OddRun) => readonly number[]): Rows => [
  [...HEADS, ...own, ...PAIRS, 'Fee', 'Mileage'],
  [...UNITS, ...own.map(() => 'Pa'), ...PAIR_UNITS, '', 'km'],
  ...[dep, pres].map((run) => [
    'J1',
    day('2026-04-22'),
    HOUSE.volume_m3,
    HOUSE.indoor_C,
    HOUSE.outdoor_C,
    HOUSE.barometer_Pa / 100,
    run.direction === 'depressurisation' ? 'D' : 'P',
    ...of(run),
    ...run.readings.flat(),
    350,
    41,
  ]),
]
const zeroOf = (run: OddRun) => [run.before, run.after]

describe('a list with two pressures "Z0" and "Z1" and readings "p1", "q1" …', () => {
  it('takes no flow for the second of them, and asks whether they are the zero flow', async () => {
    const bytes = await book({ Register: list(['Z0', 'Z1'], zeroOf) })
    expect(read(bytes).asked).toEqual(['zeroFlow.labels'])
    expect(read(bytes).texts[0]).toContain('"Z0" and "Z1"')
    const { record, n50 } = read(bytes, { 'zeroFlow.labels': 'zero flow' })
    expect(
      record?.runs.map((run) => [run.zeroFlowBefore_Pa, run.zeroFlowAfter_Pa, run.readings.length]),
    ).toEqual([dep, pres].map(({ before, after }) => [[before], [after], 8]))
    close(n50, n50Of([dep, pres]))
  })

  it('names them with a caution where they are something else', async () => {
    const bytes = await book({ Register: list(['Z0', 'Z1'], zeroOf) })
    const { record, said } = read(bytes, { 'zeroFlow.labels': 'something else' })
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual([8, 8])
    expect(said.join()).toContain(
      'Column "Z1" was not used: the log does not show which reading it belongs to',
    )
  })
})

it('names the columns of a list that nothing needs, and none that are read', async () => {
  const { asked, said, n50 } = read(await book({ Register: list(['Zero before', 'Zero after'], zeroOf) }))
  expect(asked).toEqual([])
  close(n50, n50Of([dep, pres]))
  const unused = said.filter((one) => one.includes('was not used'))
  expect(unused.map((one) => /"(\w+)/.exec(one)?.[1])).toEqual(['Fee', 'Mileage'])
})

describe('directions that only two dots tell apart', () => {
  it.each([
    ['U', 'Ü'],
    ['UD', 'ÜD'],
    ['D', 'P'],
  ])('"%s Δp1" and "%s Δp1" are two runs', async (one, other) => {
    const heads = [one, other].flatMap((letter) => [
      `${letter} Null vor (Pa)`,
      `${letter} Null nach (Pa)`,
      ...dep.readings.flatMap((_, index) => [
        `${letter} Δp${index + 1} (Pa)`,
        `${letter} V̇${index + 1} (m³/h)`,
      ]),
    ])
    const line = [dep, pres].flatMap((run) => [run.before, run.after, ...run.readings.flat()])
    const { asked, record, n50 } = read(
      await book({
        Liste: [
          ['Objekt', 'Datum', 'V (m³)', 'Ti (°C)', 'Ta (°C)', 'Luftdruck (hPa)', ...heads],
          [
            'Haus 1',
            day('2026-04-22'),
            HOUSE.volume_m3,
            HOUSE.indoor_C,
            HOUSE.outdoor_C,
            HOUSE.barometer_Pa / 100,
            ...line,
          ],
        ],
      }),
    )
    expect(asked).toEqual([])
    expect(
      record?.runs.map(({ zeroFlowBefore_Pa, readings }) => [zeroFlowBefore_Pa, readings.length]),
    ).toEqual([
      [[dep.before], 8],
      [[pres.before], 8],
    ])
    close(n50, n50Of([dep, pres]))
  })
})

it('takes no flow for two pressures: a second series under headings nobody knows is another run', async () => {
  const heads = ['K', 'L'].flatMap((letter) =>
    dep.readings.flatMap((_, index) => [`${letter}${index + 1} (Pa)`, `${letter}${index + 1} (m³/h)`]),
  )
  const bytes = await book({
    List: [
      ['House', 'Date', 'Volume (m³)', 'T in (°C)', 'T out (°C)', ...heads],
      [
        'House 1',
        day('2026-04-22'),
        HOUSE.volume_m3,
        HOUSE.indoor_C,
        HOUSE.outdoor_C,
        ...[dep, pres].flatMap(({ readings }) => readings.flat()),
      ],
    ],
  })
  const { record } = read(bytes, { 'runs[1].direction': 'pressurisation' })
  expect(record?.runs.map(({ readings }) => readings.map(({ flow_m3_h }) => flow_m3_h))).toEqual(
    [dep, pres].map(({ readings }) => readings.map(([, flow]) => flow)),
  )
})

describe('"Sample 1 | Sample 2 | Sample 3 | Average" side by side', () => {
  const PRESSURE = [0.4, -0.3, 0.1, 0.5, -0.2, 0.3, -0.4, 0.2]
  const FLOW = [1.2, -2.1, 0.9, 1.6, -1.1, 0.7, -0.8, 1.3]
  const at = (list: readonly number[], index: number) => list[index % list.length] as number
  const round = (value: number) => Number(value.toFixed(1))
  const table = (run: OddRun, last: string): Rows => [
    [run.direction],
    ['Zero flow before (Pa)', run.before],
    ['Zero flow after (Pa)', run.after],
    ['No', 'Sample 1', null, 'Sample 2', null, 'Sample 3', null, last, null],
    [null, 'Pa', 'm³/h', 'Pa', 'm³/h', 'Pa', 'm³/h', 'Pa', 'm³/h'],
    ...run.readings.map(([p, q], index) => {
      const [one, two] = [at(PRESSURE, index), at(PRESSURE, index + 3)]
      const [first, second] = [at(FLOW, index), at(FLOW, index + 5)]
      const samples = [p + one, q + first, p + two, q + second, p - one - two, q - first - second].map(round)
      return [index + 1, ...samples, p, q]
    }),
    [null],
  ]
  const form: Rows = [
    ['Job', 'J1'],
    ['Date', day('2026-04-22')],
    ['Internal volume (m³)', HOUSE.volume_m3],
    ['Inside temperature (°C)', HOUSE.indoor_C],
    ['Outside temperature (°C)', HOUSE.outdoor_C],
    ['Barometer (hPa)', HOUSE.barometer_Pa / 100],
    [null],
  ]

  it('has its readings below "Average", and says so', async () => {
    const bytes = await book({ Test: [...form, ...table(dep, 'Average'), ...table(pres, 'Average')] })
    const { asked, record, saidOfFile, n50, tests } = read(bytes)
    expect([asked, tests]).toEqual([[], 1])
    expect(record?.runs.map(({ readings }) => readings.map(({ pressure_Pa }) => pressure_Pa))).toEqual(
      [dep, pres].map(({ readings }) => readings.map(([p]) => p)),
    )
    expect(saidOfFile.join()).toContain('The readings are those below "Average".')
    close(n50, n50Of([dep, pres]))
  })

  it('is not read without a question where the last is no average', async () => {
    const bytes = await book({ Test: [...form, ...table(dep, 'Sample 4')] })
    const { asked, tests } = read(bytes)
    expect(asked.length > 0 || tests > 1).toBe(true)
  })
})
