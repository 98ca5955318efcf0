import { evaluate } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import twoPoint from '../references/two-point.json'
import { oneRun, powerLaw } from '../shared-calc/support/records'
import { expectClose } from './support/expect-close'
import { ownBareLine } from './support/own-line'

describe('two readings (Roulet 2008, eq. 4.6, p. 64)', () => {
  it('give the exponent as the ratio of the logarithms', () => {
    const line = ownBareLine(twoPoint.dp_Pa.map(Math.log), twoPoint.q_m3_h.map(Math.log))
    expectClose(line.value('n'), twoPoint.computed.n, 1e-12, 'n')
    expectClose(Math.exp(line.value('lnC')), twoPoint.computed.C, 1e-12, 'C')
  })
})

// French Ministry, frequently asked questions on RE2020, no. 128 (read).
describe('a second test whose curve crosses the first', () => {
  const pressures = [60, 50, 40, 30, 20, 10]
  const test = (exponent: number, at30: number) => {
    const readings = powerLaw(pressures, at30 / 30 ** exponent, exponent)
    return evaluate(
      oneRun(
        pressures,
        readings.map(({ flow_m3_h }) => flow_m3_h),
      ),
    ).results
  }

  it('may leak less at 50 Pa and more at 4 Pa', () => {
    const exponent = fc.double({ min: 0.5, max: 0.95, noNaN: true })
    const drop = fc.double({ min: 0.01, max: 0.3, noNaN: true })
    fc.assert(
      fc.property(exponent, drop, fc.double({ min: 10, max: 5000, noNaN: true }), (n, less, flow) => {
        const [first, second] = [test(n + less, flow), test(n, flow)]
        expect(second.q50.value).toBeLessThan(first.q50.value)
        expect(second.q4.value).toBeGreaterThan(first.q4.value)
      }),
    )
  })
})
