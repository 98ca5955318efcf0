import { citing, practiceSource } from '../catalogue/sources.js'
import { plain } from '../catalogue/words.js'
import type { Finding } from '../contract/record/index.js'
import type { Source } from '../engine/index.js'
import { ASSUMED_HEIGHT_m, ASSUMED_WIND_m_s, defaultUncertainties } from './defaults.js'
import type { UnboundedUncertainty } from './refuse-beyond-measure.js'
import type { WorkedUncertainty } from './worked-uncertainty.js'

/** Findings about the budget itself; only where one was asked for. */
export function uncertaintyFindings(worked: WorkedUncertainty): Finding[] {
  return [
    ...defaultsTaken(worked),
    ...windAssumed(worked),
    ...windFromStation(worked),
    ...heightAssumed(worked),
    ...moreScatter(worked),
  ]
}

/** The budget leads beyond the numbers: it is left out, the official figures stand. */
export function uncertaintyUnbounded({ block }: UnboundedUncertainty): Finding {
  return {
    rule: 'uncertainty-unbounded',
    severity: 'caution',
    message: `no uncertainty can be given: ${block} leads to no finite number. The figures of the method stand`,
    ...citing(practiceSource),
    where: ['runs', 'uncertainty'],
    remedy:
      'check readings close to zero or far off the curve, and that not every standard uncertainty is stated as 0',
  }
}

/** Wind of a meteorological station, carried to the house. */
function windFromStation({ windFromStation: block }: WorkedUncertainty): Finding[] {
  if (!block) return []
  const [station, house] = [block.value('U_m'), block.value('U_w')]
  return [
    {
      rule: 'wind-at-station',
      severity: 'note',
      message: `wind ${plain(station, 1)} m/s was logged at a meteorological station: the uncertainty is worked out for ${plain(house, 1)} m/s at the house`,
      clause: 'ISO 9972:2015, 5.1.4: 3 m/s near the ground, 6 m/s at the station',
      provenance: 'value from memory',
      value: house,
      where: ['conditions.windSpeed_m_s', 'conditions.windAt'],
      remedy: 'log the wind near the ground at the house',
    },
  ]
}

function heightAssumed({ heightAssumed: isAssumed }: WorkedUncertainty): Finding[] {
  if (!isAssumed) return []
  return [
    {
      rule: 'assumed-height',
      severity: 'note',
      message: `building height was not logged: the uncertainty from the stack pressure is worked out for ${ASSUMED_HEIGHT_m} m`,
      ...citing(practiceSource),
      value: ASSUMED_HEIGHT_m,
      where: ['building.height_m'],
      remedy: 'add the height of the building',
    },
  ]
}

/** Standard uncertainties taken by default, all in one note. */
function defaultsTaken({ defaults }: WorkedUncertainty): Finding[] {
  if (defaults.length === 0) return []
  const each = defaults.map(({ input, value }) => {
    const { term, unit } = defaultUncertainties[input]
    return `${term} ${unit === '1' ? `${plain(value * 100, 1)} %` : `${plain(value, 2)} ${unit}`}`
  })
  const known = (seen: Source['seen'], word: string): string[] => {
    const terms = defaults.filter(({ source }) => source.seen === seen)
    return terms.length === 0
      ? []
      : [`${word}: ${terms.map(({ input }) => defaultUncertainties[input].term).join(', ')}`]
  }
  return [
    {
      rule: 'assumed-uncertainty',
      severity: 'note',
      message: `standard uncertainties taken by default: ${each.join(', ')}`,
      clause: 'sources in the uncertainty part of the evaluation',
      provenance: [
        ...known('read', 'read in the source'),
        ...known('memory', 'value from memory'),
        ...known('derived', 'derived'),
        ...known('common practice', 'common practice, no source'),
      ].join('; '),
      where: defaults.map(({ input }) => `uncertainty.${input}`),
      remedy: 'enter what the calibration certificates and your own checks say',
    },
  ]
}

function windAssumed(worked: WorkedUncertainty): Finding[] {
  if (!worked.windAssumed) return []
  return [
    {
      rule: 'assumed-wind',
      severity: 'caution',
      message: `wind was not logged: the uncertainty is worked out for ${ASSUMED_WIND_m_s} m/s`,
      ...citing(practiceSource),
      value: ASSUMED_WIND_m_s,
      where: ['conditions.windSpeed_m_s', 'conditions.beaufort'],
      remedy: 'log the wind speed or the Beaufort force',
    },
  ]
}

/** The readings scatter much more than they should: what was found is counted, and named. */
function moreScatter({ runs }: WorkedUncertainty): Finding[] {
  return runs.flatMap(({ run, sensitivityAt }): Finding[] => {
    const block = sensitivityAt(50)
    const [found, expected] = block.has('SSE_0')
      ? [Math.sqrt(block.value('SSE')), Math.sqrt(block.value('SSE_0'))]
      : [block.value('u_s'), block.value('u_b')]
    if (found <= MUCH_MORE * expected || found < ROUNDING) return []
    const base = {
      rule: 'scatter-unexpected',
      severity: 'note',
      ...citing(practiceSource),
    } as const
    if (expected === 0)
      return [
        {
          ...base,
          message: `${run.direction}: the readings scatter, though a scatter of 0 is stated for them; what was found is counted`,
          where: [
            `runs[${run.index}].readings`,
            'uncertainty.pressureReading_Pa',
            'uncertainty.flowReading_relative',
          ],
          remedy:
            'state what one reading of the gauge and of the flow device scatters by, or leave both empty',
        },
      ]
    return [
      {
        ...base,
        message: `${run.direction}: the readings scatter ${plain(found / expected, 1)} times as much as their instruments explain; what was found is counted`,
        value: found / expected,
        limit: MUCH_MORE,
        where: [`runs[${run.index}].readings`],
        remedy: 'look for gusts or a change during the run; average longer',
      },
    ]
  })
}

const MUCH_MORE = 3
/** Relative scatter of readings that lie on the curve but for the last digits of a number. */
const ROUNDING = 1e-9
