import { finding } from '../../catalogue/findings/finding.js'
import type { Finding, TestRecord } from '../../contract/record/index.js'
import { exceeds } from '../../engine/index.js'
import type { Limit, MethodLimits } from '../../methods/method.js'
import { inEach, type Rule, silent } from './rule.js'

/** Gauge, device and thermometer are as accurate as the method asks, as far as their accuracy was entered. */
export const instrumentAccuracy: Rule = ({ record, method }) => {
  const { pressureGauge, flowDevice, thermometer } = record
  const { accuracy } = method.limits
  if (!accuracy) return silent
  return [
    ...gaugeAccuracy(pressureGauge, record.runs, accuracy),
    ...judged(
      'flow device',
      'flowDevice.accuracy_relative',
      flowDevice?.accuracy_relative,
      accuracy.flow_relative,
      '%',
    ),
    ...judged('thermometer', 'thermometer.accuracy_K', thermometer?.accuracy_K, accuracy.temperature_K, 'K'),
  ]
}

function gaugeAccuracy(
  gauge: TestRecord['pressureGauge'],
  runs: TestRecord['runs'],
  { gauge_Pa, gauge_relative }: NonNullable<MethodLimits['accuracy']>,
): readonly Finding[] {
  const { accuracy_Pa, accuracy_relative } = gauge ?? {}
  if (accuracy_Pa === undefined && accuracy_relative === undefined) return silent
  const field = `pressureGauge.${accuracy_Pa === undefined ? 'accuracy_relative' : 'accuracy_Pa'}`
  // The larger of the two counts, at the highest pressure of the test.
  const highest = Math.max(
    ...runs.flatMap(({ readings }) => readings.map(({ pressure_Pa }) => Math.abs(pressure_Pa))),
  )
  const value = Math.max(accuracy_Pa ?? 0, (accuracy_relative ?? 0) * highest)
  return [
    ...judged('pressure gauge', field, value, gauge_Pa, 'Pa'),
    ...judged('pressure gauge', field, value / highest, gauge_relative, '%'),
  ]
}

function judged(
  instrument: string,
  field: string,
  value: number | undefined,
  limit: Limit | undefined,
  unit: 'Pa' | '%' | 'K',
): readonly Finding[] {
  if (value === undefined || !limit || !exceeds(value, limit.value)) return silent
  return [
    finding(
      'instrument-accuracy',
      { where: [field], source: limit.source, value, limit: limit.value },
      { instrument, unit, value, limit: limit.value },
    ),
  ]
}

/** The pressure is nearly the same in all parts of the building. */
export const evenPressure: Rule = ({ record, method }) => {
  const { evenness: asked } = method.limits
  if (!asked) return silent
  const { value: limit, source } = asked
  return inEach(record.runs, ({ evenness, direction }, run) =>
    inEach(evenness ?? [], ({ testPressure_Pa, places }, i) => {
      const sizes = places.map(({ pressure_Pa }) => pressure_Pa)
      const difference = Math.max(...sizes) - Math.min(...sizes)
      const share = difference / Math.abs(testPressure_Pa)
      if (!exceeds(share, limit)) return silent
      return [
        finding(
          'inside-pressure',
          { where: [`runs[${run}].evenness[${i}]`], source, value: share, limit },
          { direction, difference, test: Math.abs(testPressure_Pa), limit },
        ),
      ]
    }),
  )
}

/** A large building was tested, and nobody read whether its inside pressure was even. */
export const evenPressureNotRead: Rule = ({ record, method }) => {
  const { evenness: asked } = method.limits
  if (!asked || record.building.largeBuilding === undefined) return silent
  if (record.runs.some(({ evenness }) => (evenness ?? []).length > 0)) return silent
  return [
    finding('inside-pressure/not-read', { where: ['runs'], source: asked.source }, { limit: asked.value }),
  ]
}
