export interface Leaf {
  readonly keys: readonly (string | number)[]
  readonly value: string | number | boolean
}

/** Every text, number and truth value of a record, with the keys that lead to it, in the record's own order. */
export function leavesOf(value: unknown, keys: readonly (string | number)[] = []): Leaf[] {
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean')
    return [{ keys, value }]
  if (Array.isArray(value)) return value.flatMap((item: unknown, i) => leavesOf(item, [...keys, i]))
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, item]) => leavesOf(item, [...keys, key]))
}
