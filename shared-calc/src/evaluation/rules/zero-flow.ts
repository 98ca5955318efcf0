import { finding } from '../../catalogue/findings/finding.js'
import type { Finding } from '../../contract/record/index.js'
import { smallest } from '../../engine/evaluate/functions.js'
import { type BlockOf, byRule, Calculation, exceeds } from '../../engine/index.js'
import { zeroFlowDrift } from '../../formulas/while-reading.js'
import type { WorkedRun } from '../work/worked-test.js'
import { inEach, type Rule, silent } from './rule.js'

const periods = [
  { period: 'before', field: 'zeroFlowBefore_Pa', other: 'zeroFlowAfter_Pa' },
  { period: 'after', field: 'zeroFlowAfter_Pa', other: 'zeroFlowBefore_Pa' },
] as const

const signedMeans = ['dp_plus', 'dp_minus'] as const

/** Every signed mean of the zero-flow pressure stays within the method's limit. */
export const zeroFlowLimit: Rule = ({ method, test }) => {
  const { value: limit, source } = method.limits.zeroFlow_Pa
  return inEach(test.runs, (run) =>
    inEach(periods, ({ period, field }) => {
      const block = run[period]
      if (!block) return silent
      return inEach(signedMeans, (symbol) => {
        const mean = block.value(symbol)
        if (!exceeds(Math.abs(mean), limit)) return silent
        return [
          finding(
            'zero-flow-limit/mean',
            { where: [`runs[${run.index}].${field}`], source, value: mean, limit },
            { direction: run.direction, period, mean, limit },
          ),
        ]
      })
    }),
  )
}

/** Zero-flow pressure logged before and after, with enough values. */
export const zeroFlowSamples: Rule = ({ record, method }) => {
  const { zeroFlowSamples: limit, zeroFlowDuration_s: duration_s } = method.limits
  const { value: samples, source } = limit
  return inEach(record.runs, (run, index) =>
    inEach(periods, ({ period, field, other }) => {
      const { direction } = run
      const count = run[field]?.length ?? 0
      if (count >= samples) return silent
      const facts = { where: [`runs[${index}].${field}`], source, value: count, limit: samples }
      if (count > 0)
        return [finding('zero-flow-samples/few', facts, { direction, period, count, samples, duration_s })]
      const instead = (run[other] ?? []).length > 0 ? 'other period' : 'zero'
      return [finding('zero-flow-samples/none', facts, { direction, period, instead, samples, duration_s })]
    }),
  )
}

/** Different values in a list from which another list of just the same is no chance. Common practice, no source. */
const DISTINCT = 3
const FEWEST = 5

/** One list of zero-flow pressures was entered twice: measured values scatter. */
export const zeroFlowCopied: Rule = ({ record }) =>
  inEach(
    record.runs,
    ({ direction, zeroFlowBefore_Pa: before = [], zeroFlowAfter_Pa: after = [] }, index) => {
      const copied =
        before.length >= FEWEST &&
        before.length === after.length &&
        new Set(before).size >= DISTINCT &&
        before.every((value, i) => value === after[i])
      if (!copied) return silent
      return [
        finding(
          'zero-flow-copied',
          { where: [`runs[${index}].zeroFlowBefore_Pa`, `runs[${index}].zeroFlowAfter_Pa`] },
          { direction, count: before.length },
        ),
      ]
    },
  )

/** How far the zero-flow pressure moved during a run; undefined where a period was not logged. */
export function workDrift({ curve, before, after }: WorkedRun): BlockOf<typeof zeroFlowDrift> | undefined {
  if (!before || !after) return undefined
  return new Calculation().add('drift', 'drift of the zero-flow pressure', zeroFlowDrift, {
    dp_01: before.ref('dp_m0'),
    dp_02: after.ref('dp_m0'),
    n: curve.ref('n'),
    dp_l: byRule(smallest(curve.column('dp')), 'lowest pressure read'),
  })
}

/**
 * Error at the lowest reading above which a change of the zero-flow pressure during a run is reported: twice what is
 * reported on site, where the reading can still be repeated. Common practice, no source.
 */
const DRIFT_ERROR = 0.04

/** The zero-flow pressure after the readings is not the one before them, so that it was not known in between. */
export const zeroFlowMoved: Rule = ({ test }) =>
  inEach(test.runs, (run): readonly Finding[] => {
    const block = workDrift(run)
    if (!block || !exceeds(block.value('e_0'), DRIFT_ERROR)) return silent
    return [
      finding(
        'zero-flow-drift/run',
        {
          where: [`runs[${run.index}].zeroFlowBefore_Pa`, `runs[${run.index}].zeroFlowAfter_Pa`],
          value: block.value('e_0'),
          limit: DRIFT_ERROR,
        },
        {
          direction: run.direction,
          moved_Pa: Math.abs(block.value('d_0')),
          share: block.value('e_0'),
          limit: DRIFT_ERROR,
        },
      ),
    ]
  })
