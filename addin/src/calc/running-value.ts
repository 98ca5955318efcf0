import { limitedName, type RunningEstimate } from '@draughtbook/shared-calc'

/** The value a test is heading for, with the limit it will be held against. */
export interface RunningValue {
  quantity: string
  value: number
  unit: string
  limit?: number
}

const SYMBOLS = [
  ['n50', 'n50_1_h', '1/h'],
  ['qE50', 'qE50_m3_h_m2', 'm3/(h·m2)'],
  ['q50', 'q50_m3_h', 'm3/h'],
] as const

/** Of the run read last: against the limit that decides, else the first figure that can be said. */
export function runningValue(estimates: readonly RunningEstimate[]): RunningValue | undefined {
  const estimate = estimates.at(-1)
  if (!estimate) return undefined
  const { against } = estimate
  if (against) {
    const { quantity, referencePressure_Pa, value, unit, limit } = against
    return { quantity: limitedName(quantity, referencePressure_Pa), value, unit, limit }
  }
  const [known] = SYMBOLS.flatMap(([quantity, key, unit]) => {
    const value = estimate[key]
    return value === undefined ? [] : [{ quantity, value, unit }]
  })
  return known
}
