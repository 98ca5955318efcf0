import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain, readingName } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'
import { largest, smallest } from '../../engine/evaluate/functions.js'
import type { Rule } from './rule.js'

/** Enough readings in each direction. */
export const tooFewReadings: Rule = ({ record, method }) => {
  const { value: limit, source } = method.limits.readingsPerDirection
  return record.runs.flatMap(({ readings, direction }, i) =>
    readings.length >= limit
      ? []
      : [
          {
            rule: 'too-few-readings',
            severity: 'invalidates',
            message: `${direction} has ${readings.length} readings; at least ${limit} are needed`,
            ...citing(source),
            value: readings.length,
            limit,
            where: [`runs[${i}].readings`],
            remedy: 'take further readings at other pressures and fit again',
          } satisfies Finding,
        ],
  )
}

/** The highest induced pressure reaches the method's mark; a large building may stop lower with a reason. */
export const highestPressure: Rule = ({ record, method, test }) => {
  const { highestPressure_Pa: usual, highestPressureLargeBuilding_Pa: large } = method.limits
  const reason = record.building.largeBuilding
  return test.runs.flatMap(({ curve, direction, index }) => {
    const highest = largest(curve.column('dp'))
    if (highest >= usual.value) return []
    const excused = reason !== undefined && highest >= large.value
    const limit = reason === undefined ? usual : large
    return [
      {
        rule: 'highest-pressure',
        severity: excused ? 'caution' : 'invalidates',
        message: excused
          ? `${direction} reaches only ${plain(highest, 1)} Pa, accepted for a large building: ${reason}`
          : `${direction} reaches only ${plain(highest, 1)} Pa; at least ${limit.value} Pa is needed`,
        ...citing(limit.source),
        value: highest,
        limit: excused ? usual.value : limit.value,
        where: [`runs[${index}].readings`],
        remedy: excused
          ? 'state the reason in the report'
          : 'raise the pressure with a larger range or a second device, or look for an opening left unsealed',
      } satisfies Finding,
    ]
  })
}

/** No reading so low that the zero-flow pressure blurs it. */
export const lowestPressure: Rule = ({ method, test }) =>
  test.runs.flatMap(({ curve, lowest, direction, index }) => {
    const source = method.limits.lowestPressure_Pa.source
    const limit = lowest?.value('dp_min') ?? method.limits.lowestPressure_Pa.value
    const pressures = curve.column('dp')
    if (smallest(pressures) >= limit) return []
    return [...pressures].flatMap((value, i) =>
      value >= limit
        ? []
        : [
            {
              rule: 'lowest-pressure',
              severity: 'caution',
              message: `${readingName(direction, i)} lies at ${plain(value, 1)} Pa; the lowest pressure to use in this test is ${plain(limit, 1)} Pa`,
              ...citing(source),
              value,
              limit,
              where: [`runs[${index}].readings[${i}].pressure_Pa`],
              remedy: 'leave the reading out, or take it again in calmer weather',
            } satisfies Finding,
          ],
    )
  })

/** Neighbouring pressures close enough together. */
export const readingSpacing: Rule = ({ method, test }) => {
  const { readingSpacing_Pa: spacing, readingSpacingSlack_Pa: slack } = method.limits
  return test.runs.flatMap(({ curve, direction, index }) => {
    if (!hasGap(curve.column('dp'), spacing.value + slack)) return []
    const sorted = [...curve.column('dp')].map((value, i) => ({ value, i })).sort((a, b) => a.value - b.value)
    return sorted.slice(1).flatMap((upper, k) => {
      const lower = sorted[k]
      if (!lower || upper.value - lower.value <= spacing.value + slack) return []
      return [
        {
          rule: 'reading-spacing',
          severity: 'caution',
          message: `${direction} has a gap of ${plain(upper.value - lower.value, 1)} Pa between ${plain(lower.value, 1)} and ${plain(upper.value, 1)} Pa; readings should be about ${spacing.value} Pa apart`,
          ...citing(spacing.source),
          value: upper.value - lower.value,
          limit: spacing.value,
          where: [lower.i, upper.i]
            .sort((a, b) => a - b)
            .map((i) => `runs[${index}].readings[${i}].pressure_Pa`),
          remedy: 'take a reading between the two',
        } satisfies Finding,
      ]
    })
  })
}

/** Whether two neighbours in value lie further apart than allowed. */
function hasGap(values: readonly number[], allowed: number): boolean {
  const sorted = values.slice().sort((a, b) => a - b)
  for (let i = 1; i < sorted.length; i += 1)
    if ((sorted[i] as number) - (sorted[i - 1] as number) > allowed) return true
  return false
}

/** No pressure so high that linings and membranes are at risk. */
export const pressureCeiling: Rule = ({ record, method }) => {
  const { value: limit, source } = method.limits.pressureCeiling_Pa
  return record.runs.flatMap(({ readings, direction }, run) =>
    readings.flatMap(({ pressure_Pa }, i) =>
      Math.abs(pressure_Pa) <= limit
        ? []
        : [
            {
              rule: 'pressure-ceiling',
              severity: 'caution',
              message: `${readingName(direction, i)} was taken at ${plain(Math.abs(pressure_Pa), 1)} Pa; above ${limit} Pa linings and membranes may be damaged`,
              ...citing(source),
              value: Math.abs(pressure_Pa),
              limit,
              where: [`runs[${run}].readings[${i}].pressure_Pa`],
              remedy: 'stay at or below the limit; inspect boards and membranes before going on',
            } satisfies Finding,
          ],
    ),
  )
}

/** The same reading typed in twice. */
export const duplicateReading: Rule = ({ record }) =>
  record.runs.flatMap(({ readings, direction }, run) => {
    // Where no pressure comes twice, no reading does.
    if (new Set(readings.map(({ pressure_Pa }) => pressure_Pa)).size === readings.length) return []
    const seen = new Map<string, number>()
    return readings.flatMap((reading, i) => {
      const key = [reading.pressure_Pa, reading.flow_m3_h, reading.devicePressure_Pa, reading.range].join('|')
      const first = seen.get(key)
      seen.set(key, first ?? i)
      if (first === undefined) return []
      return [
        {
          rule: 'duplicate-reading',
          severity: 'note',
          message: `${direction}, readings ${first + 1} and ${i + 1} are the same, ${plain(reading.pressure_Pa, 1)} Pa`,
          ...citing(practiceSource),
          where: [`runs[${run}].readings[${first}]`, `runs[${run}].readings[${i}]`],
          remedy: 'check that a reading was not copied; leave one out if it was',
        } satisfies Finding,
      ]
    })
  })
