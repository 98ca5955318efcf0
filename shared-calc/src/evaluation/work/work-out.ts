import { InputError } from '../../contract/problem.js'
import type { TestRecord } from '../../contract/record/index.js'
import {
  type Block,
  Calculation,
  columnOf,
  fromRecord,
  type Given,
  inputsBySymbol,
} from '../../engine/index.js'
import { meanOfDirections } from '../../formulas/derived.js'
import { stackMeasure } from '../../formulas/limits.js'
import type { Method } from '../../methods/method.js'
import { fewestReadings } from '../../methods/method.js'
import { workAir } from './air.js'
import { basisOf, definiteTarget } from './definite-target.js'
import { basesOf, workDerived, workNormalisedArea } from './derived.js'
import { judge } from './judge.js'
import { workLeakageStep } from './leakage-steps.js'
import { type RunSurroundings, workRun } from './run.js'
import type { AtPressure, WorkedRun, WorkedTest } from './worked-test.js'

/** Reference pressures every evaluation reports, Pa. */
export const reportedPressures = [50, 10, 4] as const

/**
 * Works out a fan-pressurisation test: air, each run, means over the directions, target.
 * @throws InputError naming the field that stops the calculation
 */
export function workOut(record: TestRecord, method: Method): WorkedTest {
  const target = definiteTarget(record)
  if (record.building.volume_m3 === undefined && (!target || record.building.envelopeArea_m2 === undefined))
    throw new InputError([{ path: 'building.volume_m3', message: 'internal volume is missing' }])
  refuseTooFewReadings(record, method)
  const calculation = new Calculation()
  const { indoor, outdoor } = workAir(calculation, record)
  const ownPressures = [
    ...(method.referencePressures ?? []),
    ...(target?.limits ?? []).map((limit) => limit.referencePressure_Pa),
  ]
  const referencePressures = [...new Set([...reportedPressures, ...ownPressures])]
  const derivedPressures = new Set([50, ...ownPressures])
  const areaPressures = new Set([
    ...(method.normalisedAreaAt_Pa ?? []),
    ...(target?.limits ?? []).flatMap((limit) =>
      basisOf(limit.quantity) === 'aE' ? [limit.referencePressure_Pa] : [],
    ),
  ])
  const bases = basesOf(record)
  const around = {
    calculation,
    record,
    bases,
    method,
    indoor,
    outdoor,
    referencePressures,
    derivedPressures,
    areaPressures,
  }
  const runs = record.runs.map((run, index) => workRun(around, run, index))
  const steps = runs.flatMap((run) => workLeakageStep(calculation, run) ?? [])
  const means = new Map(referencePressures.map((pressure) => [pressure, meanAt(around, runs, pressure)]))
  const stack = workStack(calculation, record)
  const reported = workReported(calculation, method, means)
  const { criteria, alternatives } = target
    ? judge({ calculation, bases, method }, target, runs, means)
    : { criteria: [], alternatives: [] }
  return {
    calculation,
    indoor,
    outdoor,
    runs,
    means,
    steps,
    stack,
    reported,
    target,
    criteria,
    alternatives,
  }
}

/** Only the method says how many readings a run needs. */
function refuseTooFewReadings({ runs }: TestRecord, method: Method): void {
  const fewest = fewestReadings(method)
  if (runs.every(({ readings }) => readings.length >= fewest)) return
  const short = runs.flatMap(({ readings }, i) => (readings.length < fewest ? [i] : []))
  throw new InputError(
    short.map((i) => ({
      path: `runs[${i}].readings`,
      message: `a run needs at least ${fewest} readings by this method`,
    })),
  )
}

const nothing = { symbols: new Set<string>(), of: () => undefined }

/** What a method reports beyond the quantities of every evaluation, from the means at its pressure. */
function workReported(
  calculation: Calculation,
  { reported }: Method,
  means: ReadonlyMap<number, AtPressure>,
): WorkedTest['reported'] {
  if (!reported) return undefined
  const at = means.get(reported.at_Pa)
  const blocks: readonly Block<string>[] = at ? [at.rate, ...(at.derived ? [at.derived] : [])] : []
  return calculation.addInputs(
    'reported',
    'Figures of the method',
    reported.chapter,
    inputsBySymbol(reported.chapter, nothing, blocks),
  )
}

function meanAt(
  { calculation, bases, derivedPressures, areaPressures }: RunSurroundings,
  runs: readonly WorkedRun[],
  pressure: number,
): AtPressure {
  const flows: Given[] = []
  const areas: Given[] = []
  for (const { at } of runs) {
    const rate = at.get(pressure)?.rate
    if (rate) flows.push(rate.ref('q_pr'))
    if (rate) areas.push(rate.ref('A_L'))
  }
  const rate = calculation.add(
    `mean.at${pressure}`,
    `Mean of the directions at ${pressure} Pa`,
    meanOfDirections,
    { q_r: columnOf(flows), A_r: columnOf(areas) },
  )
  const area = areaPressures.has(pressure)
    ? workNormalisedArea(
        calculation,
        `mean.at${pressure}.area`,
        `Normalised leakage area at ${pressure} Pa`,
        bases,
        rate,
        pressure,
      )
    : undefined
  const derived = derivedPressures.has(pressure)
    ? workDerived(calculation, `mean.at${pressure}.rates`, `Derived at ${pressure} Pa`, bases, rate, false)
    : undefined
  return { rate, derived, area }
}

function workStack(calculation: Calculation, { building, conditions }: TestRecord): WorkedTest['stack'] {
  if (building.height_m === undefined) return undefined
  return calculation.add('limits.stack', 'Height times temperature difference', stackMeasure, {
    h_b: fromRecord('building.height_m', building.height_m),
    theta_i: fromRecord('conditions.indoorTemperature_C', conditions.indoorTemperature_C),
    theta_e: fromRecord('conditions.outdoorTemperature_C', conditions.outdoorTemperature_C),
  })
}
