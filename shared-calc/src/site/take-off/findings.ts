import { finding } from '../../catalogue/findings/finding.js'
import type { Finding, TakeOff } from '../../contract/record/index.js'
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

/** More was subtracted than added. */
function emptyTotals({ net, overall, floor, envelope }: WorkedTakeOff, at: string): Finding[] {
  const totals = [
    { term: 'net volume', unit: 'm³', value: net?.value('V'), list: 'spaces' },
    { term: 'overall internal volume', unit: 'm³', value: overall?.value('V'), list: 'spaces' },
    { term: 'floor area', unit: 'm²', value: floor?.value('A_t'), list: 'spaces' },
    { term: 'envelope area', unit: 'm²', value: envelope?.value('A_t'), list: 'elements' },
  ] as const
  return totals.flatMap(({ term, unit, value, list }) => {
    if (value === undefined || value > 0) return []
    return [finding('take-off-empty', { where: [`${at}.${list}`], value, limit: 0 }, { term, value, unit })]
  })
}

const terms: Record<StatedField, { term: string; unit: string }> = {
  volume_m3: { term: 'internal volume', unit: 'm³' },
  envelopeArea_m2: { term: 'envelope area', unit: 'm²' },
  floorArea_m2: { term: 'floor area', unit: 'm²' },
}

/** A stated total that differs from the take-off by more than its expanded uncertainty. */
function statedTotals({ stated }: TakeOff, worked: WorkedTakeOff, at: string): Finding[] {
  const found = [...worked.stated].flatMap(([field, block]) => {
    const difference = block.value('d_s')
    const limit = block.value('U_w')
    if (Math.abs(difference) <= limit) return []
    return [
      finding(
        'take-off-stated/differs',
        { where: [`${at}.stated.${field}`], value: difference, limit },
        {
          ...terms[field],
          from: stated?.from,
          stated: block.value('v_s'),
          taken: block.value('v_w'),
          share: block.value('d_r'),
          limit,
        },
      ),
    ]
  })
  return stated?.volume_m3 === undefined || stated.volumeBasis !== undefined
    ? found
    : [...found, finding('take-off-stated/basis', { where: [`${at}.stated.volumeBasis`] })]
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
      const where = [`${at}.${list}[${first}]`, `${at}.${list}[${i}]`]
      return [finding('take-off-doubled', { where }, { name: part.name })]
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
  ].flatMap(({ own, path }) => (own === undefined ? [`${path}.lengthUncertainty_m`] : []))
  if (where.length === 0) return []
  const assumed_m = ASSUMED_LENGTH_UNCERTAINTY_M
  return [
    finding('assumed-length-uncertainty', { where, value: assumed_m }, { count: where.length, assumed_m }),
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
  return where.length === 0
    ? []
    : [finding('area-uncertainty-not-stated', { where }, { count: where.length })]
}

const unstatedScale = ({ scaleUncertainty }: TakeOff, at: string): Finding[] =>
  scaleUncertainty === undefined
    ? [finding('scale-uncertainty-not-stated', { where: [`${at}.scaleUncertainty`] })]
    : []
