import {
  type RunningEstimate,
  type TargetPreset,
  type TestRecord,
  targetPresets,
} from '@draughtbook/shared-calc'

/** The value a test is heading for, with the limit it will be held against. */
export interface RunningValue {
  quantity: string
  value: number
  unit: string
  limit?: number
}

type Limit = Pick<TargetPreset['limits'][number], 'quantity' | 'limit'>

const SYMBOLS = [
  ['n50', 'n50_1_h', '1/h'],
  ['qE50', 'qE50_m3_h_m2', 'm3/(h·m2)'],
  ['q50', 'q50_m3_h', 'm3/h'],
] as const

/** Of the run read last. The target's own quantity where the estimate has it, else the first that can be said. */
export function runningValue(
  estimates: readonly RunningEstimate[],
  { target }: Partial<TestRecord>,
): RunningValue | undefined {
  const estimate = estimates.at(-1)
  if (!estimate) return undefined
  const limits = limitsOf(target)
  const known = SYMBOLS.flatMap(([quantity, key, unit]) => {
    const value = estimate[key]
    return value === undefined ? [] : [{ quantity, value, unit }]
  })
  const asked = known.find(({ quantity }) => limits.some((limit) => limit.quantity === quantity))
  const chosen = asked ?? known[0]
  const limit = limits.find(({ quantity }) => quantity === chosen?.quantity)?.limit
  return chosen && { ...chosen, ...(limit !== undefined && { limit }) }
}

function limitsOf(target: TestRecord['target']): readonly Limit[] {
  if (!target) return []
  if ('preset' in target && target.preset !== undefined)
    return targetPresets.find(({ id }) => id === target.preset)?.limits ?? []
  return 'limit' in target ? [{ quantity: target.quantity, limit: target.limit }] : []
}
