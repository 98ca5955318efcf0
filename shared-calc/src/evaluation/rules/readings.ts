import { finding } from '../../catalogue/findings/finding.js'
import { largest, smallest } from '../../engine/evaluate/functions.js'
import { exceeds, fallsBelow } from '../../engine/index.js'
import type { WorkedRun } from '../work/worked-test.js'
import { inEach, type Rule, silent } from './rule.js'

/** Enough readings in each direction. */
export const tooFewReadings: Rule = ({ record, method }) => {
  const { value: limit, source } = method.limits.readingsPerDirection
  return inEach(record.runs, ({ readings, direction }, i) => {
    const count = readings.length
    if (count >= limit) return silent
    const where = [`runs[${i}].readings`]
    return [finding('too-few-readings', { where, source, value: count, limit }, { direction, count, limit })]
  })
}

/** The highest induced pressure reaches the method's mark; a large building may stop lower with a reason. */
export const highestPressure: Rule = ({ record, method, test }) => {
  const { highestPressure_Pa: usual, highestPressureLargeBuilding_Pa: large } = method.limits
  const reason = record.building.largeBuilding
  const forbidden = test.target?.preset?.noLargeBuildingException
  return inEach(test.runs, ({ curve, direction, index }) => {
    const highest = largest(curve.column('dp'))
    if (!fallsBelow(highest, usual.value)) return silent
    const facts = { where: [`runs[${index}].readings`], value: highest }
    const { value: limit, source } =
      reason === undefined ? usual : forbidden ? { ...usual, source: forbidden } : large
    return reason !== undefined && !forbidden && !fallsBelow(highest, large.value)
      ? [
          finding(
            'highest-pressure/large-building',
            { ...facts, source, limit: usual.value },
            { direction, highest, reason },
          ),
        ]
      : [finding('highest-pressure/too-low', { ...facts, source, limit }, { direction, highest, limit })]
  })
}

/** No reading so low that the zero-flow pressure blurs it. */
export const lowestPressure: Rule = ({ method, test }) =>
  inEach(test.runs, ({ curve, lowest, direction, index }) => {
    const source = method.limits.lowestPressure_Pa.source
    const limit = lowest?.value('dp_min') ?? method.limits.lowestPressure_Pa.value
    const pressures = curve.column('dp')
    if (!fallsBelow(smallest(pressures), limit)) return silent
    return inEach(pressures, (pressure, i) =>
      !fallsBelow(pressure, limit)
        ? silent
        : [
            finding(
              'lowest-pressure/reading',
              { where: [`runs[${index}].readings[${i}].pressure_Pa`], source, value: pressure, limit },
              { direction, reading: i, pressure, limit },
            ),
          ],
    )
  })

/** Neighbouring pressures close enough together. */
export const readingSpacing: Rule = ({ method, test }) => {
  const { readingSpacing_Pa: spacing, readingSpacingSlack_Pa: slack } = method.limits
  return inEach(test.runs, ({ curve, direction, index }) => {
    if (!hasGap(curve.column('dp'), spacing.value + slack)) return silent
    const sorted = [...curve.column('dp')].map((value, i) => ({ value, i })).sort((a, b) => a.value - b.value)
    return inEach(sorted.slice(1), (upper, k) => {
      const lower = sorted[k]
      if (!lower || !exceeds(upper.value - lower.value, spacing.value + slack)) return silent
      const where = [lower.i, upper.i]
        .sort((a, b) => a - b)
        .map((i) => `runs[${index}].readings[${i}].pressure_Pa`)
      return [
        finding(
          'reading-spacing',
          { where, source: spacing.source, value: upper.value - lower.value, limit: spacing.value },
          { direction, lower: lower.value, upper: upper.value, limit: spacing.value },
        ),
      ]
    })
  })
}

