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
  runOf,
  sheetOfForm,
} from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres] as const
const CLIMATE = [HOUSE.volume_m3, HOUSE.indoor_C, HOUSE.outdoor_C] as const
const title = (run: OddRun) => [run === dep ? 'Depressurisation' : 'Pressurisation']
const zero = ({ before, after }: OddRun): Rows => [
  ['Zero before (Pa)', before],
  ['Zero after (Pa)', after],
]
const bothRuns = (of: (run: OddRun) => Rows): Rows =>
  RUNS.flatMap((run): Rows => [title(run), ...of(run), [null]])
const without = { ...HOUSE, barometer_Pa: 101_325 }

describe('a list with one line a test', () => {
  const shrunk = (run: OddRun): OddRun => ({
    ...run,
    readings: run.readings.map(([p, q]): [number, number] => [p, Number((q * 0.8).toFixed(1))]),
  })

  it('has its pressures and flows in pairs that nothing numbers', async () => {
    const line = (name: string, run: OddRun) => [name, day('2026-04-22'), ...CLIMATE, ...run.readings.flat()]
    const bytes = await book({
      '2026': [
        ['House', 'Date', 'Volume m³', 'T in °C', 'T out °C', ...dep.readings.flatMap(() => ['Pa', 'm³/h'])],
        line('Orchard End', dep),
        line('Mill Cottage', shrunk(dep)),
        line('Weir House', dep),
      ],
    })
    const bare = (run: OddRun) => ({ ...run, before: 0, after: 0 }) as unknown as OddRun
    expect(read(bytes).tests).toBe(3)
    close(read(bytes, { test: 'Orchard End' }).n50, n50Of([bare(dep)], without))
    close(read(bytes, { test: 'Mill Cottage' }).n50, n50Of([bare(shrunk(dep))], without))
  })

  it('has zero flow and unnumbered pairs of both directions, each below the title of the first column', async () => {
    const cells = (run: OddRun) => [run.before, run.after, ...run.readings.flat()]
    const heads = (run: OddRun) => [
      'P0 avant Pa',
      'P0 après Pa',
      ...run.readings.flatMap(() => ['Pa', 'm³/h']),
    ]
    const blanks = heads(dep)
      .slice(1)
      .map(() => null)
    const line = (name: string, of: (run: OddRun) => OddRun) => [
      name,
      day('2026-04-22'),
      ...CLIMATE,
      ...cells(of(dep)),
      ...cells(of(pres)),
    ]
    const moved = (run: OddRun): OddRun => {
      const by = run === dep ? 0.4 : -0.5
      return {
        ...run,
        before: run.before + by,
        after: run.after + by,
        readings: run.readings.map(([p, q]) => [Number((p + by).toFixed(1)), Number((q * 0.8).toFixed(1))]),
      } as unknown as OddRun
    }
    const bytes = await book({
      '2026': [
        [null, null, null, null, null, 'Dépression', ...blanks, 'Surpression', ...blanks],
        ['Chantier', 'Date', 'Volume m³', 'Ti °C', 'Te °C', ...heads(dep), ...heads(pres)],
        line('Clos des Poiriers', (run) => run),
        line('Le Moulin', moved),
      ],
    })
    expect(read(bytes).tests).toBe(2)
    close(read(bytes, { test: 'Clos des Poiriers' }).n50, n50Of(RUNS, without))
    close(read(bytes, { test: 'Le Moulin' }).n50, n50Of(RUNS.map(moved), without))
  })

  it('is none where the blocks of several runs stand side by side', async () => {
    const { n50, tests } = read(
      await sheetOfForm([
        ['Depressurisation', null, 'Pressurisation'],
        ['Zero before (Pa)', dep.before, 'Zero before (Pa)', pres.before],
        ['Zero after (Pa)', dep.after, 'Zero after (Pa)', pres.after],
        [...HEADINGS, ...HEADINGS],
        ...dep.readings.map((reading, index) => [...reading, ...(pres.readings[index] as [number, number])]),
      ]),
    )
    expect(tests).toBe(1)
    close(n50, n50Of(RUNS))
  })

  it('has flows at pressures that its headings name behind a letter for the direction', async () => {
    const PRESSURES = [60, 50, 40, 30, 20]
    const flows = [dep, pres].map(({ direction }) =>
      PRESSURES.map((pascal) => {
        const { readings } = runOf(direction)
        const [p, q] = readings[0] as [number, number]
        return Number((q * (pascal / Math.abs(p)) ** 0.644).toFixed(1))
      }),
    )
    const bytes = await book({
      Tests: [
        [
          'House',
          'Date',
          'Volume (m³)',
          'In °C',
          'Out °C',
          ...['D', 'P'].flatMap((letter) => PRESSURES.map((pascal) => `${letter} ${pascal} Pa (m³/h)`)),
        ],
        ...['Orchard End', 'Mill Cottage'].map((name) => [
          name,
          day('2026-04-22'),
          ...CLIMATE,
          ...flows.flat(),
        ]),
      ],
    })
    const { record, tests, n50 } = read(bytes)
    expect(tests).toBe(2)
    expect(record?.runs.map(({ direction }) => direction)).toEqual(['depressurisation', 'pressurisation'])
    const truth = [dep, pres].map(
      (run, index) =>
        ({
          ...run,
          before: 0,
          after: 0,
          readings: PRESSURES.map((pascal, at) => [
            run === dep ? -pascal : pascal,
            flows[index]?.[at] as number,
          ]),
        }) as unknown as OddRun,
    )
    close(n50, n50Of(truth, without))
  })
})

