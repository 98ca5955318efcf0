import { createHash } from 'node:crypto'
import { digestOf, formatNeeded, InputError, parseRecord } from '@draughtbook/shared-calc'
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

/** The example with fields of one part changed; `runs` stands for the first run. */
function withChange(change: Record<string, object>): Record<string, unknown> {
  const [part = '', fields = {}] = Object.entries(change)[0] ?? []
  const example = exampleRecord as Record<string, unknown>
  if (part === 'target') return { ...example, target: fields }
  if (part !== 'runs') return { ...example, [part]: { ...(example[part] as object | undefined), ...fields } }
  const [first, ...others] = exampleRecord.runs
  return { ...example, runs: [{ ...first, ...fields }, ...others] }
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
    expect(problemsOf({ ...exampleRecord, format: 'draughtbook/record@9' })).toStrictEqual([
      'format: "draughtbook/record@9" is not known here; a later Draughtbook may have written it. This one reads "draughtbook/record@1", "draughtbook/record@2" or "draughtbook/record@3"',
    ])
  })

  // What came with record@3: an older tool would overlook it and give another figure without a word.
  it.each([
    [{ building: { lossArea_m2: 90 } }, 'building.lossArea_m2: lossArea_m2 is a field'],
    [{ test: { adjoiningSpaces: 'guarded' } }, 'test.adjoiningSpaces: adjoiningSpaces is a field'],
    [{ test: { preparation: 'method A' } }, 'test.preparation: preparation "method A" is a value'],
    [{ pressureGauge: { accuracy_Pa: 1 } }, 'pressureGauge.accuracy_Pa: accuracy_Pa is a field'],
    [
      { flowDevice: { accuracy_relative: 0.05 } },
      'flowDevice.accuracy_relative: accuracy_relative is a field',
    ],
    [{ thermometer: { accuracy_K: 0.5 } }, 'thermometer: thermometer is a field'],
    [{ target: { preset: 'france-house', sampled: true } }, 'target.sampled: sampled is a field'],
    [
      { target: { quantity: 'qT_pr', limit: 0.6, referencePressure_Pa: 4 } },
      'target.quantity: quantity "qT_pr" is a value',
    ],
    [{ runs: { flowStatedAt: 'reference air' } }, 'runs[0].flowStatedAt: flowStatedAt is a field'],
    [
      {
        runs: {
          evenness: [
            {
              testPressure_Pa: 50,
              places: [
                { place: 'a', pressure_Pa: 50 },
                { place: 'b', pressure_Pa: 49 },
              ],
            },
          ],
        },
      },
      'runs[0].evenness: evenness is a field',
    ],
  ])('refuses %j in a record@2 and reads it in a record@3', (change, message) => {
    const record = withChange(change)
    expect(problemsOf({ ...record, format: 'draughtbook/record@2' })).toStrictEqual([
      `${message} of draughtbook/record@3; this record says draughtbook/record@2`,
    ])
    const newer = { ...record, format: 'draughtbook/record@3' }
    expect(parseRecord(newer)).toStrictEqual(newer)
    expect(formatNeeded(record)).toBe('draughtbook/record@3')
  })

  it('names the oldest format that holds a draft', () => {
    expect(formatNeeded(exampleRecord)).toBe('draughtbook/record@1')
    expect(formatNeeded({ ...exampleRecord, leaks })).toBe('draughtbook/record@2')
  })

  it('refuses a loss area larger than the envelope of which it is a part', () => {
    const record = withChange({ building: { envelopeArea_m2: 238.1, lossArea_m2: 239 } })
    expect(problemsOf({ ...record, format: 'draughtbook/record@3' })).toStrictEqual([
      'building.lossArea_m2: loss area without the lowest floor is 239 m², more than the envelope area of 238.1 m²: correct one of them',
    ])
  })

  it.each([
    [
      'conditions',
      'barometricPressure_Pa',
      1009,
      'barometric pressure is 1009; it must be between 45\u00a0000 and 115\u00a0000 Pa. Is it in hPa? 1009 hPa is 100\u00a0900 Pa',
    ],
    [
      'conditions',
      'barometricPressure_Pa',
      29.92,
      'barometric pressure is 29.92; it must be between 45\u00a0000 and 115\u00a0000 Pa. Is it in inHg? 29.92 inHg is 101\u00a0321 Pa',
    ],
    [
      'conditions',
      'indoorTemperature_C',
      68,
      'indoor temperature is 68; it must be between −30 and 60 °C. Is it in °F? 68 °F is 20 °C',
    ],
    [
      'conditions',
      'outdoorTemperature_C',
      -80,
      'outdoor temperature is −80; it must be between −60 and 60 °C',
    ],
    [
      'building',
      'lossArea_m2',
      0,
      'loss area without the lowest floor is 0; it must be between 1 and 10\u00a0000\u00a0000 m²',
    ],
    [
      'pressureGauge',
      'accuracy_relative',
      5,
      'accuracy of the pressure gauge, share of the reading is 5; it must be between 0 and 1 (a fraction, not per cent)',
    ],
    ['thermometer', 'accuracy_K', -1, 'accuracy of the thermometer is −1; it must be between 0 and 20 K'],
    ['runs', 'flowStatedAt', 'sea level', 'flowStatedAt must be "device air" or "reference air"'],
  ])('refuses %s.%s %j in one line', (part, field, value, message) => {
    const record = withChange({ [part]: { [field]: value } })
    expect(problemsOf({ ...record, format: 'draughtbook/record@3' })).toStrictEqual([
      `${part === 'runs' ? 'runs[0]' : part}.${field}: ${message}`,
    ])
  })

  it.each([
    [{ words: 'pencil', area_cm2: 2 }, 'leaks.list[0].size: give the size in one way only'],
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
    ).toStrictEqual(['takeOff.spaces[0].reason: an excluded part needs a reason'])
  })
})
