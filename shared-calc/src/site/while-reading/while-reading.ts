import { z } from 'zod'
import { finding } from '../../catalogue/findings/finding.js'
import { repeatNow } from '../../catalogue/findings/zero-flow.js'
import { Finding, type Run } from '../../contract/record/index.js'
import { byRule, type Given } from '../../engine/index.js'
import { outlier } from '../../evaluation/rules/curve.js'
import { workDrift } from '../../evaluation/rules/zero-flow.js'
import { basesOf } from '../../evaluation/work/derived.js'
import { workLeakageStep } from '../../evaluation/work/leakage-steps.js'
import type { RunSurroundings } from '../../evaluation/work/run.js'
import {
  ASSUMED_EXPONENT,
  lowestUsablePressure,
  type UnfinishedTest,
} from '../../evaluation/work/running-estimate.js'
import { loggedSign } from '../../evaluation/work/work-readings.js'
import type { AtPressure, WorkedRun, WorkedTest } from '../../evaluation/work/worked-test.js'
import { derivedRates } from '../../formulas/derived.js'
import { furtherReading } from '../../formulas/while-reading.js'
import { fewestReadings, type Method } from '../../methods/method.js'
import { type IntervalOf, intervalOfFew, intervalOfFit } from './interval.js'
import { NextReading, nextReading } from './next-reading.js'
import { assumeRun, fitRun, surroundings } from './work-reading.js'

const finite = z.number()

/** A figure while readings come in, with its 95 % interval so far. */
export const UnderWay = z.strictObject({ value: finite, lower: finite, upper: finite })
export type UnderWay = z.infer<typeof UnderWay>

/** State of a run after the readings so far. Never a result. */
export const WhileReading = z.strictObject({
  readings: finite,
  /** 'fit': a line through the readings; 'assumed exponent': too few for one. */
  basis: z.enum(['fit', 'assumed exponent']),
  /**
   * What the intervals hold: the uncertainty budget of the result, or nothing, the ends being the value itself, where the
   * readings lie so near to zero that no bounds can be set.
   */
  interval: z.enum(['whole budget', 'none']),
  exponent: finite,
  /** Temperatures were missing: densities were taken as equal. */
  densityAssumed: z.boolean(),
  q50_m3_h: UnderWay,
  n50_1_h: UnderWay.optional(),
  next: NextReading,
  /** Whether further readings would not narrow the result by anything that matters. */
  enough: z.boolean(),
  enoughWhy: z.string(),
  /** Outliers to repeat, leakage that has changed, and a zero-flow pressure that has moved. */
  findings: z.array(Finding),
})
export type WhileReading = z.infer<typeof WhileReading>

/** Narrowing of the result that is worth another reading, share of the result. Common practice, no source. */
const WORTH_ANOTHER = 0.003

/**
 * Error at the lowest reading above which a drift of the zero-flow pressure is reported. Common practice, no source.
 */
const DRIFT_ERROR = 0.02

/**
 * What can be said after each reading.
 * @returns undefined before the first reading
 * @throws InputError when a reading is on the wrong side of the zero-flow pressure, or names a range that is missing
 */
export function whileReading(unfinished: UnfinishedTest, method: Method): WhileReading | undefined {
  const { run } = unfinished
  if (run.readings.length === 0) return undefined
  const around = surroundings(unfinished, method)
  const { densityAssumed } = around
  const lowest = lowestUsablePressure(run, method)
  const fewest = fewestReadings(method)
  if (run.readings.length < fewest || !method.formulas.scatter) {
    const { curve, rate } = assumeRun(around, run)
    const coming = next(curve, lowest, run, method)
    return {
      readings: run.readings.length,
      basis: 'assumed exponent',
      exponent: ASSUMED_EXPONENT,
      densityAssumed,
      ...figures(around, rate, intervalOfFew(around, run)),
      next: coming,
      ...(method.stations
        ? { enough: coming.pressureDifference_Pa === undefined, enoughWhy: coming.why }
        : { enough: false, enoughWhy: `Fewer than ${fewest} readings: no line can be fitted yet.` }),
      findings: [],
    }
  }
  const worked = fitRun(around, run)
  const rate = (worked.at.get(50) as { rate: Rate }).rate
  const coming = next(worked.curve, lowest, run, method)
  return {
    readings: run.readings.length,
    basis: 'fit',
    exponent: worked.curve.value('n'),
    densityAssumed,
    ...figures(around, rate, intervalOfFit(around, worked)),
    next: coming,
    ...enough(around, worked, coming, method),
    findings: [...outliers(around, worked), ...steps(around, worked), ...drift(worked)],
  }
}

