import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** Seeded random numbers: the same seed gives the same draws on every machine. */
export interface Random {
  /** Even between 0 and 1, both left out. */
  readonly uniform: () => number
  /** Normal with mean 0 and standard deviation 1. */
  readonly normal: () => number
}

/** Random numbers from a whole-number seed. Normal ones by Marsaglia's polar method. */
export function randomFrom(seed: number): Random {
  const generator = xoroshiro128plus(seed)
  const uniform = () => ((generator.next() >>> 0) + 0.5) / 4_294_967_296
  let spare = Number.NaN
  const normal = () => {
    if (!Number.isNaN(spare)) {
      const value = spare
      spare = Number.NaN
      return value
    }
    let u = 0
    let v = 0
    let s = 0
    do {
      u = 2 * uniform() - 1
      v = 2 * uniform() - 1
      s = u * u + v * v
    } while (s >= 1 || s === 0)
    const factor = Math.sqrt((-2 * Math.log(s)) / s)
    spare = v * factor
    return u * factor
  }
  return { uniform, normal }
}
