import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'
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
      term: `${building.volumeBasis ?? 'net'} internal volume`,
      block: building.volumeBasis === 'overall internal' ? takeOff.overall : takeOff.net,
      symbol: 'V',
    },
    { field: 'envelopeArea_m2', term: 'envelope area', block: takeOff.envelope, symbol: 'A_t' },
    { field: 'floorArea_m2', term: 'floor area', block: takeOff.floor, symbol: 'A_t' },
  ] as const
  return figures.flatMap(({ field, term, block, symbol }) => {
    const used = building[field]
    if (used === undefined || !block) return []
    const worked = block.value(symbol)
    if (Math.abs(used - worked) <= ROUNDING * worked) return []
    return [
      {
        rule: 'take-off-used',
        severity: 'caution',
        message: `${term}: the evaluation uses ${plain(used, 1)}, the take-off comes to ${plain(worked, 1)}`,
        ...citing(practiceSource),
        value: used,
        limit: worked,
        where: [`building.${field}`, 'takeOff'],
        remedy: 'enter the figure of the take-off, or correct the take-off',
      } satisfies Finding,
    ]
  })
}