type Rate = AtPressure['rate']

/** q50 and, where the volume is known, n50, each with the ends of its interval. */
function figures(
  { calculation, record }: RunSurroundings,
  rate: Rate,
  intervalOf: IntervalOf | undefined,
): Pick<WhileReading, 'interval' | 'q50_m3_h' | 'n50_1_h'> {
  const soFar = (quantity: 'q50' | 'n50', figure: Given): UnderWay => {
    const { value } = figure
    return { value, ...(intervalOf?.(quantity, figure) ?? { lower: value, upper: value }) }
  }
  const q50 = {
    interval: intervalOf ? ('whole budget' as const) : ('none' as const),
    q50_m3_h: soFar('q50', rate.ref('q_pr')),
  }
  if (record.building.volume_m3 === undefined) return q50
  const derived = calculation.add('run1.so-far', 'per volume or area, so far', derivedRates, {
    q_pr: rate.ref('q_pr'),
    ...basesOf(record),
  })
  return { ...q50, n50_1_h: soFar('n50', derived.ref('n_pr')) }
}

function next(curve: WorkedRun['curve'], lowest: number, run: Run, method: Method): NextReading {
  return nextReading(
    { taken: [...curve.column('dp')], lowest, zeroFlow: curve.value('dp_0'), sign: loggedSign(run) },
    method,
  )
}

/** "Enough" once the method asks for no more, and another reading would not narrow the result by what matters. */
function enough(
  { calculation }: RunSurroundings,
  { curve, scatter }: WorkedRun,
  coming: NextReading,
  method: Method,
): { enough: boolean; enoughWhy: string } {
  if (coming.pressureDifference_Pa !== undefined) return { enough: false, enoughWhy: coming.why }
  if (!scatter?.has('SSE') || !curve.has('S_xx'))
    return { enough: false, enoughWhy: `${method.title} gives no scatter, so this cannot be checked.` }
  const pressures = curve.column('dp')
  const further = calculation.add('run1.further', 'effect of one more reading', furtherReading, {
    N: curve.ref('N'),
    xbar: curve.ref('xbar'),
    S_xx: curve.ref('S_xx'),
    SSE: scatter.ref('SSE'),
    dp_r: byRule(50, 'reference pressure'),
    dp_next: byRule(Math.max(...pressures), 'highest pressure read'),
  })
  const [now, after] = [further.value('h_now'), further.value('h_next')]
  const [from, to] = [now, after].map((share) => (100 * share).toFixed(2))
  const words =
    from === to
      ? `The scatter of the fit adds ±${from} %. One more reading would not reduce it.`
      : `The scatter of the fit adds ±${from} %. One more reading would reduce it to about ±${to} %.`
  return further.value('g_h') < WORTH_ANOTHER
    ? { enough: true, enoughWhy: `Enough readings. ${words}` }
    : { enough: false, enoughWhy: `Take another reading. ${words}` }
}

function outliers(around: RunSurroundings, worked: WorkedRun): Finding[] {
  const test = { runs: [worked] } as unknown as WorkedTest
  return outlier({ record: around.record, method: around.method, test }).map((one) => ({
    ...one,
    remedy: repeatNow,
  }))
}

/** Two readings after a change show it; the first alone is an outlier. */
function steps({ calculation }: RunSurroundings, worked: WorkedRun): Finding[] {
  const found = workLeakageStep(calculation, worked)
  if (!found) return []
  const { from, step } = found
  const [share, limit] = [step.value('f_z'), step.value('f_l')]
  const what = { where: [`runs[0].readings[${from}]`], value: share, limit }
  return [finding('leakage-step/under-way', what, { reading: from, share, limit })]
}

function drift(worked: WorkedRun): Finding[] {
  const block = workDrift(worked)
  const error = block?.value('e_0') ?? 0
  if (!block || error <= DRIFT_ERROR) return []
  return [
    finding(
      'zero-flow-drift',
      {
        where: ['runs[0].zeroFlowBefore_Pa', 'runs[0].zeroFlowAfter_Pa'],
        value: error,
        limit: DRIFT_ERROR,
      },
      { moved_Pa: block.value('d_0'), share: error, limit: DRIFT_ERROR },
    ),
  ]
}
