import fc from 'fast-check'
import { demoRecord } from './record'

/** Values that are the wrong kind, at an edge, or meant to do harm. */
const value = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.double(),
  fc.constantFrom<unknown>(
    0,
    -0,
    1e-320,
    1e308,
    -1e308,
    1e-6,
    1e6,
    50,
    -50,
    null,
    '',
    ' ',
    '=1+1',
    '@SUM(A1)',
    '\u0000',
    '\ud800',
    '\ufffe',
    '\u202e',
    'a'.repeat(5000),
    // Texts over which patterns that backtrack take the square of the length, or more.
    `Volume${' '.repeat(180)}in x`,
    `${' '.repeat(3000)}x`,
    `${'('.repeat(1500)}${' '.repeat(1500)}`,
    `${'1'.repeat(3000)}x`,
    `"${'" '.repeat(1500)}`,
    `${'1,'.repeat(1500)}'`,
    [],
    {},
    [[[[]]]],
  ),
)
const key = fc.oneof(
  fc.string(),
  fc.constantFrom(
    '__proto__',
    'constructor',
    'prototype',
    'toString',
    'format',
    'readings',
    'volume_m3',
    '0',
    '',
  ),
)

type Steps = readonly {
  at: number
  what: 'replace' | 'delete' | 'add' | 'repeat'
  value: unknown
  key: string
}[]
const steps: fc.Arbitrary<Steps> = fc.array(
  fc.record({
    at: fc.nat(),
    what: fc.constantFrom(
      'replace' as const,
      'replace' as const,
      'delete' as const,
      'add' as const,
      'repeat' as const,
    ),
    value,
    key,
  }),
  { minLength: 1, maxLength: 4 },
)

interface Slot {
  holder: Record<string, unknown> | unknown[]
  name: string
}

/** Every place of a value that can be changed. */
function slots(holder: unknown): Slot[] {
  if (typeof holder !== 'object' || holder === null) return []
  return Object.entries(holder).flatMap(([name, held]) => [
    { holder: holder as Record<string, unknown>, name },
    ...slots(held),
  ])
}

function mutate(record: unknown, list: Steps): unknown {
  for (const step of list) {
    const all = slots(record)
    const slot = all[step.at % Math.max(1, all.length)]
    if (!slot) continue
    const { holder, name } = slot
    // A value of its own: put into itself by a later step, it would be endless.
    const value = structuredClone(step.value)
    if (step.what === 'replace') Reflect.set(holder, name, value)
    else if (step.what === 'add' && Array.isArray(holder)) holder.push(value)
    else if (step.what === 'add')
      Object.defineProperty(holder, step.key, {
        value,
        enumerable: true,
        configurable: true,
        writable: true,
      })
    else if (step.what === 'repeat' && Array.isArray(holder))
      holder.push(structuredClone(holder[Number(name)]))
    else if (Array.isArray(holder)) holder.splice(Number(name), 1)
    else Reflect.deleteProperty(holder, name)
  }
  return record
}

const jsonText = (input: unknown): string => JSON.stringify(input) ?? ''

/** A good value changed in a few places. */
const mutated = (good: () => unknown): fc.Arbitrary<string> =>
  steps.map((list) => jsonText(mutate(good(), list)))

/** Good text with a piece cut out or put in. */
const damaged = (good: () => unknown): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.nat(),
      fc.nat({ max: 20 }),
      fc.oneof(fc.string(), fc.constantFrom('NaN', '1e999', '{', '}', '"', ',', '\\u')),
    )
    .map(([at, length, piece]) => {
      const text = jsonText(good())
      const cut = at % text.length
      return text.slice(0, cut) + piece + text.slice(cut + length)
    })

/** Good text with one of its fields given twice or often. */
const repeated = (good: () => unknown): fc.Arbitrary<string> =>
  fc.tuple(fc.nat(), fc.constantFrom(1, 2, 300), value).map(([at, times, other]) => {
    const text = jsonText(good())
    const fields = [...text.matchAll(/"(\w+)":/g)]
    const field = fields[at % fields.length]
    if (!field) return text
    const again = `${field[0]}${JSON.stringify(other) ?? 'null'},`.repeat(times)
    return text.slice(0, field.index) + again + text.slice(field.index)
  })

/** Bodies around a good one: changed, damaged, or nothing of the kind. */
export const bodiesAround = (good: () => unknown): fc.Arbitrary<string | Uint8Array> =>
  fc.oneof(
    { weight: 6, arbitrary: mutated(good) },
    { weight: 2, arbitrary: damaged(good) },
    { weight: 1, arbitrary: repeated(good) },
    { weight: 1, arbitrary: fc.json() },
    { weight: 1, arbitrary: fc.string({ unit: 'binary' }) },
    { weight: 1, arbitrary: fc.uint8Array() },
  )

export const recordBodies = bodiesAround(demoRecord)
