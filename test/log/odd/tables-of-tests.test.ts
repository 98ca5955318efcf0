import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, day, type Rows, sheetOf } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const both = n50Of([dep, pres])
const runs = [dep, pres]
const titles = ['Depressurisation', 'Pressurisation']
const blocks: Rows = runs.flatMap(
  (run, index): Rows => [[null], [titles[index] as string], ...zeroRows(run), HEADINGS, ...run.readings],
)
const testsOf = (bytes: Uint8Array) => interpretLog({ bytes, fileName: 'log.xlsx' }, {}).tests

describe('names and values of houses', () => {
  it('stand over the columns of each of two houses side by side', async () => {
    const bytes = await book({
      Meting: [
        ['Project', 'Nieuwbouw'],
        ['Woning', 'Kavel 7', null, 'Kavel 8'],
        ['Datum', day('2026-07-02'), null, day('2026-07-03')],
        ['Volume [m³]', HOUSE.volume_m3, null, 380],
        ['T binnen [°C]', HOUSE.indoor_C, null, 21],
        ['T buiten [°C]', HOUSE.outdoor_C, null, 8],
        ...runs.flatMap(
          (run, index): Rows => [
            [null],
            [index === 0 ? 'Onderdruk' : 'Overdruk'],
            ['Nuldruk voor [Pa]', run.before, null, run.before],
            ['Nuldruk na [Pa]', run.after, null, run.after],
            ['Doel [Pa]', 'Δp [Pa]', 'Q [m³/h]', 'Δp [Pa]', 'Q [m³/h]'],
            ...run.readings.map(([p, q], at): Rows[number] => [
              60 - 5 * at,
              p,
              q,
              p,
              Number((0.7 * q).toFixed(1)),
            ]),
          ],
        ),
      ],
    })
    expect(testsOf(bytes).map(({ record }) => [record?.building.name, record?.test?.date])).toEqual([
      ['Kavel 7', '2026-07-02'],
      ['Kavel 8', '2026-07-03'],
    ])
  })

  it('stand two lines below their headings, with the units between', async () => {
    const bytes = await book({
      Log: [
        ['Dwelling', 'Test date', 'Internal volume', 'Inside temperature', 'Outside temperature'],
        [null, null, 'm³', '°C', '°C'],
        ['9 Tannery Yard', day('2026-04-22'), HOUSE.volume_m3, HOUSE.indoor_C, HOUSE.outdoor_C],
        ...blocks,
      ],
    })
    const { record, n50 } = read(bytes)
    expect(record?.building.name).toBe('9 Tannery Yard')
    expect(record?.test?.date).toBe('2026-04-22')
    close(n50, n50Of(runs, { ...HOUSE, barometer_Pa: 101_325 }))
  })
})

it('a house in a list of numbers has the name that its own sheet gives, and the values of the list', async () => {
  const flats = ['Lokal 12', 'Lokal 14']
  const bytes = await book({
    Lista: [
      ['Nr', 'Lokal', 'Data', 'Kubatura m³', 'T wewn. °C', 'T zewn. °C'],
      ...flats.map((flat, index): Rows[number] => [index + 1, flat, day('2026-10-01'), 300 + index, 21, 7]),
    ],
    ...Object.fromEntries(
      flats.map((flat, index): [string, Rows] => [
        String(index + 1),
        // Another house has other flows.
        [
          ['Lokal', flat],
          ...blocks.map(([p, q, ...more]): Rows[number] =>
            typeof p === 'number' && typeof q === 'number'
              ? [p, (1 + index / 4) * q]
              : [p ?? null, q ?? null, ...more],
          ),
        ],
      ]),
    ),
  })
  expect(testsOf(bytes).map(({ record }) => [record?.building.name, record?.building.volume_m3])).toEqual([
    ['Lokal 12', 300],
    ['Lokal 14', 301],
  ])
})

