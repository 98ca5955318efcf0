import { citing, practiceSource } from '../../catalogue/sources.js'
import type { Finding } from '../../contract/record/index.js'
import type { Rule } from './rule.js'

/** The volume was worked out on the basis that the target (or else the method) asks for. */
export const volumeBasis: Rule = ({ record, method, test }) => {
  const { volume_m3: volume, volumeBasis: basis } = record.building
  if (volume === undefined) return []
  const asked = test.target?.target.volumeBasis
  const where = ['building.volumeBasis']
  if (basis === undefined)
    return [
      {
        rule: 'volume-basis',
        severity: 'caution',
        message: 'the basis of the internal volume (net or overall internal) was not stated',
        ...citing(method.volumeBasisSource),
        where,
        remedy: 'state how the volume was measured',
      },
    ]
  if (asked !== undefined && asked !== basis)
    return [
      {
        rule: 'volume-basis',
        severity: 'caution',
        message: `the volume is ${basis}; the target "${test.target?.target.label}" counts the ${asked} volume`,
        ...citing({ text: test.target?.target.source ?? '', seen: 'read' }),
        where,
        remedy: `work out the ${asked} volume and enter it with its basis`,
      },
    ]
  if (asked === undefined && basis !== method.volumeBasis)
    return [
      {
        rule: 'volume-basis',
        severity: 'note',
        message: `the volume is ${basis}; ${method.title} takes the ${method.volumeBasis} volume`,
        ...citing(method.volumeBasisSource),
        where,
        remedy: 'make sure that the report names the basis',
      },
    ]
  return []
}

const bases = [
  { field: 'volume_m3', term: 'internal volume', result: 'air change rate' },
  { field: 'envelopeArea_m2', term: 'envelope area', result: 'specific leakage rate (envelope)' },
  { field: 'floorArea_m2', term: 'floor area', result: 'specific leakage rate (floor)' },
] as const

/** A quantity is not given because its basis is missing. */
export const missingBasis: Rule = ({ record }) =>
  bases.flatMap(({ field, term, result }) =>
    record.building[field] !== undefined
      ? []
      : [
          {
            rule: 'missing-basis',
            severity: 'note',
            message: `${term} was not logged: no ${result} is given`,
            ...citing(practiceSource),
            where: [`building.${field}`],
            remedy: `add the ${term} if the quantity is wanted`,
          } satisfies Finding,
        ],
  )

/** How the building was prepared was not logged. */
export const missingPreparation: Rule = ({ record }) => {
  const missing = [
    ...(record.test.preparation === undefined ? ['test.preparation'] : []),
    ...((record.test.openings ?? []).length === 0 ? ['test.openings'] : []),
  ]
  if (missing.length === 0) return []
  return [
    {
      rule: 'missing-preparation',
      severity: 'note',
      message: `${missing.length === 2 ? 'preparation method and the state of the openings were' : missing[0] === 'test.openings' ? 'the state of the openings was' : 'preparation method was'} not logged`,
      ...citing({ text: 'ISO 9972:2015, 5.2', seen: 'memory' }),
      where: missing,
      remedy: 'log the preparation method and what was closed, sealed or left open',
    },
  ]
}

/** Nothing was asked, so nothing is judged. */
export const missingTarget: Rule = ({ record }) =>
  record.target !== undefined
    ? []
    : [
        {
          rule: 'missing-target',
          severity: 'note',
          message: 'no target was set: the results are not judged',
          ...citing(practiceSource),
          where: ['target'],
          remedy: 'set the target that the project must meet',
        },
      ]
