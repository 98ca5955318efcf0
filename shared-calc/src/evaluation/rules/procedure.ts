import { citing } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding, Severity } from '../../contract/record/index.js'
import type { Source } from '../../engine/index.js'
import type { Rule } from './rule.js'

/** Both directions are part of the method, whatever the target counts. */
export const bothDirections: Rule = ({ record, method }) => {
  const { directions } = method.limits
  if (directions?.asked !== 'both' || record.runs.length === 2) return []
  const { source } = directions
  return [
    {
      rule: 'both-directions',
      severity: 'invalidates',
      message: `only ${record.runs[0]?.direction} was run; ${method.title} asks for both directions`,
      ...citing(source),
      value: 1,
      limit: 2,
      where: ['runs'],
      remedy: 'turn the device round and run the other direction',
    },
  ]
}

/** The method runs one direction only; the other is worked out but belongs to no figure of the method. */
export const methodDirection: Rule = ({ record, method }) => {
  const { directions } = method.limits
  if (!directions || directions.asked === 'both') return []
  const { asked, source } = directions
  return record.runs.flatMap((run, i) =>
    run.direction === asked
      ? []
      : [
          {
            rule: 'method-direction',
            severity: 'caution',
            message: `${method.title} is a test by ${asked}; this run is ${run.direction} and counts in the mean`,
            ...citing(source),
            where: [`runs[${i}].direction`],
            remedy: 'leave the run out, or evaluate by a method of both directions',
          } satisfies Finding,
        ],
  )
}

/** Every reading belongs to a station of the method, and each station has its repeats. */
export const stationReadings: Rule = ({ method, test }) => {
  const { stations } = method
  if (!stations) return []
  const { pressures_Pa: pressures, slack, repeats } = stations
  const nearest = (dp: number) =>
    pressures.reduce((best, station) =>
      Math.abs(Math.log(dp / station)) < Math.abs(Math.log(dp / best)) ? station : best,
    )
  return test.runs.flatMap(({ curve, direction, index }) => {
    const readings = [...curve.column('dp')]
    const off = readings.flatMap((dp, i) => {
      const station = nearest(dp)
      if (Math.abs(dp - station) <= slack * station) return []
      return [
        finding('station-pressure', 'caution', `runs[${index}].readings[${i}].pressure_Pa`, {
          message: `reading ${i + 1} lies at ${plain(dp, 1)} Pa; ${method.title} reads at ${pressures.map((p) => plain(p, 1)).join(' and ')} Pa`,
          source: repeats.source,
          value: dp,
          limit: station,
          remedy: 'take the reading again nearer to the station',
        }),
      ]
    })
    const few = pressures.flatMap((station) => {
      const count = readings.filter((dp) => nearest(dp) === station).length
      if (count >= repeats.value) return []
      return [
        finding('station-repeats', 'invalidates', `runs[${index}].readings`, {
          message: `${direction} has ${count} readings near ${plain(station, 1)} Pa; at least ${repeats.value} are needed`,
          source: repeats.source,
          value: count,
          limit: repeats.value,
          remedy: `repeat the reading near ${plain(station, 1)} Pa`,
        }),
      ]
    })
    return [...few, ...off]
  })
}

/** The leakage area is found closely enough: its standard error, relative, at the pressure of the method. */
export const leakageAreaError: Rule = ({ method, test }) => {
  if (!method.limits.leakageAreaError) return []
  const { at_Pa: pressure_Pa, value: limit, source } = method.limits.leakageAreaError
  return test.runs.flatMap(({ at, index, direction }) => {
    const value = at.get(pressure_Pa)?.rate.value('S_y')
    if (value === undefined || value <= limit) return []
    return [
      finding('leakage-area-error', 'invalidates', `runs[${index}].readings`, {
        message: `${direction}: the leakage area at ${pressure_Pa} Pa has a relative standard error of ${plain(value * 100, 1)} %; at most ${limit * 100} % is accepted`,
        source,
        value,
        limit,
        remedy: 'repeat the run in calmer weather, or with more readings at low pressure',
      }),
    ]
  })
}

/** An exponent was taken, not found. */
export const assumedExponent: Rule = ({ method, record }) => {
  const taken = method.assumedExponent
  if (!taken) return []
  return [
    finding('assumed-exponent', 'note', 'runs', {
      message: `an air flow exponent of ${taken.value} is assumed in ${record.runs.length === 1 ? 'the run' : 'both runs'}: figures away from the pressure read depend on it`,
      source: taken.source,
      value: taken.value,
      remedy: 'run a multi-point test where a figure far from the pressure read decides',
    }),
  ]
}

/** The altitude that a method corrects for was not logged: sea level is taken. */
export const assumedAltitude: Rule = ({ record, method }) =>
  !method.correctsForAltitude || record.building.altitude_m !== undefined
    ? []
    : [
        finding('assumed-altitude', 'caution', 'building.altitude_m', {
          message: `altitude was not logged: ${method.title} corrects for it, and sea level is taken`,
          source: { text: method.title, seen: 'memory' },
          value: 0,
          remedy: 'add the altitude of the site',
        }),
      ]

interface Told {
  readonly message: string
  readonly source: Source
  readonly value: number
  readonly limit?: number
  readonly remedy: string
}

const finding = (rule: string, severity: Severity, where: string, told: Told): Finding => ({
  rule,
  severity,
  message: told.message,
  ...citing(told.source),
  value: told.value,
  ...(told.limit !== undefined && { limit: told.limit }),
  where: [where],
  remedy: told.remedy,
})
