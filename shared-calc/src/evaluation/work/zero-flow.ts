import type { Run } from '../../contract/record/index.js'
import { assumed, type BlockOf, type Calculation, columnFromRecord, type Given } from '../../engine/index.js'
import { zeroFlowPeriod } from '../../formulas/zero-flow.js'

export interface ZeroFlow {
  readonly before: BlockOf<typeof zeroFlowPeriod> | undefined
  readonly after: BlockOf<typeof zeroFlowPeriod> | undefined
  readonly meanBefore: Given
  readonly meanAfter: Given
}

/**
 * Zero-flow means before and after. A missing period takes the other's mean, both missing take 0 Pa:
 * rule `zero-flow-samples` then invalidates the test.
 */
export function workZeroFlow(
  calculation: Calculation,
  id: string,
  word: string,
  run: Run,
  path: string,
): ZeroFlow {
  const period = (when: 'Before' | 'After'): BlockOf<typeof zeroFlowPeriod> | undefined => {
    const field = `zeroFlow${when}_Pa` as const
    const values = run[field]
    if (!values || values.length === 0) return undefined
    return calculation.add(
      `${id}.zero${when}`,
      `${word}: zero-flow pressure ${when.toLowerCase()}`,
      zeroFlowPeriod,
      {
        dp_z: columnFromRecord(values, (row) => `${path}.${field}[${row}]`),
      },
    )
  }
  const before = period('Before')
  const after = period('After')
  const none = assumed(0, 'zero-flow-samples')
  const meanBefore = before?.ref('dp_m0') ?? after?.ref('dp_m0') ?? none
  const meanAfter = after?.ref('dp_m0') ?? before?.ref('dp_m0') ?? none
  return { before, after, meanBefore, meanAfter }
}
