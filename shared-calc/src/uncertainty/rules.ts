import { citing, practiceSource } from '../catalogue/sources.js'
import { plain } from '../catalogue/words.js'
import type { Finding } from '../contract/record/index.js'
import type { Source } from '../engine/index.js'
import { ASSUMED_WIND_m_s, defaultUncertainties } from './defaults.js'
import type { WorkedUncertainty } from './worked-uncertainty.js'

/** Findings about the budget itself; only where one was asked for. */
export function uncertaintyFindings(worked: WorkedUncertainty): Finding[] {
  return [...defaultsTaken(worked), ...windAssumed(worked), ...moreScatter(worked)]
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

/** The fit scatters much more than its readings should: the larger of the two is counted, and named. */
function moreScatter({ runs }: WorkedUncertainty): Finding[] {
  return runs.flatMap(({ run, sensitivityAt }) => {
    const block = sensitivityAt(50)
    const [found, expected] = [block.value('u_s'), block.value('u_b')]
    if (found <= MUCH_MORE * expected) return []
    return [
      {
        rule: 'scatter-unexpected',
        severity: 'note',
        message: `${run.direction}: the readings scatter ${plain(found / expected, 1)} times as much as their instruments explain; what was found is counted`,
        ...citing(practiceSource),
        value: found / expected,
        limit: MUCH_MORE,
        where: [`runs[${run.index}].readings`],
        remedy: 'look for gusts or a change during the run; average longer',
      } satisfies Finding,
    ]
  })
}

const MUCH_MORE = 3
