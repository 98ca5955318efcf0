import type { TestRecord } from '../contract/record/index.js'
import { byRule, type Calculation, columnOf, fromRecord, type Given } from '../engine/index.js'
import type { WorkedRun } from '../evaluation/work/worked-test.js'
import { statedAccuracy, statedShare } from '../formulas/uncertainty-air.js'
import type { DefaultedInput } from './defaults.js'

/**
 * Standard uncertainty of an input from the accuracy that the record states of its instrument; undefined where it states
 * none. It comes before the default and after a value in the record's uncertainty part. An absolute error counts as a
 * share of the mean reading of the test.
 */
export function fromAccuracy(
  calculation: Calculation,
  { flowDevice, pressureGauge, thermometer }: TestRecord,
  runs: readonly WorkedRun[],
  input: DefaultedInput,
): Given | undefined {
  const once = (id: string, make: () => Given) => {
    const known = calculation.find(id)
    return known ? known.ref(known.has('u_a') ? 'u_a' : 'u_l') : make()
  }
  const share = (
    id: string,
    title: string,
    stated: { relative: number | undefined; absolute: number | undefined },
    fields: readonly [relative: string, absolute: string],
    read: 'dp' | 'q_m',
  ): Given | undefined => {
    const { relative, absolute } = stated
    if (relative === undefined && absolute === undefined) return undefined
    const told = (value: number | undefined, field: string) =>
      value === undefined ? byRule(0, 'not stated') : fromRecord(field, value)
    return once(id, () =>
      calculation
        .add(id, title, statedShare, {
          a_r: told(relative, fields[0]),
          a_a: told(absolute, fields[1]),
          v_r: columnOf(runs.flatMap((run) => readingsOf(run, read))),
        })
        .ref('u_l'),
    )
  }
  switch (input) {
    case 'flowCalibration_relative':
      return share(
        'uncertainty.accuracy.device',
        'Accuracy of the flow device',
        { relative: flowDevice?.accuracy_relative, absolute: flowDevice?.accuracy_m3_h },
        ['flowDevice.accuracy_relative', 'flowDevice.accuracy_m3_h'],
        'q_m',
      )
    case 'gaugeSpan_relative':
      return share(
        'uncertainty.accuracy.gauge',
        'Accuracy of the pressure gauge',
        { relative: pressureGauge?.accuracy_relative, absolute: pressureGauge?.accuracy_Pa },
        ['pressureGauge.accuracy_relative', 'pressureGauge.accuracy_Pa'],
        'dp',
      )
    case 'indoorTemperature_K':
    case 'outdoorTemperature_K': {
      const accuracy = thermometer?.accuracy_K
      if (accuracy === undefined) return undefined
      const id = 'uncertainty.accuracy.thermometer'
      return once(id, () =>
        calculation
          .add(id, 'Accuracy of the thermometer', statedAccuracy, {
            a_u: fromRecord('thermometer.accuracy_K', accuracy),
          })
          .ref('u_a'),
      )
    }
    default:
      return undefined
  }
}

/** Induced pressure differences or flows of a run, one by one. */
function readingsOf({ curve }: WorkedRun, symbol: 'dp' | 'q_m'): Given[] {
  const column = symbol === 'dp' ? curve.refColumn('dp') : curve.input('q_m')
  if (!column || !('values' in column)) throw new RangeError(`the curve has no column ${symbol}`)
  return [...column.values].map((value, row) => ({ value, origin: column.origin(row) }))
}
