/** A class of a distribution: above `from`, up to and including `to`. */
export interface ValueClass {
  readonly from: number
  readonly to: number
  readonly label: string
}

/** Most classes drawn. */
const MOST = 14

/** Classes of equal width, a round number, that hold every value. @param values - positive, at least one */
export function classesOf(values: readonly number[]): ValueClass[] {
  const highest = values.reduce((a, b) => Math.max(a, b))
  const lowest = values.reduce((a, b) => Math.min(a, b))
  const step = roundStep((highest - lowest) / MOST || highest / MOST || 1)
  // Whole numbers of steps, so that 3 × 0.1 does not creep.
  const first = Math.ceil(lowest / step) - 1
  const last = Math.max(Math.ceil(highest / step), first + 1)
  const decimals = Math.max(0, -Math.floor(Math.log10(step)))
  const edge = (k: number) => Number((k * step).toPrecision(12))
  return Array.from({ length: last - first }, (_, i) => {
    const [from, to] = [edge(first + i), edge(first + i + 1)]
    return { from, to, label: `${from.toFixed(decimals)}–${to.toFixed(decimals)}` }
  })
}

/** The next of 1, 2, 5 times a power of ten. */
function roundStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least))
  const factor = [1, 2, 5, 10].find((one) => one * decade >= least * (1 - 1e-9)) ?? 10
  return Number((factor * decade).toPrecision(1))
}
