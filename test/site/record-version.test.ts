import { createHash } from 'node:crypto'
import { digestOf, InputError, parseRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { exampleRecord } from './support/example-record.js'

const problemsOf = (input: unknown): string[] => {
  try {
    parseRecord(input)
    return []
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ path, message }) => `${path}: ${message}`)
    throw error
  }
}

/** JSON with sorted keys, written here apart from the project's own canonical form. */
function sortedJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(sortedJson).join(',')}]`
  if (value === null || typeof value !== 'object') return JSON.stringify(value)
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${entries.map(([key, inner]) => `${JSON.stringify(key)}:${sortedJson(inner)}`).join(',')}}`
}

const leaks = { list: [{ place: 'loft hatch', kind: 'hatch', fixed: false }] }

describe('record versions', () => {
  it('reads a record@1 unchanged: SHA-256 of its sorted JSON, taken by Node, is its digest', () => {
    const read = parseRecord(exampleRecord)
    expect(read).toStrictEqual(exampleRecord)
    expect(digestOf(read)).toBe(createHash('sha256').update(sortedJson(exampleRecord)).digest('hex'))
  })

  it('reads a record@2 with leaks', () => {
    const record = { ...exampleRecord, format: 'draughtbook/record@2', leaks }
    expect(parseRecord(record)).toStrictEqual(record)
  })

  it('refuses a part of record@2 in a record@1, naming both', () => {
    expect(problemsOf({ ...exampleRecord, leaks })).toStrictEqual([
      'leaks: leaks is a field of draughtbook/record@2; this record says draughtbook/record@1',
    ])
  })

  it('refuses the kind of an opening in a record@1', () => {
    const openings = [{ opening: 'hood', kind: 'cooker hood', state: 'closed' }]
    expect(problemsOf({ ...exampleRecord, test: { ...exampleRecord.test, openings } })).toStrictEqual([
      'test.openings[0].kind: kind is a field of draughtbook/record@2; this record says draughtbook/record@1',
    ])
  })

  it('refuses a format it does not know, naming those it knows', () => {
    expect(problemsOf({ ...exampleRecord, format: 'draughtbook/record@3' })).toStrictEqual([
      'format: format must be "draughtbook/record@1" or "draughtbook/record@2"',
    ])
  })

  it.each([
    [{ words: 'pencil', area_cm2: 2 }, 'leaks.list[0].size: give the size once'],
    [{ words: 'hairline gap' }, 'leaks.list[0].size.length_m: a gap needs its length'],
    [{ words: 'fist', length_m: 2 }, 'leaks.list[0].size.length_m: only a gap has a length'],
  ])('refuses the size %j of a leak', (size, message) => {
    const list = [{ place: 'eaves', kind: 'wall to roof', fixed: false, size }]
    const [problem] = problemsOf({ ...exampleRecord, format: 'draughtbook/record@2', leaks: { list } })
    expect(problem).toContain(message)
  })

  it('refuses an exclusion without its reason', () => {
    const space = {
      name: 'shaft',
      countsIn: 'both',
      use: 'exclude',
      countsAsFloor: false,
      solid: { shape: 'box', length_m: 1, width_m: 1, height_m: 2.5 },
    }
    expect(
      problemsOf({ ...exampleRecord, format: 'draughtbook/record@2', takeOff: { spaces: [space] } }),
    ).toStrictEqual(['takeOff.spaces[0].reason: an exclusion needs its reason'])
  })
})
