import type { Run, TestRecord } from '../../contract/record/index.js'
import {
  assumed,
  type Block,
  type BlockOf,
  type ByHand,
  byRule,
  type Calculation,
  type Chapter,
  type Column,
  columnOf,
  exceeds,
  fromRecord,
  type Given,
  inputsBySymbol,
} from '../../engine/index.js'
import type { moistAir } from '../../formulas/air.js'
import { fitDeviation } from '../../formulas/confidence.js'
import { lowestPressure } from '../../formulas/limits.js'
import type { Method } from '../../methods/method.js'
import { refuseLevelReadings, refuseUnusableCurve, refuseWrongSide } from './curve-faults.js'
import { type Bases, workDerived, workNormalisedArea } from './derived.js'
import { upperStation, workReadings } from './work-readings.js'
import type { AtPressure, WorkedRun } from './worked-test.js'
import type { ZeroFlow } from './zero-flow.js'

export interface RunSurroundings {
  readonly calculation: Calculation
  readonly record: TestRecord
  readonly bases: Bases
  readonly method: Method
  readonly indoor: BlockOf<typeof moistAir>
  readonly outdoor: BlockOf<typeof moistAir>
  readonly referencePressures: readonly number[]
  /** Reference pressures at which rates per volume and area are reported. */
  readonly derivedPressures: ReadonlySet<number>
  /** Reference pressures at which the normalised leakage area is reported. */
  readonly areaPressures: ReadonlySet<number>
}

/** Altitude for methods that correct for it; where it was not logged rule `assumed-altitude` says so. */
function altitudeOf({ building }: TestRecord): Given {
  const { altitude_m: altitude } = building
  return altitude === undefined ? assumed(0, 'assumed-altitude') : fromRecord('building.altitude_m', altitude)
}

/** Whether the site lies so high, or the temperatures differ so much, that the method's factors apply. */
function factorsApply({ building, conditions }: TestRecord, { correctsBeyond }: Method): boolean {
  if (!correctsBeyond) return false
  const difference = Math.abs(conditions.indoorTemperature_C - conditions.outdoorTemperature_C)
  return (
    exceeds(building.altitude_m ?? 0, correctsBeyond.altitude_m) ||
    exceeds(difference, correctsBeyond.temperatureDifference_K)
  )
}

/** What the chapters of a run may ask for that none of their blocks has, or that is to come from where it was logged. */
const givenSymbols = new Set('dp_m q_m sign dp_01 dp_02 rho_d rho_x T_d T_x n_a h k_f hi'.split(' '))
const referenceSymbols = new Set(['dp_r'])

/** Works out one run, from its readings to the leakage rates at every reference pressure asked for. */
export function workRun(around: RunSurroundings, run: Run, index: number): WorkedRun {
  const { calculation, record, bases, method, indoor, outdoor } = around
  const id = `run${index + 1}`
  const path = `runs[${index}]`
  const word = run.direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
  const blowingOut = run.direction === 'depressurisation'
  const [airInDevice, airInLeaks] = blowingOut ? [indoor, outdoor] : [outdoor, indoor]
  const {
    zero,
    flows,
    given: logged,
  } = workReadings(calculation, {
    run,
    path,
    id,
    word,
    flowDevice: record.flowDevice,
    inDevice: airInDevice.ref('rho'),
    inLeaks: airInLeaks.ref('rho'),
    nominal: method.takesFlowForReferenceAir === true,
  })
  const { formulas, assumedExponent } = method
  const given = (symbol: string): Given | Column | undefined => {
    switch (symbol) {
      case 'T_d':
        return airInDevice.ref('T')
      case 'T_x':
        return airInLeaks.ref('T')
      case 'n_a':
        return assumedExponent && byRule(assumedExponent.value, 'air flow exponent assumed by the method')
      case 'h':
        return altitudeOf(record)
      case 'k_f':
        return byRule(factorsApply(record, method) ? 1 : 0, 'whether the factors of the method apply')
      case 'hi':
        return upperStation(logged.dp_m.values)
      default:
        return logged[symbol as keyof typeof logged]
    }
  }
  const add = <S extends string>(
    name: string,
    title: string,
    chapter: Chapter<S>,
    blocks: readonly Block<string>[],
    byHand: ByHand = { symbols: givenSymbols, of: given },
  ) =>
    calculation.addInputs(
      `${id}.${name}`,
      `${word}: ${title}`,
      chapter,
      inputsBySymbol(chapter, byHand, blocks),
    )
  const curve = add('curve', 'leakage curve', formulas.curve, [])
  refuseWrongSide(curve, run, path)
  if (!assumedExponent) refuseLevelReadings(curve, path)
  const scatter = formulas.scatter && add('scatter', 'scatter of the fit', formulas.scatter, [curve])
  const fit = scatter ? [curve, scatter] : [curve]
  const deviation = add('deviation', 'deviation from the curve', fitDeviation, [curve])
  const standard = add('standard', 'reference air density', formulas.standard, fit)
  const residuals =
    formulas.residuals && scatter && canJudgeResiduals(scatter)
      ? add('residuals', 'residuals', formulas.residuals, fit)
      : undefined
  const corrected = [...fit, standard]
  const at = new Map<number, AtPressure>()
  const rates: AtPressure['rate'][] = []
  for (const pressure of around.referencePressures) {
    const rate = add(`at${pressure}`, `at ${pressure} Pa`, formulas.rate, corrected, {
      symbols: referenceSymbols,
      of: () => byRule(pressure, 'reference pressure'),
    })
    rates.push(rate)
    const derived = around.derivedPressures.has(pressure)
      ? workDerived(
          calculation,
          `${id}.at${pressure}.rates`,
          `${word}: derived at ${pressure} Pa`,
          bases,
          rate,
          true,
        )
      : undefined
    const area = around.areaPressures.has(pressure)
      ? workNormalisedArea(
          calculation,
          `${id}.at${pressure}.area`,
          `${word}: normalised leakage area at ${pressure} Pa`,
          bases,
          rate,
          pressure,
        )
      : undefined
    at.set(pressure, { rate, derived, area })
  }
  refuseUnusableCurve(rates, [scatter, standard, residuals], curve, path)
  const lowest = workLowest(calculation, id, word, method, zero)
  return {
    direction: run.direction,
    index,
    before: zero.before,
    after: zero.after,
    flows,
    curve,
    deviation,
    scatter,
    residuals,
    standard,
    lowest,
    at,
  }
}

/**
 * Whether each reading can be set against the line through the others: at least four readings, and a scatter
 * that is more than rounding. A reading without which the fit were perfect has no finite residual (rule `outlier`).
 */
function canJudgeResiduals(scatter: NonNullable<WorkedRun['scatter']>): boolean {
  const squares = scatter.value('SSE')
  if (scatter.rows < 4 || squares <= 1e-24 * scatter.rows) return false
  return scatter.column('d_e').every((left) => left > 1e-9 * squares)
}

export function workLowest(
  calculation: Calculation,
  id: string,
  word: string,
  method: Method,
  zero: ZeroFlow,
): WorkedRun['lowest'] {
  const means: Given[] = []
  for (const block of [zero.before, zero.after])
    if (block) means.push(block.ref('dp_plus'), block.ref('dp_minus'))
  if (means.length === 0) return undefined
  return calculation.add(`${id}.lowest`, `${word}: lowest usable pressure`, lowestPressure, {
    dp_floor: byRule(method.limits.lowestPressure_Pa.value, 'lowest pressure difference of the method'),
    k_z: byRule(method.limits.zeroFlowMultiple.value, 'multiple of the zero-flow pressure'),
    dp_s: columnOf(means),
  })
}
