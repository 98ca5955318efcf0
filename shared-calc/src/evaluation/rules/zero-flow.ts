import { finding } from '../../catalogue/findings/finding.js'
import { exceeds } from '../../engine/index.js'
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
