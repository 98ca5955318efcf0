import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Rule } from './rule.js'

/** Both directions were run where the target asks for both. */
export const oneDirection: Rule = ({ record, test }) => {
  if (record.runs.length === 2) return []
  const asked = test.target?.target.directions
  const [run] = record.runs
  const needed = asked === 'mean' || asked === 'each'
  return [
    {
      rule: 'one-direction',
      severity: needed ? 'invalidates' : 'note',
      message: needed
        ? `only ${run?.direction} was run; the target asks for both directions`
        : `only ${run?.direction} was run: the results are those of one direction`,
      ...citing(practiceSource),
      value: 1,
      limit: 2,
      where: ['runs'],
      remedy: 'turn the device round and run the other direction',
    },
  ]
}

/** The two directions agree, or the report explains why not. */
export const directionsDiffer: Rule = ({ method, test }) => {
  const { value: limit, source } = method.limits.directionsDiffer
  const value = test.means.get(50)?.rate.value('d_q') ?? 0
  if (value <= limit) return []
  return [
    {
      rule: 'directions-differ',
      severity: 'note',
      message: `the air leakage rates of the two directions differ by ${plain(value * 100, 0)} % of their mean at 50 Pa`,
      ...citing(source),
      value,
      limit,
      where: ['runs'],
      remedy:
        'explain it: a flap or membrane that seals one way and opens the other, or a change between the runs',
    },
  ]
}
