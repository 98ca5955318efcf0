import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import { closeTo, dep, n50Of, type OddRun, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const truth = n50Of([dep, pres])
const round = (value: number) => Number(value.toFixed(1))

/** Both runs, with a third column worked out from the pressure or the flow. */
const withColumn = (headings: Rows[number], other: (pressure: number, flow: number) => number): Rows =>
  [dep, pres].flatMap(
    (run): Rows => [
      [run.direction],
      ...zeroRows(run),
      headings,
      ...run.readings.map(([pressure, flow]) => [pressure, flow, round(other(pressure, flow))]),
      [null],
    ],
  )

const scaled = (run: OddRun, share: number) =>
  ({
    ...run,
    readings: run.readings.map(([pressure, flow]) => [pressure, round(flow * share)]),
  }) as unknown as OddRun

describe('columns that could both be the one wanted', () => {
  it('two gauges that differ are asked about, with the flow that each gives', async () => {
    const rows = withColumn(['Pressure (Pa)', 'Flow (m³/h)', 'Loft measured (Pa)'], (one) => 0.9 * one)
    const bytes = await sheetOfForm(rows)
    const { asked, n50 } = read(bytes)
    expect([asked, n50]).toEqual([['pressure.column'], undefined])
    close(read(bytes, { 'pressure.column': 'Pressure (Pa)' }).n50, truth)
  })

  it('a gauge that reads the same is not', async () => {
    const rows = withColumn(['Pressure (Pa)', 'Flow (m³/h)', 'Second gauge (Pa)'], (one) => one)
    const { asked, n50 } = read(await sheetOfForm(rows))
    expect(asked).toEqual([])
    close(n50, truth)
  })

  it("a flow that only the log's own result speaks for is asked about", async () => {
    const headings = ['Pressure (Pa)', 'Flow as shown (m³/h)', 'Flow (m³/h)']
    const result = n50Of([scaled(dep, 1.3), scaled(pres, 1.3)])
    const table = withColumn(headings, (_, flow) => 1.3 * flow)
    const bytes = await sheetOfForm([...table, ['n50 (1/h)', Number(result.toFixed(2))]])
    expect(read(bytes).asked).toEqual(['flow.column'])
    close(read(bytes, { 'flow.column': 'Flow (m³/h)' }).n50, result)
    close(read(bytes, { 'flow.column': 'Flow as shown (m³/h)' }).n50, truth)
    const confirmed = await sheetOfForm([...table, ['n50 (1/h)', Number(truth.toFixed(2))]])
    close(read(confirmed).n50, truth)
  })

  it('numbers below the headings of each other are asked about however small the flows are', async () => {
    const small = [scaled(dep, 0.2), scaled(pres, 0.2)]
    const bytes = await sheetOfForm(
      small.flatMap(
        (run): Rows => [
          [run.direction],
          ...zeroRows(run),
          ['Flow (m³/h)', 'Pressure (Pa)'],
          ...run.readings,
          [null],
        ],
      ),
    )
    expect(read(bytes).asked).toContain('pressure.column')
    close(read(bytes, { 'pressure.column': 'Flow (m³/h)' }).n50, n50Of(small))
  })
})
