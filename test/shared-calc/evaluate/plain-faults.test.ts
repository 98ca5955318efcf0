import { InputError, parseRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { powerLaw, recordBy, usual_Pa } from '../../methods/record-by'

type Loose = Record<string, unknown> & { runs: Record<string, unknown>[] }
const record = () =>
  structuredClone(recordBy('iso-9972:2015', powerLaw(80, 0.62, usual_Pa))) as unknown as Loose

function faults(change: (record: Loose) => unknown): string[] {
  const changed = record()
  change(changed)
  try {
    parseRecord(changed)
  } catch (error) {
    if (error instanceof InputError) return error.problems.map(({ path, message }) => `${path}: ${message}`)
    throw error
  }
  return []
}

describe('a record that cannot be read', () => {
  it.each<[string, (record: Loose) => unknown, string]>([
    ['lacks a part', (one) => delete one.building, 'building: it is missing'],
    [
      'has a text for a part',
      (one) => Object.assign(one, { building: 'x' }),
      'building: it must be a group of fields, not the text "x"',
    ],
    [
      'has a part for a list',
      (one) => Object.assign(one, { runs: {} }),
      'runs: it must be a list, not a group of fields',
    ],
    [
      'lacks a number',
      (one) => Object.assign(one, { conditions: { outdoorTemperature_C: 5 } }),
      'conditions.indoorTemperature_C: indoor temperature is missing',
    ],
    [
      'has more readings than are read',
      (one) =>
        Object.assign(one.runs[0] ?? {}, { readings: Array(1001).fill({ pressure_Pa: -1, flow_m3_h: 1 }) }),
      'runs[0].readings: the list may have at most 1000 entries',
    ],
  ])('and %s is refused in plain words', (_, change, said) => {
    expect(faults(change)).toEqual([said])
  })
})
