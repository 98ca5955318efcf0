/** Layers of equal area under the normal curve. */
export const LAYERS = 128
/** Where the lowest layer passes into the tail, and the area of a layer. Source: Marsaglia and Tsang 2000 (from memory). */
export const TAIL = 3.442619855899
const AREA = 9.91256303526217e-3

const height = (x: number): number => Math.exp(-0.5 * x * x)

/** Right edge of each layer, from the widest up; the lowest counts its tail as if it were a rectangle. */
export const layerEdges: Float64Array = edges()
/** Height of the curve at each edge. */
export const layerHeights: Float64Array = layerEdges.map((edge, i) => (i === 0 ? 0 : height(edge)))

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
