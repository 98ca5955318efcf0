import {
  estimateWhileReading,
  InputError,
  LeakReport,
  makePlan,
  measureTakeOff,
  methods,
  PlanRequest,
  PlanResult,
  parseRecord,
  reportLeaks,
  TakeOff,
  TakeOffResult,
  WhileReading,
} from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { exampleRecord } from './support/example-record.js'
import { planRequest } from './support/plan-request.js'

const number = (min: number, max: number) =>
  fc.oneof(fc.double({ min, max, noNaN: true }), fc.constantFrom(min, max))
const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined })
const without = (value: unknown): unknown => JSON.parse(JSON.stringify(value))

/** Either the input is refused, field by field, or the result fits its schema: no NaN, no infinity, nothing missing. */
function refusedOrWhole(schema: z.ZodType, work: () => unknown): 'refused' | 'whole' {
  let result: unknown
  try {
    result = work()
  } catch (error) {
    expect(error).toBeInstanceOf(InputError)
    return 'refused'
  }
  const checked = schema.safeParse(result)
  expect(checked.success ? [] : checked.error.issues).toStrictEqual([])
  return 'whole'
}

describe('whatever a schema lets in', () => {
  it('a run under way gives a whole estimate or a refusal that names its field', () => {
    const seen = { refused: 0, whole: 0 }
    const reading = fc.record({
      pressure_Pa: fc.oneof(number(-1000, 1000), number(-80, -5)),
      flow_m3_h: fc.oneof(number(1e-6, 1e6), number(50, 500)),
    })
    fc.assert(
      fc.property(
        fc.constantFrom(...methods.map(({ id }) => id)),
        fc.array(reading, { minLength: 1, maxLength: 9 }),
        optional(fc.array(number(-200, 200), { maxLength: 4 })),
        optional(number(1, 1e7)),
        optional(number(-30, 60)),
        (method, readings, zero, volume_m3, temperature) => {
          const input = without({
            method,
            building: { volume_m3 },
            conditions: { indoorTemperature_C: temperature, outdoorTemperature_C: temperature },
            run: { direction: 'depressurisation', readings, zeroFlowBefore_Pa: zero },
          })
          seen[refusedOrWhole(WhileReading, () => estimateWhileReading(input))] += 1
        },
      ),
      { numRuns: 500 },
    )
    expect(Math.min(seen.refused, seen.whole)).toBeGreaterThan(20)
  })

  it('a plan gives a whole result', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...methods.map(({ id }) => id)),
        number(1, 1e7),
        number(1e-6, 1e7),
        optional(number(-200, 200)),
        optional(number(-60, 60)),
        optional(number(-60, 60)),
        number(0, 1e6),
        number(0, 1e6),
        (
          method,
          volume_m3,
          limit,
          zeroFlowPressure_Pa,
          indoorTemperature_C,
          outdoorTemperature_C,
          low,
          high,
        ) => {
          const request = PlanRequest.parse(
            without({
              ...planRequest,
              method,
              building: { ...planRequest.building, volume_m3 },
              target: { quantity: 'n50', limit },
              plan: {
                zeroFlowPressure_Pa,
                forecast: { indoorTemperature_C, outdoorTemperature_C },
                devices: [
                  { name: 'fan', ranges: [{ label: 'A', minimumFlow_m3_h: low, maximumFlow_m3_h: high }] },
                ],
              },
            }),
          )
          refusedOrWhole(PlanResult, () => makePlan(request))
        },
      ),
      { numRuns: 300 },
    )
  })

  it('a take-off gives a whole result', () => {
    const length = number(0.001, 10_000)
    fc.assert(
      fc.property(
        fc.array(fc.tuple(length, length, length, fc.constantFrom('add', 'exclude')), {
          minLength: 1,
          maxLength: 6,
        }),
        number(0, 1),
        optional(number(0, 10_000)),
        (parts, scaleUncertainty, lengthUncertainty_m) => {
          const takeOff = TakeOff.parse(
            without({
              scaleUncertainty,
              lengthUncertainty_m,
              spaces: parts.map(([length_m, width_m, height_m, use]) => ({
                name: 'room',
                countsIn: 'both',
                use,
                reason: 'because',
                countsAsFloor: true,
                solid: { shape: 'box', length_m, width_m, height_m },
              })),
            }),
          )
          refusedOrWhole(TakeOffResult, () => measureTakeOff(takeOff))
        },
      ),
      { numRuns: 300 },
    )
  })

  it('a leak log gives a whole report', () => {
    fc.assert(
      fc.property(
        fc.array(number(0.1, 10_000), { maxLength: 5 }),
        fc.array(number(1e-6, 1e7), { maxLength: 4 }),
        (diameters, rates) => {
          const record = parseRecord({
            ...exampleRecord,
            format: 'draughtbook/record@2',
            leaks: {
              list: diameters.map((diameter_mm) => ({
                place: 'here',
                kind: 'other',
                fixed: false,
                size: { diameter_mm },
              })),
              earlierTests: rates.map((airLeakageRate50_m3_h) => ({
                date: '2026-09-01',
                airLeakageRate50_m3_h,
              })),
            },
          })
          refusedOrWhole(LeakReport, () => reportLeaks(record))
        },
      ),
      { numRuns: 100 },
    )
  })
})
