import { finding } from '../catalogue/findings/finding.js'
import { plain } from '../catalogue/words.js'
import type { Finding } from '../contract/record/index.js'
import { ASSUMED_HEIGHT_m, ASSUMED_WIND_m_s, defaultUncertainties } from './defaults.js'
import { UNKNOWN_ZERO_FLOW_Pa2 } from './run-sensitivity.js'
import type { UnboundedUncertainty, WorkedUncertainty } from './worked-uncertainty.js'

/** Findings about the budget itself; only where one was asked for. */
export function uncertaintyFindings(worked: WorkedUncertainty): Finding[] {
  return [
    ...defaultsTaken(worked),
    ...windAssumed(worked),
    ...windFromStation(worked),
    ...heightAssumed(worked),
    ...zeroFlowSpreadAssumed(worked),
    ...moreScatter(worked),
  ]
}

/** The budget leads beyond the numbers: it is left out, the official figures stand. */
export const uncertaintyUnbounded = ({ block }: UnboundedUncertainty): Finding =>
  finding('uncertainty-unbounded', { where: ['runs', 'uncertainty'] }, { block })

/** Wind of a meteorological station, carried to the house. */
function windFromStation({ windFromStation: block }: WorkedUncertainty): Finding[] {
  if (!block) return []
  const [station, house] = [block.value('U_m'), block.value('U_w')]
  const where = ['conditions.windSpeed_m_s', 'conditions.windAt']
  return [finding('wind-at-station', { where, value: house }, { station, house })]
}

/** One value says nothing of its scatter. */
function zeroFlowSpreadAssumed({ runs }: WorkedUncertainty): Finding[] {
  const value = Math.sqrt(UNKNOWN_ZERO_FLOW_Pa2)
  return runs.flatMap(({ run: { before, after, index, direction } }) =>
    (before?.rows ?? 0) > 1 || (after?.rows ?? 0) > 1
      ? []
      : [
          finding(
            'assumed-zero-flow-spread',
            { where: [`runs[${index}].zeroFlowBefore_Pa`, `runs[${index}].zeroFlowAfter_Pa`], value },
            { direction, spread: value },
          ),
        ],
  )
}

function heightAssumed({ heightAssumed: isAssumed }: WorkedUncertainty): Finding[] {
  if (!isAssumed) return []
  const height = ASSUMED_HEIGHT_m
  return [finding('assumed-height', { where: ['building.height_m'], value: height }, { height })]
}

/** Standard uncertainties taken by default, all in one note. */
function defaultsTaken({ defaults }: WorkedUncertainty): Finding[] {
  if (defaults.length === 0) return []
  const each = defaults.map(({ input, value }) => {
    const { term, unit } = defaultUncertainties[input]
    return `${term} ${unit === '1' ? `${plain(value * 100, 1)} %` : `${plain(value, 2)} ${unit}`}`
  })
  const fromMemory = defaults
    .filter(({ source }) => source.seen === 'memory')
    .map(({ input }) => defaultUncertainties[input].term)
  return [
    {
      ...finding(
        'assumed-uncertainty',
        { where: defaults.map(({ input }) => `uncertainty.${input}`) },
        { values: each },
      ),
      clause: 'sources: see the uncertainty budget',
      ...(fromMemory.length > 0 && { provenance: `value from memory: ${fromMemory.join('; ')}` }),
    },
  ]
}

function windAssumed(worked: WorkedUncertainty): Finding[] {
  if (!worked.windAssumed) return []
  const speed = ASSUMED_WIND_m_s
  const where = ['conditions.windSpeed_m_s', 'conditions.beaufort']
  return [finding('assumed-wind', { where, value: speed }, { speed })]
}

/** The readings scatter much more than they should: what was found is counted, and named. */
function moreScatter({ runs }: WorkedUncertainty): Finding[] {
  return runs.flatMap(({ run, sensitivityAt }): Finding[] => {
    const block = sensitivityAt(50)
    const [found, expected] = block.has('SSE_0')
      ? [Math.sqrt(block.value('SSE')), Math.sqrt(block.value('SSE_0'))]
      : [block.value('u_s'), block.value('u_b')]
    // Readings beyond all numbers give no ratio; the official figures are judged by the other rules.
    if (!(found > MUCH_MORE * expected) || found < ROUNDING) return []
    const where = [`runs[${run.index}].readings`]
    const { direction } = run
    const times = found / expected
    if (!Number.isFinite(times))
      return [
        finding(
          'scatter-unexpected/stated-as-none',
          { where: [...where, 'uncertainty.pressureReading_Pa', 'uncertainty.flowReading_relative'] },
          { direction },
        ),
      ]
    return [
      finding(
        'scatter-unexpected',
        { where, value: times, limit: MUCH_MORE },
        { direction, times, limit: MUCH_MORE },
      ),
    ]
  })
}

const MUCH_MORE = 3
/** Relative scatter of readings that lie on the curve but for the last digits of a number. */
const ROUNDING = 1e-9
