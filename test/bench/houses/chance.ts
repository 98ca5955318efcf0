/** Seeded chance of the simulated houses: its own generator, apart from the project's. */
export interface Chance {
  /** Even between two ends. */
  readonly between: (low: number, high: number) => number
  /** Normal with mean 0 and a standard deviation. */
  readonly error: (deviation: number) => number
  readonly oneOf: <T>(list: readonly T[]) => T
}

/** Numbers by the mulberry32 generator; normal ones by Box and Muller's polar form. */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4_294_967_296
  }
  let kept: number | undefined
  const normal = (): number => {
    if (kept !== undefined) {
      const value = kept
      kept = undefined
      return value
    }
    for (;;) {
      const [a, b] = [2 * even() - 1, 2 * even() - 1]
      const s = a * a + b * b
      if (s >= 1 || s === 0) continue
      const scale = Math.sqrt((-2 * Math.log(s)) / s)
      kept = b * scale
      return a * scale
    }
  }
  return {
    between: (low, high) => low + (high - low) * even(),
    error: (deviation) => deviation * normal(),
    oneOf: (list) => {
      const chosen = list[Math.floor(even() * list.length)]
      if (chosen === undefined) throw new RangeError('nothing to choose from')
      return chosen
    },
  }
}
