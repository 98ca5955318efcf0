/** A building of some hundred homes whose every cell differs stays below it. */
const MOST_VALUES = 1_000_000
/** Results are some ten levels deep. */
const MOST_LEVELS = 50

/** Why a value is no result, whatever its form should be; checking its form would take long, or would pass over such a key. */
export function outOfBounds(value: unknown): string | undefined {
  let level: unknown[] = [value]
  let values = 0
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > MOST_LEVELS) return `more than ${MOST_LEVELS} levels`
    const next: unknown[] = []
    for (const held of level) {
      if (typeof held !== 'object' || held === null) continue
      if (Object.hasOwn(held, '__proto__')) return 'a key that no result has'
      for (const inner of Object.values(held)) {
        if (++values > MOST_VALUES) return `more than ${MOST_VALUES} values`
        next.push(inner)
      }
    }
    level = next
  }
  return undefined
}
