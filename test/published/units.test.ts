import { describe, expect, it } from 'vitest'
import { findUnit, toRecordUnit } from '../../shared-calc/src/log/cells/units.js'
import reference from '../references/unit-factors.json'
import { expectPrinted } from '../support/expect-printed'

const factor = (spelling: string, kind: string): number => {
  const unit = findUnit(spelling)
  if (!unit) throw new Error(`${spelling} is unknown`)
  expect(unit.kind).toBe(kind)
  return toRecordUnit(1, unit)
}

describe('unit factors', () => {
  it.each(reference.factors)('%s is the %s of NIST SP 811: %s', (spelling = '', kind = '', printed = '') => {
    expectPrinted(factor(spelling, kind), printed)
  })

  it.each(reference.derived.factors)(
    '%s follows from the foot: %s %s',
    (spelling = '', kind = '', printed = '') => {
      expectPrinted(factor(spelling, kind), printed)
    },
  )

  it.each([
    ['°F', 212, 100],
    ['°F', 32, 0],
    ['K', 273.15, 0],
  ])('%s %d is %d °C, zero of the scale included', (spelling, value, celsius) => {
    const unit = findUnit(spelling)
    if (!unit) throw new Error(`${spelling} is unknown`)
    expect(toRecordUnit(value, unit)).toBeCloseTo(celsius, 10)
  })
})
