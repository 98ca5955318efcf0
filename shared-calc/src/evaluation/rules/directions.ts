import { finding } from '../../catalogue/findings/finding.js'
import { exceeds } from '../../engine/index.js'
import type { Rule } from './rule.js'

/** Both directions were run where the target asks for both. */
export const oneDirection: Rule = ({ record, test }) => {
  const [run, other] = record.runs
  if (!run || other) return []
  const { direction } = run
  const asked = test.target?.target.directions
  const facts = { where: ['runs'], value: 1, limit: 2 }
  return asked === 'mean' || asked === 'each'
    ? [finding('one-direction/both-needed', facts, { direction })]
    : [finding('one-direction/alone', facts, { direction })]
}

/** The two directions agree, or the report explains why not. */
export const directionsDiffer: Rule = ({ method, test }) => {
  const { value: limit, source } = method.limits.directionsDiffer
  const value = test.means.get(50)?.rate.value('d_q') ?? 0
  if (!exceeds(value, limit)) return []
  return [finding('directions-differ', { where: ['runs'], source, value, limit }, { share: value, limit })]
}
