import { curveOfColumns } from '../../../evaluation/work/curve-of-columns.js'

/** How well pairs follow a leakage curve. */
export interface PowerLaw {
  readonly exponent: number
  readonly rSquared: number
  /** Flow at 50 Pa in the unit of the flows, pressures as given. */
  readonly at50: number
}

/**
 * The curve through pairs of pressure and flow as a log shows them. Undefined where none can be put through.
 * Used to tell columns apart, never for a result.
 */
export function powerLaw(pressures: readonly number[], flows: readonly number[]): PowerLaw | undefined {
  if (pressures.length < 3 || pressures.some((one) => one === 0) || flows.some((one) => !(one > 0)))
    return undefined
  if (new Set(pressures.map(Math.abs)).size < 3) return undefined
  try {
    const curve = curveOfColumns(pressures, flows)
    return { exponent: curve.airFlowExponent.value, rSquared: curve.rSquared, at50: curve.at(50).value }
  } catch {
    return undefined
  }
}

/** ISO 9972:2015 expects 0.5 to 1 (value from memory); readings scatter a little beyond. */
export const EXPONENTS = { lowest: 0.45, highest: 1.05 } as const

/** Pressures across a building in a test, Pa: the highest of a run is at least so much, and none is beyond. Common practice, no source. */
export const PRESSURES = { reached: 15, most: 160 } as const

/** Least points of physics at which two columns without a word are readings: an exponent between 0.45 and 1.05, r² from 0.98. */
export const PLAIN_CURVE = 1

/** −3 … 3: what physics says of two columns being building pressure and flow. */
export function physicsScore(law: PowerLaw | undefined): number {
  if (!law || !Number.isFinite(law.exponent)) return -3
  if (law.exponent < EXPONENTS.lowest || law.exponent > EXPONENTS.highest) return -3
  // Two columns of nearly equal numbers are the same pressure twice.
  if (Math.abs(law.exponent - 1) < 0.05 && Math.abs(law.at50 / 50 - 1) < 0.15) return -3
  return Math.max(-3, 3 - (1 - law.rSquared) * 100)
}
