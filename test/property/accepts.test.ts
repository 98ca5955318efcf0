import { readFileSync } from 'node:fs'
import { acceptRecord, parseRecord, TestRecord } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { accepts } from '../../shared-calc/src/contract/accepts'
import { anyRecord } from './support/any-records'
import { ordinaryRecord } from './support/ordinary-records'

const isRecord = accepts(TestRecord)
/** Records that hold what the random ones do not: take-off, plan, preparation, leaks, instruments. */
const whole = ['demo-house', 'demo-record'].map(
  (name) => JSON.parse(readFileSync(`test/demo/${name}.json`, 'utf8')) as object,
)

const strange = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    undefined,
    '',
    ' ',
    'Pa',
    Number.NaN,
    Number.POSITIVE_INFINITY,
    -0,
    1e308,
    [],
    {},
    true,
  ),
  fc.constantFrom<unknown>(
    '2026-02-30',
    'x'.repeat(4001),
    '😀'.repeat(3000),
    new Array(2),
    Object.create({ value: 1 }),
  ),
  fc.double(),
)

type Holder = Record<string, unknown> | unknown[]

/** Every object and list in a value. */
const holdersIn = (value: unknown): Holder[] =>
  typeof value === 'object' && value !== null
    ? [value as Holder, ...Object.values(value).flatMap(holdersIn)]
    : []

/** The same with one place of it put otherwise: another value, a field more, a field less. */
const changed = (record: unknown, { where, what, how }: { where: number; what: unknown; how: string }) => {
  const copy = structuredClone(record)
  const holders = holdersIn(copy)
  const holder = holders[where % holders.length] as Record<string, unknown>
  const keys = Object.keys(holder)
  const key = keys[where % Math.max(1, keys.length)] ?? 'none'
  if (Array.isArray(holder) && (how === 'more' || holder.length === 0)) holder.push(what)
  else if (how === 'less') delete holder[key]
  else holder[how === 'more' ? 'more' : key] = what
  return copy
}
const change = fc.record({
  where: fc.nat(),
  what: strange,
  how: fc.constantFrom('other', 'other', 'more', 'less'),
})

describe('whether a record passes as it is', () => {
  // Zod is the oracle: what is accepted must be what it would give back.
  it('is said of no record that the schema refuses or would change', () => {
    let accepted = 0
    let refused = 0
    const records = fc.oneof(anyRecord, ordinaryRecord, fc.constantFrom(...whole))
    fc.assert(
      fc.property(records, fc.array(change, { maxLength: 2 }), (record, changes) => {
        const input = changes.reduce(changed, record as unknown)
        if (!isRecord(input)) {
          refused += 1
          return
        }
        accepted += 1
        const checked = TestRecord.safeParse(input)
        expect(checked.error).toBeUndefined()
        expect(input).toEqual(checked.data)
      }),
      { numRuns: 3000 },
    )
    // Else the property would say nothing.
    expect(Math.min(accepted, refused)).toBeGreaterThan(500)
  })

  it('is said of every ordinary record', () => {
    fc.assert(fc.property(ordinaryRecord, (record) => isRecord(record)))
    expect(whole.map(isRecord)).toEqual(whole.map(() => true))
  })

  it('leaves the record as it was given', () => {
    const [record] = whole
    expect(acceptRecord(record)).toBe(record)
    expect(parseRecord(record)).toEqual(record)
  })

  it('leaves a record that does not pass to the schema, which names the field', () => {
    const record = { ...whole[0], building: { volume_m3: 'large' } }
    expect(() => acceptRecord(record)).toThrow(/building\.volume_m3/)
  })

  it('asks what a schema checks by itself', () => {
    const [whole, day, both] = [z.int(), z.iso.date(), z.int().min(2).max(7)].map(accepts)
    expect([7, 7.5, '7', 2 ** 60].map((value) => whole?.(value))).toEqual([true, false, false, false])
    expect(['2026-10-14', '14 October'].map((value) => day?.(value))).toEqual([true, false])
    expect([1, 2, 7, 8].map((value) => both?.(value))).toEqual([false, true, true, false])
  })

  it.each([
    ['a transform', z.string().transform(Number)],
    ['a default', z.string().default('none')],
    ['trimming', z.string().trim()],
    ['a coerced number', z.coerce.number()],
    ['an object that drops unknown fields', z.object({ a: z.number() })],
    ['a record of any keys', z.record(z.string(), z.number())],
  ])('is never said where the schema has %s', (_what, schema) => {
    expect(['7', ' a ', { a: 1 }, undefined].map(accepts(schema))).toEqual([false, false, false, false])
  })
})
