import { finding } from '../../catalogue/findings/finding.js'
import type { Rule } from '../../evaluation/rules/rule.js'
import type { TestWithSite } from '../test-with-site.js'
import { takeOffFindings } from './findings.js'

/** What the take-off in the record assumes or leaves open. */
export const takeOffParts: Rule<TestWithSite> = ({ record, test }) =>
  record.takeOff && test.takeOff ? takeOffFindings(record.takeOff, test.takeOff) : []

/** Relative difference up to which a figure of the building counts as the take-off's, rounded. */
const ROUNDING = 0.005

/** The building's volume and areas are those of the take-off. */
export const takeOffUsed: Rule<TestWithSite> = ({ record: { building }, test: { takeOff } }) => {
  if (!takeOff) return []
  const figures = [
    {
      field: 'volume_m3',
      unit: 'm³',
      term: `${building.volumeBasis ?? 'net'} internal volume`,
      taken: (building.volumeBasis === 'overall internal' ? takeOff.overall : takeOff.net)?.value('V'),
    },
    { field: 'envelopeArea_m2', term: 'envelope area', unit: 'm²', taken: takeOff.envelope?.value('A_t') },
    { field: 'floorArea_m2', term: 'floor area', unit: 'm²', taken: takeOff.floor?.value('A_t') },
  ] as const
  return figures.flatMap(({ field, term, unit, taken }) => {
    const used = building[field]
    if (used === undefined || taken === undefined) return []
    if (Math.abs(used - taken) <= ROUNDING * taken) return []
    const where = [`building.${field}`, 'takeOff']
    return [finding('take-off-used', { where, value: used, limit: taken }, { term, unit, used, taken })]
  })
}
