import type { Direction, PlannedDevice } from '../../contract/record/index.js'
import { type BlockOf, byRule, Calculation, fromRecord } from '../../engine/index.js'
import { definiteTarget } from '../../evaluation/work/definite-target.js'
import { basesOf } from '../../evaluation/work/derived.js'
import { basisValue } from '../../evaluation/work/judge.js'
import type { DefiniteTarget } from '../../evaluation/work/worked-test.js'
import { stackMeasure } from '../../formulas/limits.js'
import { allowedLeakage, expectedFlows } from '../../formulas/plan-flows.js'
import { stackPressure } from '../../formulas/stack-pressure.js'
import type { Method } from '../../methods/method.js'
import { type ExpectedAir, workExpectedAir } from './air.js'
import { type DeviceInDirection, type DirectionAir, workDevice } from './devices.js'
import type { SetBlock } from './pressures.js'
import { EXPECTED_EXPONENTS, type PlannedPressures, plannedDirections, workPressures } from './pressures.js'
import type { PlanRequest } from './request.js'

/** A limit of the target with the leakage that just meets it, at the limit's own reference pressure. */
export interface WorkedAllowance {
  readonly block: BlockOf<typeof allowedLeakage>
  readonly referencePressure_Pa: number
}

/** A plan worked out, block by block. */
export interface WorkedPlan {
  readonly calculation: Calculation
  readonly method: Method
  readonly target?: DefiniteTarget
  readonly air: ExpectedAir
  readonly pressures?: PlannedPressures
  /** The tightest limit of the target. */
  readonly allowance?: WorkedAllowance
  /** Flows to expect, one block for each exponent. */
  readonly flows: ReadonlyMap<Direction, readonly BlockOf<typeof expectedFlows>[]>
  readonly devices: ReadonlyMap<PlannedDevice, readonly DeviceInDirection[]>
  readonly stack?: BlockOf<typeof stackPressure>
  readonly stackMeasure?: BlockOf<typeof stackMeasure>
}

/**
 * Works out a plan.
 * @param calculation - where the blocks go: a calculation of its own, or that of the test the plan was made for
 * @throws InputError naming the field that stops it
 */
export function workPlan(request: PlanRequest, method: Method, calculation = new Calculation()): WorkedPlan {
  const { building, plan } = request
  const target = definiteTarget(request)
  const air = workExpectedAir(calculation, building, plan.forecast)
  const pressures = workPressures(calculation, method, plan)
  const allowance = target && tightest(calculation, request, target)
  const inDirection = (direction: Direction): DirectionAir =>
    direction === 'depressurisation'
      ? { inDevice: air.indoor, inLeaks: air.outdoor }
      : { inDevice: air.outdoor, inLeaks: air.indoor }
  const directions = plannedDirections(plan)
  const flows = new Map(
    pressures && allowance
      ? directions.map((direction) => [
          direction,
          workFlows(calculation, direction, pressures, allowance, inDirection(direction)),
        ])
      : [],
  )
  const devices = new Map(
    (pressures ? (plan.devices ?? []) : []).map((device, index) => [
      device,
      directions.map((direction) =>
        workDevice(
          calculation,
          device,
          index,
          direction,
          inDirection(direction),
          pressures as PlannedPressures,
          basesOf(request).V,
        ),
      ),
    ]),
  )
  return {
    calculation,
    method,
    ...(target && { target }),
    air,
    ...(pressures && { pressures }),
    ...(allowance && { allowance }),
    flows,
    devices,
    ...workStack(calculation, request, air),
  }
}

/** The limit that allows least; the limits of one target share their reference pressure. */
function tightest(
  calculation: Calculation,
  request: PlanRequest,
  { limits }: DefiniteTarget,
): WorkedAllowance | undefined {
  const allowances = limits.map(
    (rule, i): WorkedAllowance => ({
      block: calculation.add(
        `plan.target${i + 1}`,
        `Leakage that just meets the target: ${rule.quantity} ≤ ${rule.limit}`,
        allowedLeakage,
        { L: byRule(rule.limit, 'limit of the target'), B: basisValue(basesOf(request), rule) },
      ),
      referencePressure_Pa: rule.referencePressure_Pa,
    }),
  )
  return allowances.sort((a, b) => a.block.value('q_t') - b.block.value('q_t'))[0]
}

function workFlows(
  calculation: Calculation,
  direction: Direction,
  pressures: PlannedPressures,
  { block, referencePressure_Pa }: WorkedAllowance,
  air: DirectionAir,
): BlockOf<typeof expectedFlows>[] {
  const set = pressures.byDirection.get(direction) as SetBlock
  return EXPECTED_EXPONENTS.map((exponent) =>
    calculation.add(
      `plan.flow.${direction}.${exponent}`,
      `Expected flow, ${direction}, exponent ${exponent}`,
      expectedFlows,
      {
        q_t: block.ref('q_t'),
        dp_r: byRule(referencePressure_Pa, 'reference pressure of the target'),
        n: byRule(exponent, 'expected exponent'),
        dp: set.refColumn('dp'),
        rho_d: air.inDevice,
        rho_x: air.inLeaks,
      },
    ),
  )
}

function workStack(
  calculation: Calculation,
  { building, plan }: PlanRequest,
  { blocks }: ExpectedAir,
): Pick<WorkedPlan, 'stack' | 'stackMeasure'> {
  const { height_m: height } = building
  const { indoorTemperature_C: inside, outdoorTemperature_C: outside } = plan.forecast ?? {}
  if (height === undefined || inside === undefined || outside === undefined || !blocks) return {}
  const h_b = fromRecord('building.height_m', height)
  return {
    stack: calculation.add('plan.stack', 'Expected stack pressure', stackPressure, {
      h_b,
      rho_i: blocks.indoor.ref('rho'),
      rho_e: blocks.outdoor.ref('rho'),
    }),
    stackMeasure: calculation.add('plan.stackMeasure', 'Height times temperature difference', stackMeasure, {
      h_b,
      theta_i: fromRecord('plan.forecast.indoorTemperature_C', inside),
      theta_e: fromRecord('plan.forecast.outdoorTemperature_C', outside),
    }),
  }
}