it('a list with one value a line has its units in a column of their own', async () => {
  const lines = [
    'Messgröße;Wert;Einheit',
    'Objekt;Birnbaumhof;',
    'Datum;22.04.2026;',
    `Volumen;${HOUSE.volume_m3};m³`,
    `Innentemperatur;${HOUSE.indoor_C};°C`,
    `Außentemperatur;${HOUSE.outdoor_C};°C`,
    ...RUNS.flatMap((run) => [
      `${run === dep ? 'Unterdruck' : 'Überdruck'};;`,
      `Nulldruck vorher;${run.before};Pa`,
      ...run.readings.flatMap(([p, q], at) => [
        `Druckdifferenz ${at + 1};${p};Pa`,
        `Volumenstrom ${at + 1};${(q / 3.6).toFixed(3)};l/s`,
      ]),
      `Nulldruck nachher;${run.after};Pa`,
    ]),
  ]
  const text = lines.join('\n').replace(/(?<=;-?\d+)\.(?=\d+;)/g, ',')
  const { asked, n50, record } = read(new TextEncoder().encode(text), {}, 'log.csv')
  expect(asked).toEqual([])
  expect(record?.building.name).toBe('Birnbaumhof')
  close(n50, n50Of(RUNS, without))
})

it('"Name | Value | Unit" heads a list and names no building', async () => {
  const { record } = read(
    await book({
      Test: [
        ['Name', 'Value', 'Unit'],
        ...FORM,
        [null],
        ...bothRuns((run) => [...zero(run), HEADINGS, ...run.readings]),
      ],
    }),
  )
  expect(record?.building.name).toBe('Pear Tree Barn')
})

it('two houses below one another, their readings across, have their own values each', async () => {
  const block = (name: string, volume: number, share: number): Rows => [
    ['Plot', name],
    ['Date', day('2026-04-22')],
    ['Vol m³', volume, 'Ti °C', HOUSE.indoor_C, 'To °C', HOUSE.outdoor_C],
    ...RUNS.flatMap(
      (run): Rows => [
        [run === dep ? 'Depress' : 'Press', 'zero before', run.before, 'zero after', run.after],
        ['Pa', ...run.readings.map(([p]) => p)],
        ['m³/h', ...run.readings.map(([, q]) => Number((q * share).toFixed(1)))],
      ],
    ),
    [null],
    [null],
  ]
  const bytes = await book({
    Monday: [...block('Orchard End', 412.6, 1), ...block('Mill Cottage', 300, 0.8)],
  })
  expect(read(bytes).tests).toBe(2)
  close(read(bytes, { test: '1' }).n50, n50Of(RUNS, without))
  close(read(bytes, { test: '2' }).n50, (0.8 * n50Of(RUNS, without) * HOUSE.volume_m3) / 300)
})

it('two lines left blank below the headings part nothing', async () => {
  const { asked, n50 } = read(
    await sheetOfForm(bothRuns((run) => [...zero(run), HEADINGS, [null], [null], ...run.readings])),
  )
  expect(asked).toEqual([])
  close(n50, n50Of(RUNS))
})

describe('flows in tens to thousands of a unit', () => {
  it.each([
    ['Flow (1000 m³/h)', 1000],
    ['Flow (×100 m³/h)', 100],
    ['Flow (10³ m³/h)', 1000],
    ['Volumenstrom in Tsd. m³/h', 1000],
    ['Flow (m³/h × 100)', 100],
    ['Flow (1,000 m³/h)', 1000],
  ])('%s', async (heading, times) => {
    const { asked, n50 } = read(
      await sheetOfForm(
        bothRuns((run) => [
          ...zero(run),
          ['Pressure (Pa)', heading],
          ...run.readings.map(([p, q]) => [p, q / times]),
        ]),
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('the unit may be a line of its own below the headings, as a number would be read', async () => {
    const { asked, n50 } = read(
      await sheetOfForm(
        bothRuns((run) => [
          ...zero(run),
          ['Pressure', 'Flow'],
          ['Pa', '1000 m³/h'],
          ...run.readings.map(([p, q]) => [p, q / 1000]),
        ]),
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })
})
