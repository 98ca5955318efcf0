import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import {
  closeTo,
  dep,
  FORM,
  HEADINGS,
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
const zeroOf = ({ before, after }: OddRun) => (before + after) / 2

it('logarithms in a table beside the form are no zero-flow pressures', async () => {
  const logarithms = dep.readings.map(([p, q]) => [
    Number(Math.log(Math.abs(p - zeroOf(dep))).toFixed(3)),
    Number(Math.log(q).toFixed(3)),
  ])
  const rows: Rows = [
    [...titleOf(dep), null, null, null, 'ln dp', 'ln q'],
    ...zeroRows(dep).map((row, at) => [...row, null, null, ...(logarithms[at] ?? [])]),
    ...[HEADINGS, ...dep.readings].map((row, at) => [...row, null, null, ...(logarithms[at + 2] ?? [])]),
    [null],
    titleOf(pres),
    ...zeroRows(pres),
    HEADINGS,
    ...pres.readings,
  ]
  const { asked, n50, record } = read(await sheetOfForm(rows))
  expect(asked).toEqual([])
  expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual([dep.before])
  expect(record?.runs[0]?.zeroFlowAfter_Pa).toEqual([dep.after])
  close(n50, n50Of(RUNS))
})

describe('a sheet that calculates', () => {
  /** Pressures less zero flow, and flows in m³/h for another density. */
  const calculation: Rows = RUNS.flatMap(
    (run): Rows => [
      titleOf(run),
      ['Induced pressure (Pa)', 'Corrected flow (m³/h)'],
      ...run.readings.map(([p, q]) => [
        Number(Math.abs(p - zeroOf(run)).toFixed(2)),
        Number((q * 1.02).toFixed(1)),
      ]),
      [null],
    ],
  )
  const device = { coefficient: 81.3, exponent: 0.512 }
  const measured: [string, string[], (p: number, q: number) => (string | number)[], Rows][] = [
    ['flows in l/s', ['Pressure (Pa)', 'Flow (l/s)'], (p, q) => [p, Number((q / 3.6).toFixed(2))], []],
    [
      'flows of two fans',
      ['Pressure (Pa)', 'Fan 1 flow (m³/h)', 'Fan 2 flow (m³/h)'],
      (p, q) => [p, Number((q / 2).toFixed(1)), Number((q - Number((q / 2).toFixed(1))).toFixed(1))],
      [],
    ],
    [
      'pressures at a nozzle',
      ['Pressure (Pa)', 'Nozzle pressure (Pa)'],
      (p, q) => [p, Number(((q / device.coefficient) ** (1 / device.exponent)).toFixed(2))],
      [
        ['C (m³/(h·Paⁿ))', device.coefficient],
        ['n', device.exponent],
      ],
    ],
  ]
  it.each(measured)('has no test of its own: %s', async (_, headings, row, ofDevice) => {
    const { asked, n50, tests, saidOfFile } = read(
      await book({
        Test: [
          ...FORM,
          [null],
          ...RUNS.flatMap(
            (run): Rows => [
              titleOf(run),
              ...zeroRows(run),
              headings,
              ...run.readings.map(([p, q]) => row(p, q)),
              [null],
            ],
          ),
        ],
        Calculation: calculation,
        ...(ofDevice.length > 0
          ? {
              Device: [
                ['Nozzle', 'C', 'n'],
                ['Q = C·dp^n, Q in m³/h'],
                ['40 mm', device.coefficient, device.exponent],
              ],
            }
          : {}),
      }),
    )
    expect(asked).toEqual([])
    expect(tests).toBe(1)
    expect(saidOfFile.join('\n')).toContain('after correction')
    // A device pressure gives the flow at the density of its calibration, 1 % from that of the day.
    closeTo(ofDevice.length > 0 ? 0.02 : 0.002)(n50, n50Of(RUNS))
  })
})

it.each(['Date de mesure', 'Date de l’essai', 'Measured on', 'Mätdatum', 'Data pomiaru'])(
  '"%s" goes before the plain date of a list on another sheet',
  async (label) => {
    const { asked, record } = read(
      await book({
        Test: [
          ...[...FORM, [null]].map((row) => (row[0] === 'Date' ? [label, row[1] ?? null] : row)),
          ...RUNS.flatMap((run): Rows => [titleOf(run), ...zeroRows(run), HEADINGS, ...run.readings, [null]]),
        ],
        Overview: [
          ['House', 'Date', 'n50 (1/h)'],
          ['A 1', '2026-01-02', 0.9],
          ['A 2', '2026-01-03', 1.1],
        ],
      }),
    )
    expect(asked).toEqual([])
    expect(record?.test?.date).toBe('2026-04-22')
  },
)
