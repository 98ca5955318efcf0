import { finding } from '../../catalogue/findings/finding.js'
import { exceeds } from '../../engine/index.js'
import { inEach, type Rule, silent } from './rule.js'

/** Both directions are part of the method, whatever the target counts. */
export const bothDirections: Rule = ({ record, method }) => {
  const { directions } = method.limits
  const [run, other] = record.runs
  if (directions?.asked !== 'both' || !run || other) return silent
  return [
    finding(
      'both-directions',
      { where: ['runs'], source: directions.source, value: 1, limit: 2 },
      { direction: run.direction, method: method.title },
    ),
  ]
}

/** The method runs one direction only; the other is worked out but belongs to no figure of the method. */
export const methodDirection: Rule = ({ record, method }) => {
  const { directions } = method.limits
  if (!directions || directions.asked === 'both') return silent
  const { asked, source } = directions
  return inEach(record.runs, ({ direction }, i) =>
    direction === asked
      ? silent
      : [
          finding(
            'method-direction',
            { where: [`runs[${i}].direction`], source },
            { method: method.title, asked, direction },
          ),
        ],
  )
}

/** Every reading belongs to a station of the method, and each station has its repeats. */
export const stationReadings: Rule = ({ method, test }) => {
  if (!method.stations) return silent
  const { pressures_Pa: stations, slack, repeats } = method.stations
  const { source, value: limit } = repeats
  const nearest = (dp: number) =>
    stations.reduce((best, station) =>
      Math.abs(Math.log(dp / station)) < Math.abs(Math.log(dp / best)) ? station : best,
    )
  return inEach(test.runs, ({ curve, direction, index }) => {
    const readings = curve.column('dp')
    const off = inEach(readings, (pressure, i) => {
      const station = nearest(pressure)
      if (!exceeds(Math.abs(pressure - station), slack * station)) return silent
      const where = [`runs[${index}].readings[${i}].pressure_Pa`]
      return [
        finding(
          'station-pressure',
          { where, source, value: pressure, limit: station },
          { direction, reading: i, pressure, method: method.title, stations, station },
        ),
      ]
    })
    const few = inEach(stations, (station) => {
      const count = readings.filter((dp) => nearest(dp) === station).length
      if (count >= limit) return silent
      const where = [`runs[${index}].readings`]
      return [
        finding(
          'station-repeats',
          { where, source, value: count, limit },
          { direction, count, station, limit },
        ),
      ]
    })
    return [...few, ...off]
  })
}

/** The leakage area is found closely enough: its standard error, relative, at the pressure of the method. */
export const leakageAreaError: Rule = ({ method, test }) => {
  if (!method.limits.leakageAreaError) return silent
  const { at_Pa: pressure_Pa, value: limit, source } = method.limits.leakageAreaError
  return inEach(test.runs, ({ at, index, direction }) => {
    const value = at.get(pressure_Pa)?.rate.value('S_y')
    if (value === undefined || !exceeds(value, limit)) return silent
    const where = [`runs[${index}].readings`]
    return [
      finding(
        'leakage-area-error',
        { where, source, value, limit },
        { direction, pressure_Pa, error: value, limit },
      ),
    ]
  })
}

/** An exponent was taken, not found. */
export const assumedExponent: Rule = ({ method, record }) => {
  if (!method.assumedExponent) return silent
  const { value, source } = method.assumedExponent
  return [
    finding(
      'assumed-exponent',
      { where: ['runs'], source, value },
      { exponent: value, runs: record.runs.length },
    ),
  ]
}

/** The altitude that a method corrects for was not logged: sea level is taken. */
export const assumedAltitude: Rule = ({ record, method }) =>
  !method.correctsBeyond || record.building.altitude_m !== undefined
    ? silent
    : [
        finding(
          'assumed-altitude',
          { where: ['building.altitude_m'], source: { text: method.title, seen: 'memory' }, value: 0 },
          { method: method.title },
        ),
      ]

/** Both directions were run where the target asks for both. */
export const oneDirection: Rule = ({ record, test }) => {
  const [run, other] = record.runs
  if (!run || other) return silent
  const { direction } = run
  const asked = test.target?.target.directions
  const facts = { where: ['runs'], value: 1, limit: 2 }
  return asked === 'mean' || asked === 'each'
    ? [finding('one-direction/both-needed', facts, { direction })]
    : [finding('one-direction/alone', facts, { direction })]
}

/** The two directions agree, or the report explains why not. */
export const directionsDiffer: Rule = ({ method, test }) => {
  const { value: limit, source } = method.limits.directionsDiffer
  const value = test.means.get(50)?.rate.value('d_q') ?? 0
  if (!exceeds(value, limit)) return silent
  return [finding('directions-differ', { where: ['runs'], source, value, limit }, { share: value, limit })]
}
