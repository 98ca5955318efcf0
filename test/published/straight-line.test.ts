import { describe, expect, it } from 'vitest'
import gum from '../references/gum-h3.json'
import norris from '../references/nist-norris.json'
import { expectPrinted } from '../support/expect-printed'
import { expectClose } from './support/expect-close'
import { ownLine } from './support/own-line'

describe('straight line by the project’s own formulas', () => {
  it('gives NIST StRD Norris, certified values, to 10 digits', () => {
    const line = ownLine(norris.x, norris.y)
    const { certified } = norris
    for (const [what, value] of Object.entries(certified))
      expectClose(line[what as keyof typeof certified], Number(value), 1e-10, what)
  })

  it('would not pass as Norris with one reading mistyped', () => {
    const line = ownLine(
      norris.x,
      norris.y.map((y, i) => (i === 7 ? y + 0.01 : y)),
    )
    expect(Math.abs(line.slope / Number(norris.certified.slope) - 1)).toBeGreaterThan(1e-7)
  })
})

describe('thermometer calibration of the GUM, example H.3', () => {
  const x = gum.temperature_C.map((t) => t - gum.referenceTemperature_C)
  const line = ownLine(x, gum.correction_C)
  const at30 = line.at(gum.predictAt_C - gum.referenceTemperature_C)
  // r(y1, y2) from the variance of the value at x = 10: u² = u1² + 100·u2² + 2·10·r·u1·u2.
  const [u1, u2] = [line.standardErrorOfIntercept, line.standardErrorOfSlope]
  const correlation = (at30.standardError ** 2 - u1 ** 2 - (10 * u2) ** 2) / (20 * u1 * u2)

  it('gives all published digits: line, standard uncertainties and correlation', () => {
    const { published } = gum
    expectPrinted(line.intercept, published.y1, 'y1')
    expectPrinted(u1, published.u_y1, 'u(y1)')
    expectPrinted(line.slope, published.y2, 'y2')
    expectPrinted(u2, published.u_y2, 'u(y2)')
    expectPrinted(correlation, published.correlation, 'r(y1, y2)')
    expectPrinted(line.residualStandardDeviation, published.s, 's (value from memory)')
  })

  it('gives the published prediction at 30 °C, with the covariance in its uncertainty', () => {
    expectPrinted(at30.value, gum.published.b30, 'b(30 °C)')
    expectPrinted(at30.standardError, gum.published.u_b30, 'u(b(30 °C))')
    // Leaving the covariance out would give 0.0073 °C.
    expectPrinted(Math.hypot(u1, 10 * u2), '0.0073', 'u without covariance')
  })

  it('agrees with R to 9 digits, interval of the mean included', () => {
    const { computed } = gum
    expectClose(line.intercept, computed.y1, 1e-9, 'y1')
    expectClose(line.slope, computed.y2, 1e-9, 'y2')
    expectClose(u1, computed.u_y1, 1e-9, 'u(y1)')
    expectClose(u2, computed.u_y2, 1e-9, 'u(y2)')
    expectClose(correlation, computed.correlation, 1e-9, 'r')
    expectClose(at30.value, computed.b30, 1e-9, 'b30')
    expectClose(at30.standardError, computed.u_b30, 1e-9, 'u(b30)')
    expectClose(at30.interval[0], computed.meanInterval[0] ?? Number.NaN, 1e-9, 'lower end')
    expectClose(at30.interval[1], computed.meanInterval[1] ?? Number.NaN, 1e-9, 'upper end')
  })
})
