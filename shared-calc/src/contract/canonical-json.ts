import canonicalize from 'canonicalize'

/**
 * Canonical JSON of a value (RFC 8785): sorted keys, shortest numbers, no white space. JSON.stringify writes strings and
 * numbers as the RFC asks, so that a copy with its keys in order is enough, in half the time of the package; whatever
 * such a copy would not hold is left to the package.
 * @throws TypeError where the value has no JSON form, Error for NaN and infinities
 */
export function canonicalJson(value: unknown): string {
  const copy = inOrder(value)
  if (copy !== RARE) return JSON.stringify(copy)
  const text = (canonicalize as unknown as (input: unknown) => string | undefined)(value)
  if (text === undefined) throw new TypeError('value has no JSON form')
  return text
}

/** What the copy cannot hold: no number, functions, what says its own JSON, keys that an object keeps in an order of its own. */
const RARE = Symbol('left to the package')

function inOrder(value: unknown): unknown {
  switch (typeof value) {
    case 'number':
      return Number.isFinite(value) ? value : RARE
    case 'string':
    case 'boolean':
      return value
    case 'object':
      if (value === null) return value
      return Array.isArray(value) ? listInOrder(value) : objectInOrder(value as Record<string, unknown>)
    default:
      return RARE
  }
}

function listInOrder(list: readonly unknown[]): unknown {
  const copy: unknown[] = []
  for (let i = 0; i < list.length; i += 1) {
    const item = list[i] === undefined ? null : inOrder(list[i])
    if (item === RARE) return RARE
    copy.push(item)
  }
  return copy
}

function objectInOrder(object: Record<string, unknown>): unknown {
  if (typeof object.toJSON === 'function') return RARE
  const keys = Object.keys(object)
  sortShort(keys)
  const copy: Record<string, unknown> = {}
  for (let i = 0; i < keys.length; i += 1) {
    const key = keys[i] as string
    if (keepsOwnOrder(key)) return RARE
    if (object[key] === undefined) continue
    const item = inOrder(object[key])
    if (item === RARE) return RARE
    copy[key] = item
  }
  return copy
}

/** Whole numbers come first in an object, and `__proto__` is no key of it. */
function keepsOwnOrder(key: string): boolean {
  const first = key.charCodeAt(0)
  return (first >= DIGIT_0 && first <= DIGIT_9) || key === '__proto__'
}
const [DIGIT_0, DIGIT_9] = [48, 57]

/** Sorts a few texts by their UTF-16 code units, as the RFC asks; for so few, putting each in its place is quickest. */
function sortShort(keys: string[]): void {
  if (keys.length > 32) keys.sort()
  else
    for (let i = 1; i < keys.length; i += 1) {
      const key = keys[i] as string
      let at = i
      for (; at > 0 && (keys[at - 1] as string) > key; at -= 1) keys[at] = keys[at - 1] as string
      keys[at] = key
    }
}
