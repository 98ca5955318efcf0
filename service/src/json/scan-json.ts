/** Deepest nesting read. A test record needs 5; the limit keeps recursive readers off the end of their stack. */
export const DEEPEST = 64

const [QUOTE, BACKSLASH, COLON, OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [
  34, 92, 58, 91, 93, 123, 125,
]

/** Number of `"key":` in a JSON text and its deepest nesting, in one pass. The text need not be valid. */
export function scanJson(text: string): { keys: number; depth: number } {
  let keys = 0
  let depth = 0
  let deepest = 0
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at)
    if (code === QUOTE) at = endOfString(text, at)
    else if (code === COLON) keys++
    else if (code === OPEN_LIST || code === OPEN_OBJECT) deepest = Math.max(deepest, ++depth)
    // More closed than opened is not valid, but must not make room for what follows.
    else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth = Math.max(0, depth - 1)
  }
  return { keys, depth: deepest }
}

function endOfString(text: string, start: number): number {
  let at = start + 1
  while (at < text.length) {
    const code = text.charCodeAt(at)
    if (code === QUOTE) return at
    at += code === BACKSLASH ? 2 : 1
  }
  return at
}

/** Number of keys in all objects of a parsed JSON value. */
export function countKeys(value: unknown): number {
  let keys = 0
  const waiting: unknown[] = [value]
  while (waiting.length > 0) {
    const next = waiting.pop()
    if (typeof next !== 'object' || next === null) continue
    const held = Object.values(next)
    if (!Array.isArray(next)) keys += held.length
    for (const one of held) if (typeof one === 'object') waiting.push(one)
  }
  return keys
}
