import { constantValue } from '../../catalogue/constants.js'
import type {
  Building,
  Conditions,
  Direction,
  FlowDevice,
  PressureGauge,
  Run,
  TestRecord,
  UncertaintyInputs,
} from '../../contract/record/index.js'
import { assumed, byRule, Calculation, type Given } from '../../engine/index.js'
import { assumedExponentCurve } from '../../formulas/assumed-exponent.js'
import { atReferencePressure } from '../../formulas/at-reference-pressure.js'
import { derivedRates } from '../../formulas/derived.js'
import { leakageCurve } from '../../formulas/leakage-curve.js'
import { standardAir } from '../../formulas/standard-air.js'
import type { Method } from '../../methods/index.js'
import { workAir } from './air.js'
import { curvePressures } from './curve-points.js'
import { basesOf } from './derived.js'
import { workLowest } from './run.js'
import { type RunningCriterion, runningCriterion } from './running-criterion.js'
import { workReadings } from './work-readings.js'
import { workZeroFlow } from './zero-flow.js'

/** Exponent taken where readings are too few to find one. Source: ASTM E1827 one-point test (value from memory). */
export const ASSUMED_EXPONENT = 0.65

/** What is known of a test while its first readings come in. */
export interface UnfinishedTest {
  readonly building: Partial<Building>
  readonly conditions: Partial<Conditions>
  readonly flowDevice?: FlowDevice
  readonly pressureGauge?: PressureGauge
  readonly uncertainty?: UncertaintyInputs
  readonly run: Run
  readonly target?: TestRecord['target']
}

export interface RunningEstimate {
  readonly direction: Direction
  readonly readings: number
  readonly assumedExponent: number
  /** Temperatures were missing: the densities indoors and outdoors were taken as equal. */
  readonly densityAssumed: boolean
  readonly q50_m3_h: number
  readonly n50_1_h?: number
  readonly qE50_m3_h_m2?: number
  readonly qF50_m3_h_m2?: number
  /** Against the limit that decides, where there is a target. */
  readonly against?: RunningCriterion
  /** Points of the assumed curve: induced pressure difference, Pa; envelope flow, m³/h. */
  readonly curve: readonly { readonly pressure_Pa: number; readonly flow_m3_h: number }[]
  /** Induced pressure differences, Pa, and envelope flows, m³/h, of the readings so far. */
  readonly points: readonly { readonly pressure_Pa: number; readonly flow_m3_h: number }[]
}

/**
 * Where a test is heading, from its first reading on, with the exponent assumed. Never a result: the caller says so.
 * @returns undefined where no reading lies on the right side of the zero-flow pressure
 * @throws InputError when a reading names a range that the device lacks
 */
export function runningEstimate({
  building,
  conditions,
  flowDevice,
  run,
  target,
}: UnfinishedTest): RunningEstimate | undefined {
  const calculation = new Calculation()
  const densities = densitiesOf(calculation, building, conditions)
  const blowingOut = run.direction === 'depressurisation'
  const inDevice = blowingOut ? densities.indoor : densities.outdoor
  const inLeaks = blowingOut ? densities.outdoor : densities.indoor
  const { given } = workReadings(calculation, {
    run,
    path: 'runs[0]',
    id: 'run1',
    word: run.direction,
    flowDevice,
    inDevice,
    inLeaks,
  })
  const curve = calculation.add('curve', 'readings so far', leakageCurve, given)
  const estimate = calculation.add('estimate', 'running estimate', assumedExponentCurve, {
    xbar: curve.ref('xbar'),
    ybar: curve.ref('ybar'),
    n_a: assumed(ASSUMED_EXPONENT, 'assumed-exponent'),
  })
  const standard = calculation.add('standard', 'reference air density', standardAir, {
    C_env: estimate.ref('C_env'),
    n: estimate.ref('n'),
    rho_x: inLeaks,
  })
  const rate = calculation.add('rate', 'at 50 Pa', atReferencePressure, {
    dp_r: byRule(50, 'reference pressure'),
    C_L: standard.ref('C_L'),
    n: estimate.ref('n'),
  })
  if (!Number.isFinite(rate.value('q_pr'))) return undefined
  const rates = calculation.add('rates', 'derived', derivedRates, {
    q_pr: rate.ref('q_pr'),
    ...basesOf({ building }),
  })
  const optional = (symbol: string): number | undefined =>
    rates.has(symbol) ? rates.value(symbol) : undefined
  const [n50, qE50, qF50] = [optional('n_pr'), optional('q_E'), optional('q_F')]
  const against = runningCriterion(calculation, { standard, n: estimate.ref('n') }, building, target)
  const flowsThrough = curve.column('q_env')
  return {
    direction: run.direction,
    readings: run.readings.length,
    assumedExponent: ASSUMED_EXPONENT,
    densityAssumed: densities.assumed,
    q50_m3_h: rate.value('q_pr'),
    ...(n50 !== undefined && { n50_1_h: n50 }),
    ...(qE50 !== undefined && { qE50_m3_h_m2: qE50 }),
    ...(qF50 !== undefined && { qF50_m3_h_m2: qF50 }),
    ...(against && { against }),
    curve: curvePressures(curve.column('dp')).map((pressure, i) => ({
      pressure_Pa: pressure,
      flow_m3_h: calculation
        .add(`point${i}`, 'point of the assumed curve', atReferencePressure, {
          dp_r: byRule(pressure, 'point of the curve'),
          C_L: estimate.ref('C_env'),
          n: estimate.ref('n'),
        })
        .value('q_pr'),
    })),
    points: [...curve.column('dp')].map((pressure, i) => ({
      pressure_Pa: pressure,
      flow_m3_h: flowsThrough[i] as number,
    })),
  }
}

function densitiesOf(
  calculation: Calculation,
  building: Partial<Building>,
  conditions: Partial<Conditions>,
): { indoor: Given; outdoor: Given; assumed: boolean } {
  const { indoorTemperature_C, outdoorTemperature_C } = conditions
  if (indoorTemperature_C === undefined || outdoorTemperature_C === undefined) {
    const reference = assumed(constantValue('rho_0'), 'assumed-density')
    return { indoor: reference, outdoor: reference, assumed: true }
  }
  const { indoor, outdoor } = workAir(calculation, { building, conditions } as TestRecord)
  return { indoor: indoor.ref('rho'), outdoor: outdoor.ref('rho'), assumed: false }
}

/** Lowest pressure difference, Pa, that a method lets a run use, given its zero-flow pressures so far. */
export function lowestUsablePressure(run: Run, method: Method): number {
  const calculation = new Calculation()
  const zero = workZeroFlow(calculation, 'run', run.direction, run, 'runs[0]')
  const lowest = workLowest(calculation, 'run', run.direction, method, zero)
  return lowest?.value('dp_min') ?? method.limits.lowestPressure_Pa.value
}
