import { makePlan, methodById, methods, type PlanRequest } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planRequest } from './support/plan-request.js'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const range = fc
  .record({ low: number(1, 2000), factor: number(1.2, 20) })
  .map(({ low, factor }) => ({ label: 'A', minimumFlow_m3_h: low, maximumFlow_m3_h: low * factor }))
const device = fc.record({
  name: fc.constant('invented fan'),
  ranges: fc
    .array(range, { minLength: 1, maxLength: 3 })
    .map((all) => all.map((one, i) => ({ ...one, label: `range ${i}` }))),
})

const request: fc.Arbitrary<PlanRequest> = fc
  .record({
    volume: number(80, 3000),
    zero: number(-8, 8),
    inside: number(10, 25),
    outside: number(-10, 25),
    limit: number(0.2, 6),
    devices: fc.array(device, { maxLength: 3 }),
    method: fc.constantFrom(...methods.map(({ id }) => id)),
  })
  .map(({ volume, zero, inside, outside, limit, devices, method }) => ({
    ...planRequest,
    method,
    building: { ...planRequest.building, volume_m3: volume },
    target: { quantity: 'n50' as const, limit },
    plan: {
      zeroFlowPressure_Pa: zero,
      forecast: { indoorTemperature_C: inside, outdoorTemperature_C: outside },
      devices,
    },
  }))

describe('properties of a plan', () => {
  it('no pressure lies outside the limits of the method', () => {
    fc.assert(
      fc.property(request, (one) => {
        const { limits, stations } = methodById(one.method)
        const zero = Math.abs(one.plan.zeroFlowPressure_Pa ?? 0)
        const lowest = Math.max(limits.lowestPressure_Pa.value, limits.zeroFlowMultiple.value * zero)
        for (const { readings } of makePlan(one).runs) {
          if (stations)
            for (const { pressureDifference_Pa } of readings)
              expect(stations.pressures_Pa).toContain(pressureDifference_Pa)
          else {
            expect(readings.length).toBeGreaterThanOrEqual(limits.readingsPerDirection.value)
            expect(readings[0]?.pressureDifference_Pa).toBeGreaterThanOrEqual(limits.highestPressure_Pa.value)
          }
          for (const { pressureDifference_Pa, gaugePressure_Pa } of readings) {
            expect(pressureDifference_Pa).toBeGreaterThanOrEqual(lowest)
            expect(Math.abs(gaugePressure_Pa)).toBeLessThanOrEqual(limits.pressureCeiling_Pa.value)
          }
          for (const [i, reading] of stations ? [] : readings.slice(1).entries())
            expect(
              (readings[i]?.pressureDifference_Pa ?? 0) - reading.pressureDifference_Pa,
            ).toBeLessThanOrEqual(limits.readingSpacing_Pa.value + 1e-9)
        }
      }),
      { numRuns: 300 },
    )
  })

  it('no pressure is proposed at which a flow to expect lies outside every range of the device chosen', () => {
    let proposedOnes = 0
    let refusedOnes = 0
    fc.assert(
      fc.property(request, (one) => {
        const plan = makePlan(one)
        const chosen = one.plan.devices?.find(({ name }) => name === plan.chosenDevice)
        for (const { readings } of plan.runs)
          for (const { proposed, expectedFlows_m3_h, ranges } of readings) {
            if (!proposed) refusedOnes += 1
            if (!proposed || (one.plan.devices ?? []).length === 0) continue
            proposedOnes += 1
            expect(chosen).toBeDefined()
            expect(ranges.length).toBeGreaterThan(0)
            for (const label of ranges)
              for (const { flow } of expectedFlows_m3_h) {
                const fits = one.plan.devices?.some((candidate) =>
                  candidate.ranges?.some(
                    (range) =>
                      range.label === label &&
                      (range.minimumFlow_m3_h ?? 0) <= flow &&
                      flow <= (range.maximumFlow_m3_h ?? 0),
                  ),
                )
                expect(fits).toBe(true)
              }
          }
      }),
      { numRuns: 300 },
    )
    expect(proposedOnes).toBeGreaterThan(50)
    expect(refusedOnes).toBeGreaterThan(50)
  })

  it('the order of devices and ranges changes no flow and no provable n50', () => {
    fc.assert(
      fc.property(request, (one) => {
        const turned: PlanRequest = {
          ...one,
          plan: { ...one.plan, devices: [...(one.plan.devices ?? [])].reverse() },
        }
        const flows = (plan: PlanRequest) =>
          makePlan(plan).runs.flatMap(({ readings }) => readings.map((reading) => reading.expectedFlows_m3_h))
        expect(flows(turned)).toStrictEqual(flows(one))
      }),
      { numRuns: 50 },
    )
  })
})
