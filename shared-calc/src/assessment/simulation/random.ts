import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { LAYERS, layerEdges, layerHeights, TAIL } from './normal-layers.js'

/** Seeded random numbers: the same seed gives the same draws on every machine. */
export interface Random {
  /** Even between 0 and 1, both left out. */
  readonly uniform: () => number
  /** Normal with mean 0 and standard deviation 1. */
  readonly normal: () => number
}

const TO_SHARE = 2 ** -32
/** The 25 bits above those that choose the layer, as a share from −1 to 1. */
const TO_SIGNED = 2 ** -24

/** Random numbers from a whole-number seed; normal ones by layers under the curve (Marsaglia and Tsang 2000). */
export function randomFrom(seed: number): Random {
  const generator = xoroshiro128plus(seed)
  const uniform = () => ((generator.next() >>> 0) + 0.5) * TO_SHARE
  const normal = (): number => {
    for (;;) {
      const bits = generator.next()
      const layer = bits & (LAYERS - 1)
      const share = ((bits >> 7) + 0.5) * TO_SIGNED
      const x = share * (layerEdges[layer] as number)
      // Nearly always: the point lies under the curve in the whole height of its layer.
      if (Math.abs(x) < (layerEdges[layer + 1] as number)) return x
      if (layer === 0) return Math.sign(share) * tail(uniform)
      const [low, high] = [layerHeights[layer] as number, layerHeights[layer + 1] as number]
      if (low + uniform() * (high - low) < Math.exp(-0.5 * x * x)) return x
    }
  }
  return { uniform, normal }
}

/** A normal number beyond the last layer (Marsaglia 1964). */
function tail(uniform: () => number): number {
  for (;;) {
    const x = -Math.log(uniform()) / TAIL
    if (-2 * Math.log(uniform()) > x * x) return TAIL + x
  }
}
