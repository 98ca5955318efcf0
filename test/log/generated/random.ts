/** A stream of random numbers that one seed fixes: every log is the same on every machine. */
export interface Random {
  /** Uniform from 0 to 1. */
  next(): number
  between(low: number, high: number): number
  /** Normal, mean 0, standard deviation 1. */
  normal(): number
  pick<T>(items: readonly T[]): T
  whole(low: number, high: number): number
}

/** Mulberry32, a public-domain generator of 32 bits. Statistical quality beyond "looks like noise" is not needed. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  const between = (low: number, high: number) => low + (high - low) * next()
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1))
  return {
    next,
    between,
    whole,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    pick: (items) => items[whole(0, items.length - 1)] as (typeof items)[number],
  }
}
