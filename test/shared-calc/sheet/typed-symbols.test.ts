import { describe, expect, it } from 'vitest'
import { byRule, Calculation } from '../../../shared-calc/src/engine/index.js'
import { moistAir } from '../../../shared-calc/src/formulas/air.js'

const air = (calculation: Calculation) =>
  calculation.add('air', 'air', moistAir, {
    theta: byRule(20, 'test'),
    phi: byRule(0.5, 'test'),
    p_bar: byRule(101_325, 'test'),
  })

// The type check of the tests proves the first half: it fails where a line marked so does compile.
describe('symbols of a chapter', () => {
  it('are known to the compiler: one that it lacks neither compiles nor runs', () => {
    const block = air(new Calculation())
    expect(block.value('rho')).toBeGreaterThan(1)
    // @ts-expect-error: the chapter has no such symbol
    expect(() => block.value('roh')).toThrow('block air has no scalar roh')
  })

  it('of its inputs too', () => {
    const given = { theta: byRule(20, 'test'), p_bar: byRule(101_325, 'test') }
    // @ts-expect-error: phi is misspelt
    const block = new Calculation().add('air', 'air', moistAir, { ...given, ph: byRule(0.5, 'test') })
    expect(block.has('rho')).toBe(false)
  })
})
