import { describe, expect, it } from 'vitest'
import { constants } from '../../shared-calc/src/catalogue/constants.js'
import { byRule, Calculation } from '../../shared-calc/src/engine/index.js'
import { atReferencePressure } from '../../shared-calc/src/formulas/at-reference-pressure.js'
import ashrae from '../references/ashrae-leakage-area.json'
import { chapterFrom } from '../shared-calc/sheet/support/run-script'
import { expectClose } from './support/expect-close'

// The handbook works with another reference density: the same formulas over that constant.
const atHandbookDensity = chapterFrom(
  { ...atReferencePressure.definition, title: 'handbook' },
  constants.map((constant) =>
    constant.symbol === 'rho_0' ? { ...constant, value: ashrae.density_kg_m3 } : constant,
  ),
)
const at = (pressure: number, exponent: number) =>
  new Calculation().add('at', 'at', atHandbookDensity, {
    dp_r: byRule(pressure, 'test'),
    C_L: byRule(1, 'test'),
    n: byRule(exponent, 'test'),
  })

describe('effective leakage area (ASHRAE Fundamentals ch. 16, eq. 41–46)', () => {
  it('is 1.0758 cm² for each m³/h at 4 Pa', () => {
    const four = at(4, ashrae.exponent)
    expectClose(four.value('A_L') / four.value('q_pr'), ashrae.computed.ela4_cm2_per_m3_h, 1e-12)
  })

  it('keeps the ratio between the 10 Pa rating with C_d 0.611 and the 4 Pa rating with C_d 1', () => {
    const ratio = at(10, ashrae.exponent).value('A_L') / 0.611 / at(4, ashrae.exponent).value('A_L')
    expectClose(ratio, ashrae.computed.ratioOfRatings, 1e-12)
  })

  it('is the same at every pressure for an exponent of 0.5, as an orifice must be', () => {
    const areas = [4, 10, 50, 75].map((pressure) => at(pressure, 0.5).value('A_L'))
    for (const area of areas) expect(area).toBeCloseTo(areas[0] ?? Number.NaN, 12)
  })
})
