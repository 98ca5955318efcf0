import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'

// Truth: the means of what is written beside each marker. Levels that come twice are two readings only by their markers.
const FORM = [
  'House;Fir Barn',
  'Date;2026-05-12',
  'Volume (m³);412',
  'Inside temperature (°C);20',
  'Outside temperature (°C);9',
]
const LEVELS = [-62, -62.4, -50, -50.3, -38, -25]
const HOLD_S = 30
const RAMP_S = 8
const flowAt = (pressure: number) => 52 * Math.abs(pressure) ** 0.65
/** A wobble of known mean over the hold, Pa. */
const wobble = (second: number) => 0.2 * Math.sin((2 * Math.PI * second) / 10)

function export_(marker: (step: number | 'before' | 'after') => string) {
  const lines: string[] = []
  let time = 0
  let now = { pressure: -1.1, flow: 0 }
  const line = (pressure: number, flow: number, mark: string) =>
    lines.push(`${time++};${pressure.toFixed(2)};${flow.toFixed(1)};${mark}`)
  const hold = (pressure: number, flow: number, mark: string) => {
    for (let second = 1; lines.length > 0 && second <= RAMP_S; second++) {
      const share = second / (RAMP_S + 1)
      line(now.pressure + share * (pressure - now.pressure), now.flow + share * (flow - now.flow), '')
    }
    for (let second = 0; second < HOLD_S; second++) line(pressure + wobble(second), flow, mark)
    now = { pressure, flow }
  }
  hold(-1.1, 0, marker('before'))
  for (const [index, level] of LEVELS.entries()) hold(level, flowAt(level), marker(index + 1))
  hold(-0.7, 0, marker('after'))
  return [...FORM, '', 'Seconds;Building pressure [Pa];Flow [m³/h];Marker', ...lines].join('\r\n')
}

const runsOf = (text: string) =>
  interpretLog({ bytes: new TextEncoder().encode(text), fileName: 'export.csv' }).tests[0]?.record?.runs

describe('markers beside the samples of a series', () => {
  it.each([
    ['words', (step: number | string) => (typeof step === 'number' ? `step ${step}` : `zero ${step}`)],
    ['numbers', (step: number | string) => (typeof step === 'number' ? String(step) : '0')],
  ])('in %s: each step is a reading, also where two are at one pressure', (_, marker) => {
    const [run] = runsOf(export_(marker)) ?? []
    expect(run?.readings).toHaveLength(LEVELS.length)
    for (const [index, level] of LEVELS.entries()) {
      expect(Math.abs((run?.readings[index]?.pressure_Pa ?? 0) - level)).toBeLessThan(0.1)
      expect(run?.readings[index]?.flow_m3_h).toBeCloseTo(flowAt(level), 0)
    }
    for (const [values = [], truth] of [
      [run?.zeroFlowBefore_Pa, -1.1],
      [run?.zeroFlowAfter_Pa, -0.7],
    ] as const)
      expect(values.reduce((sum, one) => sum + one, 0) / values.length).toBeCloseTo(truth, 1)
  })

  it('that are blank throughout change nothing', () => {
    const [run] = runsOf(export_(() => '')) ?? []
    // Without markers two levels within half a pascal are one.
    expect(run?.readings.length).toBeGreaterThanOrEqual(4)
    expect(run?.readings.length).toBeLessThan(LEVELS.length)
  })
})
