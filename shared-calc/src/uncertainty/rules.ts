import { finding } from '../catalogue/findings/finding.js'
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
      ...finding(
        'assumed-uncertainty',
        { where: defaults.map(({ input }) => `uncertainty.${input}`) },
        { values: each },
      ),
      clause: 'sources in the uncertainty part of the evaluation',
      provenance: [
        ...known('read', 'read in the source'),
        ...known('memory', 'value from memory'),
        ...known('common practice', 'common practice, no source'),
      ].join('; '),
    },
  ]
}

function windAssumed(worked: WorkedUncertainty): Finding[] {
  if (!worked.windAssumed) return []
  const speed = ASSUMED_WIND_m_s
  const where = ['conditions.windSpeed_m_s', 'conditions.beaufort']
  return [finding('assumed-wind', { where, value: speed }, { speed })]
}

/** The fit scatters much more than its readings should: the larger of the two is counted, and named. */
function moreScatter({ runs }: WorkedUncertainty): Finding[] {
  return runs.flatMap(({ run, sensitivityAt }) => {
    const block = sensitivityAt(50)
    const times = block.value('u_s') / block.value('u_b')
    if (!(times > MUCH_MORE)) return []
    return [
      finding(
        'scatter-unexpected',
        { where: [`runs[${run.index}].readings`], value: times, limit: MUCH_MORE },
        { direction: run.direction, times, limit: MUCH_MORE },
      ),
    ]
  })
}

const MUCH_MORE = 3
