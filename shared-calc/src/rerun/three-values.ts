import type { Difference, DifferenceValue } from './report.js'

/** One difference as an auditor reads it. Null: nothing there; undefined: not known, or not asked. */
export interface ThreeValues {
  readonly issued: DifferenceValue | undefined
  readonly inFile: DifferenceValue | undefined
  readonly workedOut: DifferenceValue | undefined
}

/**
 * What was issued, what is in the file now, and what a new calculation gives.
 * @param following - whether it stands under a changed input: then it is what the change does to a figure
 */
export function threeValues(
  { kind, recorded, expected }: Pick<Difference, 'kind' | 'recorded' | 'expected'>,
  following = false,
): ThreeValues {
  if (following) return { issued: recorded, inFile: undefined, workedOut: expected }
  if (kind === 'figure' || kind === 'evaluation' || kind === 'digest')
    return { issued: undefined, inFile: recorded, workedOut: expected }
  const computed = kind === 'cell' && typeof expected === 'number'
  return { issued: expected, inFile: recorded, workedOut: computed ? expected : undefined }
}
