import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain, readingName } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'
import { largest, smallest, studentT } from '../../engine/evaluate/functions.js'
import type { Rule } from './rule.js'

/** The exponent lies between fully turbulent and fully laminar flow. */
export const exponentRange: Rule = ({ method, test }) => {
  if (method.assumedExponent) return []
  const { lowest, highest, source } = method.limits.exponent
  return test.runs.flatMap(({ curve, direction, index }) => {
    const value = curve.value('n')
    if (value >= lowest && value <= highest) return []
    return [
      {
        rule: 'exponent-range',
        severity: 'invalidates',
        message: `${direction}: air flow exponent ${plain(value, 3)} lies outside ${lowest} to ${highest}`,
        ...citing(source),
        value,
        limit: value < lowest ? lowest : highest,
        where: [`runs[${index}].readings`],
        remedy:
          'look for something that opened or closed during the run, a wrong range, or wind; then repeat the run',
      } satisfies Finding,
    ]
  })
}

/** The readings lie on one line. */
export const correlation: Rule = ({ method, test }) => {
  if (method.stations || !method.limits.rSquared) return []
  const { value: limit, source } = method.limits.rSquared
  return test.runs.flatMap(({ curve, scatter, direction, index }) => {
    if (!scatter) return []
    const value = curve.value('r_2')
    if (value >= limit) return []
    return [
      {
        rule: 'correlation',
        severity: 'invalidates',
        message: `${direction}: coefficient of determination r² is ${plain(value, 4)}; at least ${limit} is needed`,
        ...citing(source),
        value,
        limit,
        where: [`runs[${index}].readings`],
        remedy: 'repeat the run in calmer conditions, or repeat the readings that lie off the line',
      } satisfies Finding,
    ]
  })
}

const OUTLIER_ALPHA = 0.01

/** A reading that lies off the line through all the others. */
export const outlier: Rule = ({ test }) =>
  test.runs.flatMap(({ scatter, residuals, direction, index }) => {
    if (!scatter || scatter.rows < 4) return []
    const where = (i: number) => [`runs[${index}].readings[${i}]`]
    if (!residuals) {
      const squares = scatter.value('SSE')
      if (squares <= 1e-24 * scatter.rows) return []
      return [...scatter.column('d_e')].flatMap((left, i) =>
        left > 1e-9 * squares
          ? []
          : [offTheLine(readingName(direction, i), where(i), 'all other readings lie exactly on one line')],
      )
    }
    const limit = studentT(OUTLIER_ALPHA, scatter.rows - 3)
    return [...residuals.column('t_e')].flatMap((value, i) =>
      Math.abs(value) <= limit
        ? []
        : [
            {
              ...offTheLine(
                readingName(direction, i),
                where(i),
                `studentised residual ${plain(value, 1)}, limit ${plain(limit, 1)}`,
              ),
              value,
              limit,
            },
          ],
    )
  })

const offTheLine = (reading: string, where: string[], how: string): Finding => ({
  rule: 'outlier',
  severity: 'note',
  message: `${reading} lies off the line through the others: ${how}`,
  ...citing(practiceSource),
  where,
  remedy:
    'look for its cause (gust, door, wrong range); repeat it if you can, never drop it without a reason',
})

/** The target's reference pressure lies outside the pressures that were read. */
export const extrapolatedTarget: Rule = ({ test }) => {
  const pressure = test.target?.target.referencePressure_Pa
  if (pressure === undefined) return []
  return test.runs.flatMap(({ curve, direction, index }) => {
    const lowest = smallest(curve.column('dp'))
    const highest = largest(curve.column('dp'))
    if (pressure >= lowest && pressure <= highest) return []
    return [
      {
        rule: 'extrapolated-target',
        severity: 'note',
        message: `${direction}: the target is judged at ${plain(pressure)} Pa, outside the readings (${plain(lowest, 1)} to ${plain(highest, 1)} Pa)`,
        ...citing(practiceSource),
        value: pressure,
        limit: pressure < lowest ? lowest : highest,
        where: [`runs[${index}].readings`],
        remedy: 'mind the interval: it widens outside the readings',
      } satisfies Finding,
    ]
  })
}
