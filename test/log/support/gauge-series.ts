/** One level of the fan: pressure and flow held for a time. */
export interface Hold {
  pressure_Pa: number
  flow: number
  hold_s: number
}

export interface GaugeSeries {
  time_s: Float64Array
  pressure_Pa: Float64Array
  flow: Float64Array
}

/** A repeatable source of numbers between 0 and 1 (mulberry32, public domain). */
export function randomSource(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Normal deviates by Box and Muller. */
export function normalSource(seed: number): () => number {
  const random = randomSource(seed)
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
}

/** Gusts: a first-order autoregressive process of unit variance; `memory` is its correlation from sample to sample. */
export function gusts(seed: number, memory: number): () => number {
  const normal = normalSource(seed)
  let value = normal()
  return () => {
    const now = value
    value = memory * value + Math.sqrt(1 - memory * memory) * normal()
    return now
  }
}

/** A made-up time log: levels held one after the other, a ramp of a few seconds between them, noise on top. */
export function gaugeSeries(
  holds: readonly Hold[],
  { rate_Hz, ramp_s = 4, noise }: { rate_Hz: number; ramp_s?: number; noise: (index: number) => number },
): GaugeSeries {
  const pressures: number[] = []
  const flows: number[] = []
  for (const [index, hold] of holds.entries()) {
    const before = holds[index - 1] ?? hold
    for (let step = 0; step < (index === 0 ? 0 : ramp_s * rate_Hz); step++) {
      const share = (step + 1) / (ramp_s * rate_Hz + 1)
      pressures.push(before.pressure_Pa + share * (hold.pressure_Pa - before.pressure_Pa))
      flows.push(before.flow + share * (hold.flow - before.flow))
    }
    for (let step = 0; step < hold.hold_s * rate_Hz; step++) {
      pressures.push(hold.pressure_Pa)
      flows.push(hold.flow)
    }
  }
  return {
    time_s: Float64Array.from(pressures, (_, index) => index / rate_Hz),
    pressure_Pa: Float64Array.from(pressures, (value, index) => value + noise(index)),
    flow: Float64Array.from(flows, (value, index) => value * (1 + noise(index + 7) / 400)),
  }
}
