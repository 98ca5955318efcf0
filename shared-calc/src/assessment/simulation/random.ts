import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** Layers of equal area under the normal curve. */
const LAYERS = 128
/** Where the lowest layer passes into the tail, and the area of a layer. Source: Marsaglia and Tsang 2000 (from memory). */
const TAIL = 3.442619855899
const AREA = 9.91256303526217e-3

const height = (x: number): number => Math.exp(-0.5 * x * x)

/** Right edge of each layer, from the widest up; the lowest counts its tail as if it were a rectangle. */
const layerEdges: Float64Array = edges()
/** Height of the curve at each edge. */
const layerHeights: Float64Array = layerEdges.map((edge, i) => (i === 0 ? 0 : height(edge)))

function edges(): Float64Array {
  const list = new Float64Array(LAYERS + 1)
  list[0] = AREA / height(TAIL)
  list[1] = TAIL
  for (let i = 2; i < LAYERS; i += 1) {
    const below = list[i - 1] as number
    list[i] = Math.sqrt(-2 * Math.log(AREA / below + height(below)))
  }
  list[LAYERS] = 0
  return list
}

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
      // Nearly always: the point is under the curve in the whole height of its layer.
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
