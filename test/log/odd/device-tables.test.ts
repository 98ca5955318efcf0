import type { TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { dep, FORM, pres, read, zeroRows } from './house'

// Truth: the flows of a leakage curve written in house.ts; a device shows q = C · Δp^n for each ring.
type Law = readonly [coefficient: number, exponent: number]
/** Pressure at an orifice that gives the flow, from q = C · Δp^n. */
const atDevice = (flow: number, [coefficient, exponent]: Law) =>
  Number(((flow / coefficient) ** (1 / exponent)).toFixed(3))
const runs = [
  { run: dep, title: 'Depressurisation' },
  { run: pres, title: 'Pressurisation' },
]
/** Expects the flows that follow from the ranges of the record and the pressures given to them. */
function expectFlows(record: TestRecord | undefined): void {
  for (const [index, { run }] of runs.entries()) {
    const { readings = [] } = record?.runs[index] ?? {}
    const flows = readings.map((reading) =>
      (reading.devices ?? [reading]).reduce((sum, { range, devicePressure_Pa = Number.NaN }) => {
        const law = record?.flowDevice?.ranges?.find(({ label }) => label === range)
        return sum + (law?.coefficient ?? Number.NaN) * devicePressure_Pa ** (law?.exponent ?? 1)
      }, 0),
    )
    expect(flows).toHaveLength(run.readings.length)
    for (const [at, [, q]] of run.readings.entries()) expect(flows[at]).toBeCloseTo(q, 1)
  }
}

const logOf = (headings: Rows[number], cells: (flow: number, title: string) => Rows[number]): Rows =>
  runs.flatMap(
    ({ run, title }): Rows => [
      [null],
      [title],
      ...zeroRows(run),
      ['Building (Pa)', ...headings],
      ...run.readings.map(([p, q]): Rows[number] => [p, ...cells(q, title)]),
    ],
  )

describe('several tables of coefficients', () => {
  const DEP = { A: [22.5, 0.502], B: [11.8, 0.505] } as const
  const PRES = { A: [23.9, 0.5], B: [12.7, 0.503] } as const
  const table = (laws: Readonly<Record<string, Law>>): Rows =>
    Object.entries(laws).map(([ring, law]) => [ring, ...law])

  it('one for each direction, side by side', async () => {
    const { asked, record } = read(
      await book({
        Test: [
          ...FORM,
          ...logOf(['Fan (Pa)', 'Ring'], (flow, title) => {
            const ring = flow > 400 ? 'A' : 'B'
            return [atDevice(flow, (title === 'Depressurisation' ? DEP : PRES)[ring]), ring]
          }),
        ],
        Calibration: [
          [null, 'Depressurisation', null, 'Pressurisation'],
          ['Ring', 'C (m³/h)', 'n', 'C (m³/h)', 'n'],
          ...(['A', 'B'] as const).map((ring): Rows[number] => [ring, ...DEP[ring], ...PRES[ring]]),
        ],
      }),
    )
    expect(asked).toEqual([])
    expectFlows(record)
    expect(record?.flowDevice?.ranges?.map(({ label }) => label)).toEqual([
      'A (depressurisation)',
      'B (depressurisation)',
      'A (pressurisation)',
      'B (pressurisation)',
    ])
  })

  it('one for each of two fans, one below the other', async () => {
    const { asked, record } = read(
      await book({
        Test: [
          ...FORM,
          ...logOf(['Ring 1', 'Fan 1 (Pa)', 'Ring 2', 'Fan 2 (Pa)'], (flow) => [
            'A',
            atDevice(0.6 * flow, DEP.A),
            'B',
            atDevice(0.4 * flow, PRES.B),
          ]),
        ],
        Calibration: [
          ['Fan 1: q in m³/h'],
          ['Ring', 'C', 'n'],
          ...table(DEP),
          [null],
          ['Fan 2: q in m³/h'],
          ['Ring', 'C', 'n'],
          ...table(PRES),
        ],
      }),
    )
    expect(asked).toEqual([])
    expectFlows(record)
  })

  it('of the same rings with other coefficients, and nothing to tell which: asked', async () => {
    const bytes = await book({
      Test: [...FORM, ...logOf(['Ring', 'Fan (Pa)'], (flow) => ['A', atDevice(flow, PRES.A)])],
      'Calibration 2024': [['q in m³/h'], ['Ring', 'C', 'n'], ...table(DEP)],
      'Calibration 2026': [['q in m³/h'], ['Ring', 'C', 'n'], ...table(PRES)],
    })
    const { asked, choices, record } = read(bytes)
    expect(asked).toEqual(['device.table'])
    expect(record).toBeUndefined()
    expectFlows(read(bytes, { 'device.table': choices[1] as string }).record)
  })
})

it('formulas in words, one for each ring', async () => {
  const RINGS = { A: [22.5, 0.502], B: [11.8, 0.505] } as const
  const { asked, record } = read(
    await book({
      Test: [
        ...FORM,
        ['Blende A: q = 22,5 · Δp^0,502'],
        ['Blende B: q = 11,8 · Δp^0,505'],
        ['q in m³/h, Δp in Pa'],
        ...logOf(['Gebläse (Pa)', 'Blende'], (flow) => {
          const ring = flow > 400 ? 'A' : 'B'
          return [atDevice(flow, RINGS[ring]), ring]
        }),
      ],
    }),
  )
  expect(asked).toEqual([])
  expectFlows(record)
})
