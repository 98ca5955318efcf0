import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding, TakeOff } from '../../contract/record/index.js'
import type { Block } from '../../engine/index.js'
import { ASSUMED_LENGTH_UNCERTAINTY_M } from './rows.js'
import type { StatedField, WorkedTakeOff } from './work-take-off.js'

/** What a take-off leaves open or assumes, and where it departs from stated totals. */
export function takeOffFindings(takeOff: TakeOff, worked: WorkedTakeOff, at = 'takeOff'): Finding[] {
  return [
    ...emptyTotals(worked, at),
    ...statedTotals(takeOff, worked, at),
    ...doubledNames(takeOff, at),
    ...assumedLengths(takeOff, at),
    ...unstatedAreas(takeOff, at),
    ...unstatedScale(takeOff, at),
  ]
}

/** More was taken off than was there. */
function emptyTotals({ net, overall, floor, envelope }: WorkedTakeOff, at: string): Finding[] {
  const totals: [string, Block | undefined, string, string][] = [
    ['net volume', net, 'V', 'spaces'],
    ['overall internal volume', overall, 'V', 'spaces'],
    ['floor area', floor, 'A_t', 'spaces'],
    ['envelope area', envelope, 'A_t', 'elements'],
  ]
  return totals.flatMap(([term, block, symbol, list]) => {
    if (!block || block.value(symbol) > 0) return []
    return [
      {
        rule: 'take-off-empty',
        severity: 'invalidates',
        message: `the ${term} comes to ${plain(block.value(symbol), 1)}: more is taken off than was added`,
        ...citing(practiceSource),
        value: block.value(symbol),
        limit: 0,
        where: [`${at}.${list}`],
        remedy: 'check the dimensions of what is excluded',
      } satisfies Finding,
    ]
  })
}

const terms: Record<StatedField, string> = {
  volume_m3: 'internal volume',
  envelopeArea_m2: 'envelope area',
  floorArea_m2: 'floor area',
}

/** A stated total that the take-off does not bear out within its expanded uncertainty. */
function statedTotals({ stated }: TakeOff, worked: WorkedTakeOff, at: string): Finding[] {
  const found = [...worked.stated].flatMap(([field, block]) => {
    const difference = block.value('d_s')
    const limit = block.value('U_w')
    if (Math.abs(difference) <= limit) return []
    return [
      {
        rule: 'take-off-stated',
        severity: 'caution',
        message: `${terms[field]} ${plain(block.value('v_s'), 1)} as stated by "${stated?.from ?? ''}" differs from ${plain(block.value('v_w'), 1)} worked out by ${plain(difference, 1)} (${plain(block.value('d_r') * 100, 1)} %), more than the expanded uncertainty of the take-off, ${plain(limit, 1)}`,
        ...citing(practiceSource),
        value: difference,
        limit,
        where: [`${at}.stated.${field}`],
        remedy:
          'find out what the plan counts that the take-off does not (basis, storeys, voids), or measure again',
      } satisfies Finding,
    ]
  })
  if (stated?.volume_m3 === undefined || stated.volumeBasis !== undefined) return found
  return [
    ...found,
    {
      rule: 'take-off-stated',
      severity: 'note',
      message: 'the basis of the stated volume was not given: it is compared with the net volume',
      ...citing(practiceSource),
      where: [`${at}.stated.volumeBasis`],
      remedy: 'ask whether the stated volume is net or overall internal',
    },
  ]
}

/** The same part entered twice. */
function doubledNames({ spaces, elements = [] }: TakeOff, at: string): Finding[] {
  const lists: [string, readonly { name: string }[]][] = [
    ['spaces', spaces],
    ['elements', elements],
  ]
  return lists.flatMap(([list, parts]) => {
    const seen = new Map<string, number>()
    return parts.flatMap((part, i) => {
      const key = JSON.stringify(part)
      const first = seen.get(key)
      seen.set(key, first ?? i)
      if (first === undefined) return []
      return [
        {
          rule: 'take-off-doubled',
          severity: 'note',
          message: `"${part.name}" stands twice with the same dimensions`,
          ...citing(practiceSource),
          where: [`${at}.${list}[${first}]`, `${at}.${list}[${i}]`],
          remedy: 'leave one out, or give them different names',
        } satisfies Finding,
      ]
    })
  })
}

function assumedLengths(takeOff: TakeOff, at: string): Finding[] {
  if (takeOff.lengthUncertainty_m !== undefined) return []
  const where = [
    ...takeOff.spaces.map((part, i) => ({ own: part.lengthUncertainty_m, path: `${at}.spaces[${i}]` })),
    ...(takeOff.elements ?? []).map((part, i) => ({
      own: part.figure.shape === 'area' ? 0 : part.lengthUncertainty_m,
      path: `${at}.elements[${i}]`,
    })),
  ].filter(({ own }) => own === undefined)
  if (where.length === 0) return []
  return [
    {
      rule: 'assumed-length-uncertainty',
      severity: 'note',
      message: `the uncertainty of ${where.length === 1 ? 'one part' : `${where.length} parts`} was not stated: ${ASSUMED_LENGTH_UNCERTAINTY_M} m is assumed for each length`,
      ...citing(practiceSource),
      value: ASSUMED_LENGTH_UNCERTAINTY_M,
      where: where.map(({ path }) => `${path}.lengthUncertainty_m`),
      remedy: 'state how well lengths were measured',
    },
  ]
}

function unstatedAreas({ spaces, elements = [] }: TakeOff, at: string): Finding[] {
  const where = [
    ...spaces.flatMap(({ solid }, i) =>
      solid.shape === 'floor area' && solid.floorAreaUncertainty_m2 === undefined
        ? [`${at}.spaces[${i}].solid.floorAreaUncertainty_m2`]
        : [],
    ),
    ...elements.flatMap(({ figure }, i) =>
      figure.shape === 'area' && figure.areaUncertainty_m2 === undefined
        ? [`${at}.elements[${i}].figure.areaUncertainty_m2`]
        : [],
    ),
  ]
  if (where.length === 0) return []
  return [
    {
      rule: 'area-uncertainty-not-stated',
      severity: 'note',
      message: `${where.length === 1 ? 'an area' : `${where.length} areas`} taken as given without an uncertainty: none is counted`,
      ...citing(practiceSource),
      where,
      remedy: 'state the standard uncertainty of areas read off a plan',
    },
  ]
}

function unstatedScale({ scaleUncertainty }: TakeOff, at: string): Finding[] {
  if (scaleUncertainty !== undefined) return []
  return [
    {
      rule: 'scale-uncertainty-not-stated',
      severity: 'note',
      message: 'no uncertainty that all lengths share (scale of a print, tape) was stated: none is counted',
      ...citing(practiceSource),
      where: [`${at}.scaleUncertainty`],
      remedy: 'state it, above all where lengths were taken off a print',
    },
  ]
}
