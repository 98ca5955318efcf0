import { citing } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'
import type { Rule } from './rule.js'

const periods = ['Before', 'After'] as const

/** Every signed mean of the zero-flow pressure stays within the method's limit. */
export const zeroFlowLimit: Rule = ({ method, test }) => {
  const { value: limit, source } = method.limits.zeroFlow_Pa
  return test.runs.flatMap((run) =>
    periods.flatMap((when) => {
      const block = when === 'Before' ? run.before : run.after
      return (block ? ['dp_plus', 'dp_minus'] : []).flatMap((symbol) => {
        const value = block?.value(symbol) ?? 0
        if (Math.abs(value) <= limit) return []
        return [
          {
            rule: 'zero-flow-limit',
            severity: 'invalidates',
            message: `${run.direction}: mean of the ${value > 0 ? 'positive' : 'negative'} zero-flow pressures ${when.toLowerCase()} the readings is ${plain(value, 1)} Pa; it must stay within ${limit} Pa`,
            ...citing(source),
            value,
            limit,
            where: [`runs[${run.index}].zeroFlow${when}_Pa`],
            remedy:
              'wait for less wind or a smaller temperature difference, check hoses and their outdoor end, and test again',
          } satisfies Finding,
        ]
      })
    }),
  )
}

/** Zero-flow pressure logged before and after, with enough values. */
export const zeroFlowSamples: Rule = ({ record, method }) => {
  const { zeroFlowSamples: samples, zeroFlowDuration_s: duration } = method.limits
  return record.runs.flatMap((run, index) =>
    periods.flatMap((when) => {
      const count = run[`zeroFlow${when}_Pa`]?.length ?? 0
      if (count >= samples.value) return []
      const word = when.toLowerCase()
      return [
        {
          rule: 'zero-flow-samples',
          severity: count === 0 ? 'invalidates' : 'caution',
          message:
            count === 0
              ? `${run.direction}: zero-flow pressure ${word} the readings was not logged; ${standIn(run, when)} is used`
              : `${run.direction}: ${count} zero-flow ${count === 1 ? 'value' : 'values'} ${word} the readings; at least ${samples.value} over ${duration} s are expected`,
          ...citing(samples.source),
          value: count,
          limit: samples.value,
          where: [`runs[${index}].zeroFlow${when}_Pa`],
          remedy: `record the zero-flow pressure ${word} the readings, fan covered, at least ${samples.value} values over at least ${duration} s`,
        } satisfies Finding,
      ]
    }),
  )
}

function standIn(
  run: { zeroFlowBefore_Pa?: number[] | undefined; zeroFlowAfter_Pa?: number[] | undefined },
  missing: 'Before' | 'After',
): string {
  const other = missing === 'Before' ? run.zeroFlowAfter_Pa : run.zeroFlowBefore_Pa
  return other && other.length > 0 ? 'the other period' : '0 Pa'
}
