import { createHash } from 'node:crypto'
import { canonicalJson, digestOf } from '@draughtbook/shared-calc'
import canonicalizeModule from 'canonicalize'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sha256Hex, sha256InScript } from '../../shared-calc/src/contract/sha256'
import { anyRecord } from './support/any-records'
import { ordinaryRecord } from './support/ordinary-records'

// The package declares its default export as a module object; at run time it is the function.
const canonicalize = canonicalizeModule as unknown as (value: unknown) => string | undefined

/** The same value with the keys of every object in another order. */
function reordered(value: unknown, place: () => number): unknown {
  if (Array.isArray(value)) return value.map((item) => reordered(item, place))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, inner]) => ({ key, inner: reordered(inner, place), at: place() }))
      .sort((a, b) => a.at - b.at)
      .map(({ key, inner }) => [key, inner]),
  )
}

describe('canonical JSON', () => {
  // RFC 8785, 3.2.2 and 3.2.3 (values from memory).
  it('is that of the examples of RFC 8785', () => {
    const example = {
      // The RFC writes 333333333.33333329, which is this double.
      numbers: [333333333.3333333, 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000f\u000aA\'\u0042\u0022\u005c\\"/',
      literals: [null, true, false],
    }
    expect(canonicalJson(example)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    )
    const keys = { '\u20ac': 5, '\r': 1, '\ufb33': 7, '1': 2, '\ud83d\ude00': 6, '\u0080': 3, '\u00f6': 4 }
    expect(Object.values(JSON.parse(canonicalJson(keys)))).toHaveLength(7)
    expect(canonicalJson(keys).match(/:\d/g)?.join('')).toBe(':1:2:3:4:5:6:7')
  })

  it('writes nothing that JSON has no form for', () => {
    expect(() => canonicalJson({ a: Number.NaN })).toThrow()
    expect(() => canonicalJson({ a: Number.POSITIVE_INFINITY })).toThrow()
    expect(() => canonicalJson(undefined)).toThrow('no JSON form')
  })

  it('leaves out what is undefined, as JSON does', () => {
    expect(canonicalJson({ b: undefined, a: [1, undefined] })).toBe('{"a":[1,null]}')
  })

  it('is that of the package “canonicalize”, for records and for any other value', () => {
    fc.assert(
      fc.property(
        fc.oneof(ordinaryRecord, anyRecord, fc.jsonValue(), fc.object({ withDate: true })),
        (value) => {
          let expected: string | undefined
          try {
            expected = canonicalize(value)
          } catch {
            expect(() => canonicalJson(value)).toThrow()
            return
          }
          expect(canonicalJson(value)).toBe(expected)
        },
      ),
      { numRuns: 2000 },
    )
  })

  it('has keys in the order of their code units where an object has them otherwise', () => {
    expect(canonicalJson({ b: 1, 10: 2, 9: 3, ab: 4, '\u20ac': { 1: 0, '': 5 } })).toBe(
      '{"10":2,"9":3,"ab":4,"b":1,"€":{"":5,"1":0}}',
    )
    expect(canonicalJson(JSON.parse('{"z":1,"__proto__":{"a":2}}'))).toBe('{"__proto__":{"a":2},"z":1}')
    const many = Object.fromEntries(Array.from({ length: 90 }, (_, i) => [`k${(i * 37) % 90}`, i]))
    expect(canonicalJson(many)).toBe(canonicalize(many))
    expect(canonicalJson({ day: new Date(0) })).toBe('{"day":"1970-01-01T00:00:00.000Z"}')
  })

  it('is JSON of the same value', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)))
      }),
      { numRuns: 500 },
    )
  })
})

describe('SHA-256', () => {
  // FIPS 180-4, the published example "abc" (value from memory).
  it('is that of the published example, in script as in Node', () => {
    const published = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'
    expect([sha256InScript('abc'), sha256Hex('abc')]).toEqual([published, published])
  })

  it('is what Node’s own crypto computes, for texts and bytes, in script as in Node', () => {
    const own = (data: string | Uint8Array) => createHash('sha256').update(data).digest('hex')
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.uint8Array({ maxLength: 300 })), (data) => {
        expect([sha256InScript(data), sha256Hex(data)]).toEqual([own(data), own(data)])
      }),
      { numRuns: 300 },
    )
  })
})

describe('digest of a record', () => {
  it('is SHA-256 of its canonical JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(digestOf(value)).toBe(createHash('sha256').update(canonicalJson(value), 'utf8').digest('hex'))
      }),
      { numRuns: 300 },
    )
  })

  it('does not depend on the order of keys', () => {
    fc.assert(
      fc.property(ordinaryRecord, fc.infiniteStream(fc.nat()), (record, order) => {
        expect(digestOf(reordered(record, () => order.next().value))).toBe(digestOf(record))
      }),
    )
  })

  it('changes with any figure', () => {
    fc.assert(
      fc.property(ordinaryRecord, fc.nat(), (record, pick) => {
        const readings = record.runs.flatMap((run) => run.readings)
        const changed = structuredClone(record)
        const reading = changed.runs.flatMap((run) => run.readings)[pick % readings.length]
        if (reading) reading.flow_m3_h = (reading.flow_m3_h ?? 0) * (1 + 2 ** -50)
        expect(digestOf(changed)).not.toBe(digestOf(record))
      }),
    )
  })
})
