import { z } from 'zod'
import { Direction, Finding, JudgedTarget, type PlannedDevice } from '../../contract/record/index.js'
import { methodById } from '../../methods/index.js'
import { bestDevice, flowSpans, servingRanges } from './coverage.js'
import type { DeviceInDirection } from './devices.js'
import { planFindings } from './findings.js'
import type { PlanRequest } from './request.js'
import { deviceInWords } from './words.js'
import { type WorkedPlan, workPlan } from './work-plan.js'

export const PLAN_RESULT_FORMAT = 'draughtbook/plan-result@1'

const finite = z.number()

/** One pressure of the plan with the flows to expect there, m³/h at the device. */
const PlannedReading = z.strictObject({
  pressureDifference_Pa: finite,
  gaugePressure_Pa: finite,
  expectedFlows_m3_h: z.array(z.strictObject({ exponent: finite, flow: finite })),
  /** Ranges of the device chosen that serve. */
  ranges: z.array(z.string()),
  /** False where no range of any device entered serves: then the pressure is not to be set. */
  proposed: z.boolean(),
})

const PlannedRange = z.strictObject({
  label: z.string(),
  lowestFlow_m3_h: finite,
  highestFlow_m3_h: finite,
  smallestN50_1_h: finite.optional(),
  largestN50_1_h: finite.optional(),
  /** Planned pressures it serves by itself if the building just meets the target. */
  serves: z.array(finite),
})

/** Result of a plan. */
export const PlanResult = z.strictObject({
  format: z.literal(PLAN_RESULT_FORMAT),
  method: z.string(),
  day: z.string().optional(),
  target: JudgedTarget.optional(),
  allowedLeakage: z.strictObject({ flow_m3_h: finite, referencePressure_Pa: finite }).optional(),
  lowestPressure_Pa: finite.optional(),
  /** Readings to take at each pressure; 1 but for methods that repeat theirs. */
  repeats: finite,
  runs: z.array(z.strictObject({ direction: Direction, readings: z.array(PlannedReading) })),
  chosenDevice: z.string().optional(),
  devices: z.array(
    z.strictObject({
      name: z.string(),
      reaches: z.boolean(),
      inWords: z.array(z.string()),
      directions: z.array(z.strictObject({ direction: Direction, ranges: z.array(PlannedRange) })),
    }),
  ),
  stackPressure_Pa: finite.optional(),
  heightTimesTemperature_mK: finite.optional(),
  findings: z.array(Finding),
})
export type PlanResult = z.infer<typeof PlanResult>

/** A plan worked out and read off. Throws InputError naming the field that stops it. */
export const makePlan = (request: PlanRequest): PlanResult =>
  planResult(request, workPlan(request, methodById(request.method)))

/** The result read off the blocks of a worked plan. */
export function planResult(request: PlanRequest, worked: WorkedPlan): PlanResult {
  const { method, target, allowance, pressures, stack, stackMeasure } = worked
  const chosen = bestDevice(worked)
  const { day } = request.plan
  return {
    format: PLAN_RESULT_FORMAT,
    method: method.id,
    ...(day !== undefined && { day }),
    ...(target && { target: target.target }),
    ...(allowance && {
      allowedLeakage: {
        flow_m3_h: allowance.block.value('q_t'),
        referencePressure_Pa: allowance.referencePressure_Pa,
      },
    }),
    ...(pressures && { lowestPressure_Pa: pressures.lowest.value('dp_min') }),
    repeats: method.stations?.repeats.value ?? 1,
    runs: runsOf(worked, chosen),
    ...(chosen && { chosenDevice: chosen.name }),
    devices: [...worked.devices].map(([device, directions]) => ({
      name: device.name,
      reaches: directions.every((one) => reachesAll(worked, one)),
      inWords: deviceInWords(worked, device, directions),
      directions: directions.map((one) => ({
        direction: one.direction,
        ranges: rangesOf(worked, one),
      })),
    })),
    ...(stack && { stackPressure_Pa: stack.value('dp_st') }),
    ...(stackMeasure && { heightTimesTemperature_mK: stackMeasure.value('h_T') }),
    findings: planFindings(request, worked),
  }
}

function runsOf(worked: WorkedPlan, chosen: PlannedDevice | undefined): PlanResult['runs'] {
  const judged = worked.flows.size > 0 && worked.devices.size > 0
  return [...(worked.pressures?.byDirection ?? [])].map(([direction, block]) => {
    const device = chosen && worked.devices.get(chosen)?.find((one) => one.direction === direction)
    const serving = device && servingRanges(device, flowSpans(worked, direction))
    const flows = worked.flows.get(direction) ?? []
    return {
      direction,
      readings: [...block.column('dp')].map((pressure, row) => ({
        pressureDifference_Pa: pressure,
        gaugePressure_Pa: block.column('dp_g')[row] as number,
        expectedFlows_m3_h: flows.map((flow) => ({
          exponent: flow.value('n'),
          flow: flow.column('q_m')[row] as number,
        })),
        ranges: (serving?.[row] ?? []).map(({ range }) => range.label),
        proposed: !judged || (serving?.[row] ?? []).length > 0,
      })),
    }
  })
}

/** Whether some range serves at every planned pressure of the direction. */
export function reachesAll(worked: WorkedPlan, device: DeviceInDirection): boolean {
  const serving = servingRanges(device, flowSpans(worked, device.direction))
  return serving.length > 0 && serving.every((ranges) => ranges.length > 0)
}

function rangesOf(worked: WorkedPlan, device: DeviceInDirection): z.infer<typeof PlannedRange>[] {
  const serving = servingRanges(device, flowSpans(worked, device.direction))
  const pressures = worked.pressures?.byDirection.get(device.direction)?.column('dp') ?? []
  const { provable } = device
  return device.ranges.map((limited, row) => ({
    label: limited.range.label,
    lowestFlow_m3_h: limited.lowest.value,
    highestFlow_m3_h: limited.highest.value,
    ...(provable && {
      smallestN50_1_h: provable.column('n_least')[row] as number,
      largestN50_1_h: provable.column('n_most')[row] as number,
    }),
    serves: [...pressures].filter((_, i) => serving[i]?.includes(limited)),
  }))
}