/** Whether two neighbours in value lie further apart than allowed. */
function hasGap(values: readonly number[], allowed: number): boolean {
  const sorted = onlyRiseOrFall(values) ? values : values.slice().sort((a, b) => a - b)
  for (let i = 1; i < sorted.length; i += 1)
    if (exceeds(Math.abs((sorted[i] as number) - (sorted[i - 1] as number)), allowed)) return true
  return false
}

/** Whether values are in order already, none twice: most readings are taken so. */
function onlyRiseOrFall(values: readonly number[]): boolean {
  const rise = Math.sign((values[1] ?? 0) - (values[0] ?? 0))
  for (let i = 1; i < values.length; i += 1)
    if (!(((values[i] as number) - (values[i - 1] as number)) * rise > 0)) return false
  return true
}

/** No pressure so high that linings and membranes are at risk. */
export const pressureCeiling: Rule = ({ record, method }) => {
  const { value: limit, source } = method.limits.pressureCeiling_Pa
  return inEach(record.runs, ({ readings, direction }, run) =>
    inEach(readings, ({ pressure_Pa }, i) => {
      const pressure = Math.abs(pressure_Pa)
      if (!exceeds(pressure, limit)) return silent
      const where = [`runs[${run}].readings[${i}].pressure_Pa`]
      return [
        finding(
          'pressure-ceiling',
          { where, source, value: pressure, limit },
          { direction, reading: i, pressure, limit },
        ),
      ]
    }),
  )
}

/** No reading above the range of the method. */
export const topPressure: Rule = ({ method, test }) => {
  const { topPressure_Pa: top } = method.limits
  if (!top) return silent
  const { value: limit, slack_Pa, source } = top
  return inEach(test.runs, ({ curve, direction, index }) =>
    inEach(curve.column('dp'), (pressure, i) =>
      !exceeds(pressure, limit + slack_Pa)
        ? silent
        : [
            finding(
              'top-pressure',
              { where: [`runs[${index}].readings[${i}].pressure_Pa`], source, value: pressure, limit },
              { direction, reading: i, pressure, limit },
            ),
          ],
    ),
  )
}

/** The same reading typed in twice. */
export const duplicateReading: Rule = ({ record }) =>
  inEach(record.runs, ({ readings, direction }, run) => {
    // Where no pressure comes twice, no reading does.
    if (onlyRiseOrFall(readings.map(({ pressure_Pa }) => pressure_Pa))) return silent
    const seen = new Map<string, number>()
    return inEach(readings, (reading, second) => {
      const key = [reading.pressure_Pa, reading.flow_m3_h, reading.devicePressure_Pa, reading.range].join('|')
      const first = seen.get(key)
      seen.set(key, first ?? second)
      if (first === undefined) return silent
      const where = [`runs[${run}].readings[${first}]`, `runs[${run}].readings[${second}]`]
      return [
        finding('duplicate-reading', { where }, { direction, first, second, pressure: reading.pressure_Pa }),
      ]
    })
  })

/** Every reading of one run is a reading of the other: no two runs of a real test are. */
export const identicalRuns: Rule = ({ record, test }) => {
  const [first, second] = record.runs
  // Readings on one exact curve were not measured; they may be alike in both directions.
  if (!first || !second || first.readings.length < 3 || test.runs.some(exactlyOnCurve)) return silent
  if (!second.readings.some((one) => one.flow_m3_h === first.readings[0]?.flow_m3_h)) return silent
  const keys = ({ readings }: typeof first) =>
    readings
      .map((one) =>
        [Math.abs(one.pressure_Pa), one.flow_m3_h, Math.abs(one.devicePressure_Pa ?? 0), one.range].join('|'),
      )
      .sort()
      .join(' ')
  return keys(first) === keys(second)
    ? [finding('identical-runs', { where: ['runs[0].readings', 'runs[1].readings'] })]
    : silent
}

/** Readings on one exact curve were not measured. */
export const exactlyOnCurve = ({ deviation }: WorkedRun): boolean =>
  deviation.column('d_fit').every((share) => Math.abs(share) < 1e-6)
