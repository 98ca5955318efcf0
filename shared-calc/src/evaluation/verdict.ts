import type { Criterion, Finding, Verdict } from '../contract/record/index.js'
import { sourceText } from '../engine/index.js'
import { unitOf } from './work/definite-target.js'
import { publishedAgeing } from './work/judge.js'
import type { DefiniteTarget, WorkedCriterion, WorkedTest } from './work/worked-test.js'

/** The criterion closest to its limit, or farthest beyond it: where a target has several, this one decides. */
export function governingCriterion({ criteria }: WorkedTest): WorkedCriterion | undefined {
  const share = ({ value }: WorkedCriterion) => value.value('M_L')
  return criteria.reduce<WorkedCriterion | undefined>(
    (least, next) => (least && share(least) <= share(next) ? least : next),
    undefined,
  )
}

const limitOf = ({ quantity, referencePressure_Pa, value }: WorkedCriterion) => ({
  quantity,
  limit: value.value('L'),
  unit: unitOf(quantity),
  referencePressure_Pa,
})

/** Limits of one target may come from different sources. */
function sourceOf(
  { limits }: DefiniteTarget,
  { quantity, referencePressure_Pa }: WorkedCriterion,
): { source?: string } {
  const own = limits.find(
    (rule) => rule.quantity === quantity && rule.referencePressure_Pa === referencePressure_Pa,
  )
  return own ? { source: sourceText(own.source) } : {}
}

/** The verdict: "not valid" whenever a finding invalidates, never "meets" then; the numbers are shown all the same. */
export function verdictOf(test: WorkedTest, findings: readonly Finding[]): Verdict {
  const main = governingCriterion(test)
  const invalid = findings.some(({ severity }) => severity === 'invalidates')
  if (!main || !test.target) return { outcome: 'no target', criteria: [], ageing: [] }
  const criteria = test.criteria.map(criterionOf)
  const within = criteria.every((criterion) => criterion.within)
  const { value } = main
  return {
    target: { ...test.target.target, ...limitOf(main), ...sourceOf(test.target, main) },
    value: value.value('v'),
    outcome: invalid ? 'not valid' : within ? 'meets' : 'misses',
    margin: value.value('M'),
    leakageToSeal_cm2: Math.max(...test.criteria.map(({ toSeal }) => toSeal.value('A_s'))),
    criteria,
    ageing: main.ageing.map((block, i) => ({
      label: publishedAgeing[i]?.label ?? '',
      growth: block.value('g'),
      value: block.value('v_g'),
      margin: block.value('M_g'),
      within: block.value('M_g') >= 0,
      source: publishedAgeing[i]?.source ?? '',
    })),
  }
}

function criterionOf({ quantity, referencePressure_Pa, judged, value }: WorkedCriterion): Criterion {
  const margin = value.value('M')
  return {
    quantity,
    referencePressure_Pa,
    limit: value.value('L'),
    unit: unitOf(quantity),
    value: value.value('v'),
    judged,
    margin,
    within: margin >= 0,
  }
}
