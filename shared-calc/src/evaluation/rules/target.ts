import { finding } from '../../catalogue/findings/finding.js'
import { basisOf } from '../work/definite-target.js'
import { inEach, type Rule, silent } from './rule.js'

/** The building was prepared as the target asks. */
export const targetPreparation: Rule = ({ record, test }) => {
  const asked = test.target?.preset?.preparation
  if (!test.target || !asked) return silent
  const { accepted, otherwise, source } = asked
  const target = test.target.target.label
  const { preparation } = record.test
  const where = ['test.preparation']
  // Rule `missing-preparation` says that it was not logged; here it says what that leaves open.
  if (preparation === undefined)
    return [finding('target-preparation/not-logged', { where, source }, { target, accepted })]
  if (accepted.includes(preparation)) return silent
  return [
    finding(
      'target-preparation/other',
      { where, source, severity: otherwise },
      { target, accepted, preparation },
    ),
  ]
}

/** Adjoining spaces were guarded, or not, as the target asks: its limits differ. */
export const targetAdjoiningSpaces: Rule = ({ record, test }) => {
  const asked = test.target?.preset?.adjoiningSpaces
  if (!test.target || !asked) return silent
  const { accepted, otherwise, source } = asked
  const target = test.target.target.label
  const { adjoiningSpaces: found } = record.test
  const where = ['test.adjoiningSpaces']
  if (found === undefined)
    return [finding('target-adjoining-spaces/not-logged', { where, source }, { target, accepted })]
  if (accepted.includes(found)) return silent
  return [
    finding(
      'target-adjoining-spaces/other',
      { where, source, severity: otherwise },
      { target, accepted, found },
    ),
  ]
}

/** The area that the target's limit is related to was not entered, and another one stands in for it. */
export const targetArea: Rule = ({ test }) => {
  const { target } = test
  if (!target?.preset) return silent
  return inEach(target.limits, ({ quantity, standIn, source }) =>
    quantity !== standIn
      ? silent
      : [
          finding(
            'target-area/stand-in',
            { where: ['building.lossArea_m2'], source },
            { target: target.target.label, area: target.preset?.area ?? '' },
          ),
        ],
  )
}

/** Any one limit of the target is enough: which was judged, and what the others say. */
export const targetAlternatives: Rule = ({ test }) => {
  const { target, criteria, alternatives } = test
  const [judged] = criteria
  if (!target || !judged || alternatives.length === 0) return silent
  return [
    finding(
      'target-alternatives',
      { where: ['target'] },
      {
        target: target.target.label,
        judged: judged.quantity,
        others: alternatives.map(({ quantity, value }) => ({
          quantity,
          value: value.value('v'),
          limit: value.value('L'),
          basis: basisOf(quantity),
        })),
      },
    ),
  ]
}
