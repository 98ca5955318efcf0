/**
 * Minimises a function of two variables by shrinking a grid round the best point so far: slow, simple and sharing no
 * formula with what it checks. Good to about 1e-7 of the spans, as far as the squares tell points apart.
 */
export function minimise(
  f: (a: number, b: number) => number,
  start: readonly [number, number],
  spans: readonly [number, number],
): [number, number] {
  let [a, b] = start
  let [spanA, spanB] = spans
  for (let round = 0; round < 120; round += 1) {
    let best = f(a, b)
    let [nextA, nextB] = [a, b]
    for (let i = -6; i <= 6; i += 1)
      for (let j = -6; j <= 6; j += 1) {
        const value = f(a + (i / 6) * spanA, b + (j / 6) * spanB)
        if (value < best) {
          best = value
          nextA = a + (i / 6) * spanA
          nextB = b + (j / 6) * spanB
        }
      }
    ;[a, b] = [nextA, nextB]
    spanA *= 0.8
    spanB *= 0.8
  }
  return [a, b]
}
