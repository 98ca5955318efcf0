import { gridFromRanges, type LayoutInput } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { acceptedTest, understandLog } from '../../addin/src/calc/understand'

/** A log of an invented make that never states the unit of its flows; other houses have other values and more rows. */
function logOf(house: string, volume: number, pressures: readonly number[], coefficient: number) {
  const rows = [
    ['Draught check sheet', '', ''],
    ['House', house, ''],
    ['Date', '2026-10-14', ''],
    ['Volume of air inside (m³)', volume, ''],
    ['Temp in (°C)', 20, ''],
    ['Temp out (°C)', 9, ''],
    ['', '', ''],
    ['Depressurisation', '', ''],
    ['Building pressure (Pa)', 'Fan flow', ''],
    ...pressures.map((pressure) => [
      pressure,
      Number((coefficient * Math.abs(pressure) ** 0.65).toFixed(1)),
      '',
    ]),
  ]
  return gridFromRanges([{ sheet: house, address: 'A1', values: rows }], { fileName: `${house}.xlsx` })
}

const first = () => logOf('Plot 1', 300, [-60, -50, -40, -30, -20], 20)
const second = () => logOf('Plot 2', 410, [-62, -55, -47, -40, -33, -25, -18], 31)
const flowOf = (log: ReturnType<typeof understandLog>) => log.test?.record?.runs[0]?.readings[0]?.flow_m3_h

function keptFromFirst(): LayoutInput {
  const read = understandLog(first(), { 'flow.unit': 'l/s' })
  const kept = read.keep?.('logs like Plot 1')
  if (!kept) throw new Error('nothing to keep')
  return JSON.parse(JSON.stringify(kept))
}

describe('what was answered about a log', () => {
  it('is asked for the first log of a make', () => {
    expect(understandLog(first(), {}).test?.questions.map(({ path }) => path)).toEqual(['flow.unit'])
  })

  it('is used for the next log of the make, of another house and length, and says so', () => {
    const read = understandLog(second(), {}, undefined, { kept: [keptFromFirst()] })
    expect(read.test?.questions).toEqual([])
    // The first flow is 31·62^0.65 L/s, and 1 L/s is 3.6 m³/h.
    expect(flowOf(read)).toBeCloseTo(Number((31 * 62 ** 0.65).toFixed(1)) * 3.6, 6)
    expect([read.layout, read.kept]).toEqual(['logs like Plot 1', true])
    expect(read.test?.findings.map(({ rule }) => rule)).toContain('log-layout')
  })

  it('goes with the accepted test, which is read the same once nothing is kept any more', () => {
    const read = understandLog(second(), {}, undefined, { kept: [keptFromFirst()] })
    const again = acceptedTest(second(), read.answers)
    expect(again.record).toEqual(read.test?.record)
  })

  it('is not used for a log of another make', () => {
    const other = gridFromRanges([
      {
        sheet: 'Test',
        address: 'A1',
        values: [
          ['dP', 'Q'],
          [-60, 300],
          [-50, 266],
          [-40, 230],
          [-30, 191],
        ],
      },
    ])
    const read = understandLog(other, {}, undefined, { kept: [keptFromFirst()] })
    expect(read.layout).toBeUndefined()
    expect(read.test?.questions.map(({ path }) => path)).toContain('flow.unit')
  })
})

describe('a layout of the firm’s library', () => {
  const described: LayoutInput = {
    format: 'draughtbook/layout@1',
    name: 'our check sheet',
    fingerprint: { labels: ['Draught check sheet', 'House', 'Fan flow'] },
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'building.name', at: { label: 'House' } },
      { path: 'test.date', at: { label: 'Date' } },
      { path: 'building.volume_m3', at: { label: 'Volume of air inside' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Temp in' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Temp out' } },
    ],
    runs: [
      {
        direction: 'depressurisation',
        pressure: { at: { header: 'Building pressure' } },
        flow: { at: { header: 'Fan flow' }, unit: 'cfm' },
      },
    ],
  }

  it('reads the log where its fingerprint fits, and is kept with the accepted test', () => {
    const read = understandLog(first(), {}, undefined, { firms: [described] })
    // 1 cfm is 0.3048³·60 m³/h by the international foot.
    expect(Number(flowOf(read)) / (Number((20 * 60 ** 0.65).toFixed(1)) * 0.3048 ** 3 * 60)).toBeCloseTo(1, 9)
    expect(read.layout).toBe('our check sheet')
    const again = acceptedTest(first(), read.answers, undefined, read.firms)
    expect(again.record).toEqual(read.test?.record)
  })

  it('that cannot be read is no reason to read no log', () => {
    const broken = { ...described, runs: 'none' } as unknown as LayoutInput
    expect(understandLog(first(), {}, undefined, { firms: [broken] }).test?.questions).toHaveLength(1)
  })
})
