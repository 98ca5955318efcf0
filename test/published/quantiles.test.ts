import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { describe, expect, it } from 'vitest'
import { studentT } from '../../shared-calc/src/engine/evaluate/functions.js'
import normal from '../references/normal.json'
import t from '../references/student-t.json'
import { expectPrinted } from '../support/expect-printed'
import { expectClose } from './support/expect-close'

describe('two-sided Student t quantile', () => {
  it.each(Object.entries(t.table))(
    'gives the printed table at p = %s (NIST e-Handbook 1.3.6.7.2)',
    (p, rows) => {
      const alpha = 2 * (1 - Number(p))
      for (const [dof, printed] of Object.entries(rows))
        expectPrinted(studentT(alpha, Number(dof)), printed, dof)
    },
  )

  it('agrees with R for 1 to 30 degrees of freedom', () => {
    for (const [dof, row] of Object.entries(t.computed))
      row.forEach((expected, i) => {
        const p = t.probabilities[i] ?? Number.NaN
        // stdlib's inverse of the incomplete beta function is good to about 1e-11.
        expectClose(studentT(2 * (1 - p), Number(dof)), expected, 1e-10, `p ${p}, ${dof} degrees of freedom`)
      })
  })

  it.each([
    [0.05, 0],
    [0.05, -1],
    [0, 5],
    [-0.1, 5],
  ])('refuses alpha %d with %d degrees of freedom', (alpha, dof) => {
    expect(() => studentT(alpha, dof)).toThrow('no Student t quantile')
  })
})

describe('normal quantile of the library in use', () => {
  it('gives the standard table (value from memory) and agrees with R', () => {
    for (const [p, printed] of Object.entries(normal.table))
      expectPrinted(normalQuantile(Number(p), 0, 1), printed, p)
    for (const [p, expected] of Object.entries(normal.computed))
      expectClose(normalQuantile(Number(p), 0, 1), expected, 1e-12, p)
  })
})