it('a table for each of two fans below one title of the direction: the fans ran together', async () => {
  const { asked, record } = read(
    await sheetOfForm(
      runs.flatMap(
        (run, index): Rows => [
          [null],
          [titles[index] as string],
          ...zeroRows(run),
          ...[0.55, 0.45].flatMap(
            (share, fan): Rows => [
              [`Fan ${fan + 1}`],
              HEADINGS,
              ...run.readings.map(([p, q]): Rows[number] => [p, Number((share * q).toFixed(2))]),
            ],
          ),
        ],
      ),
    ),
  )
  expect(asked).toEqual([])
  expect(record?.runs.map(({ direction, readings }) => [direction, readings.length])).toEqual([
    ['depressurisation', 8],
    ['pressurisation', 8],
  ])
  for (const [index, { readings }] of runs.entries())
    for (const [at, [, q]] of readings.entries()) {
      const fans = record?.runs[index]?.readings[at]?.devices ?? []
      expect(fans.reduce((sum, { flow_m3_h = 0 }) => sum + flow_m3_h, 0)).toBeCloseTo(q, 1)
    }
})

it('a sheet headed as invalid is left out, and the log says so', async () => {
  const bytes = await book({
    'Versuch 1': [['UNGÜLTIG – zu viel Wind'], ...FORM, ...blocks],
    'Versuch 2': [
      ...FORM,
      ...runs.flatMap(
        (run, index): Rows => [
          [null],
          [titles[index] as string],
          ...zeroRows(run),
          HEADINGS,
          ...run.readings.map(([p, q]): Rows[number] => [p, Number((0.8 * q).toFixed(1))]),
        ],
      ),
    ],
  })
  const { tests, findings } = interpretLog({ bytes, fileName: 'log.xlsx' }, {})
  expect(tests).toHaveLength(1)
  expect(findings.map(({ message }) => message).join(' ')).toContain('UNGÜLTIG')
})

describe('columns beside the one that counts', () => {
  const shown = (hide: boolean) =>
    sheetOfForm(
      runs.flatMap(
        (run, index): Rows => [
          [null],
          [titles[index] as string],
          ...zeroRows(run),
          ['Pressure (Pa)', 'Air flow, first pass (m³/h)', 'Air flow (m³/h)'],
          ...run.readings.map(([p, q]): Rows[number] => [p, Number((0.96 * q).toFixed(1)), q]),
        ],
      ),
      (workbook) => {
        sheetOf(workbook, 'Test').getColumn(2).hidden = hide
      },
    )

  it('a hidden column of flows gives way to one that is shown', async () => {
    const { n50, record } = read(await shown(true), { 'building.volume_m3': String(HOUSE.volume_m3) })
    expect(record?.runs[0]?.readings[0]?.flow_m3_h).toBe(dep.readings[0]?.[1])
    close(n50, both)
  })

  it('a number beside one that is struck through replaces it, and is named', async () => {
    const { said, n50, record } = read(
      await sheetOfForm(
        [
          ...blocks.slice(0, 5),
          ...dep.readings.map(([p, q], index): Rows[number] => (index === 2 ? [p, q * 1.3, q] : [p, q])),
          ...blocks.slice(5 + dep.readings.length),
        ],
        (workbook) => {
          sheetOf(workbook, 'Test').getCell('B15').font = { strike: true }
        },
      ),
    )
    const [, flow] = dep.readings[2] as [number, number]
    expect(said).toContain(`Cell Test!B15 is struck through. The number ${flow} beside it was read instead.`)
    expect(record?.runs[0]?.readings).toHaveLength(dep.readings.length)
    close(n50, both)
  })
})

it('a series of fewer rows is one where a clock wrote them', async () => {
  const seconds = 26
  const rows = runs.map((run): Rows => {
    const stages: [number, number][] = [[run.before, 0], ...run.readings, [run.after, 0]]
    // Noise of zero mean that says nothing of the next row.
    const noise = (at: number) => (((at * 53) % 13) - 6) / 12
    const series = stages
      .slice(0, 5)
      .flatMap(([p, q], stage) =>
        Array.from({ length: seconds }, (_, at): Rows[number] => [
          stage * seconds + at,
          Number((p + noise(at)).toFixed(2)),
          Number((q + (q === 0 ? 0 : 2 * noise(at))).toFixed(1)),
        ]),
      )
    return [['Time (s)', 'Pressure (Pa)', 'Flow (m³/h)'], ...series]
  })
  const { record } = read(
    await book({ Info: FORM, Depressurisation: rows[0] as Rows, Pressurisation: rows[1] as Rows }),
  )
  expect(record?.runs.map(({ readings }) => readings.length)).toEqual([4, 4])
})
