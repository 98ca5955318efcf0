import { constantValue } from '../../catalogue/constants.js'
import { RECORD_FORMAT_3, type Run, type TestRecord } from '../../contract/record/index.js'
import { assumed, type BlockOf, byRule, Calculation, inputsBySymbol } from '../../engine/index.js'
import { workAir } from '../../evaluation/work/air.js'
import { refuseWrongSide } from '../../evaluation/work/curve-faults.js'
import { basesOf } from '../../evaluation/work/derived.js'
import { type RunSurroundings, workRun } from '../../evaluation/work/run.js'
import { ASSUMED_EXPONENT, type UnfinishedTest } from '../../evaluation/work/running-estimate.js'
import { workReadings } from '../../evaluation/work/work-readings.js'
import type { WorkedRun } from '../../evaluation/work/worked-test.js'
import { moistAir } from '../../formulas/air.js'
import { assumedExponentCurve } from '../../formulas/assumed-exponent.js'
import { atReferencePressure } from '../../formulas/at-reference-pressure.js'
import { leakageCurve } from '../../formulas/leakage-curve.js'
import { standardAir } from '../../formulas/standard-air.js'
import type { Method } from '../../methods/method.js'

/** Temperature taken on both sides while none is logged, °C: then densities do not matter. */
const ASSUMED_TEMPERATURE_C = 20

/** Standard uncertainties of that temperature. Common practice, no source: lived-in rooms, and any season of a mild climate. */
const UNKNOWN_INDOORS_K = 3
const UNKNOWN_OUTDOORS_K = 8

const densityOfLeaks = new Set(['rho_x'])

/** What stands around an unfinished run. */
export function surroundings(
  unfinished: UnfinishedTest,
  method: Method,
): RunSurroundings & { densityAssumed: boolean } {
  const calculation = new Calculation()
  const { building, conditions } = unfinished
  const record = recordOf(unfinished)
  const known = conditions.indoorTemperature_C !== undefined && conditions.outdoorTemperature_C !== undefined
  const air = known
    ? workAir(calculation, { ...record, building: record.building, conditions: record.conditions })
    : { indoor: still(calculation, 'indoor'), outdoor: still(calculation, 'outdoor') }
  return {
    calculation,
    record: { ...record, building: { ...record.building, ...building } },
    bases: basesOf({ building }),
    method,
    ...air,
    referencePressures: [50],
    areaPressures: new Set(),
    derivedPressures: new Set([50]),
    densityAssumed: !known,
  }
}

function still(calculation: Calculation, side: string): BlockOf<typeof moistAir> {
  return calculation.add(`air.${side}`, `Air ${side}, assumed`, moistAir, {
    theta: assumed(ASSUMED_TEMPERATURE_C, 'assumed-density'),
    phi: assumed(0, 'assumed-density'),
    p_bar: assumed(constantValue('p_0'), 'assumed-density'),
  })
}

/** The unfinished test in the shape that the work on runs reads; it is not a record and is never published. */
function recordOf({
  building,
  conditions,
  flowDevice,
  pressureGauge,
  uncertainty,
  run,
}: UnfinishedTest): TestRecord {
  return {
    format: RECORD_FORMAT_3,
    building: { name: '', ...building },
    test: { date: '', method: '' },
    conditions: {
      indoorTemperature_C: ASSUMED_TEMPERATURE_C,
      outdoorTemperature_C: ASSUMED_TEMPERATURE_C,
      ...conditions,
    },
    ...(flowDevice && { flowDevice }),
    ...(pressureGauge && { pressureGauge }),
    uncertainty: {
      ...(conditions.indoorTemperature_C === undefined && { indoorTemperature_K: UNKNOWN_INDOORS_K }),
      ...(conditions.outdoorTemperature_C === undefined && { outdoorTemperature_K: UNKNOWN_OUTDOORS_K }),
      ...uncertainty,
    },
    runs: [run],
  }
}

/** A run with enough readings for a fit. Throws InputError where no line can be put through them. */
export const fitRun = (around: RunSurroundings, run: Run): WorkedRun => workRun(around, run, 0)

/** One or two readings, with the exponent assumed. */
export interface AssumedRun {
  readonly curve: BlockOf<typeof leakageCurve>
  readonly rate: BlockOf<typeof atReferencePressure>
}

/** Puts a curve of the assumed exponent through the mean of the readings. Throws InputError for a reading on the wrong side of zero. */
export function assumeRun({ calculation, record, indoor, outdoor }: RunSurroundings, run: Run): AssumedRun {
  const blowingOut = run.direction === 'depressurisation'
  const [inDevice, inLeaks] = (blowingOut ? [indoor, outdoor] : [outdoor, indoor]).map((air) =>
    air.ref('rho'),
  )
  if (!inDevice || !inLeaks) throw new RangeError('air has two sides')
  const path = 'runs[0]'
  const { given } = workReadings(calculation, {
    run,
    path,
    id: 'run1',
    word: run.direction,
    flowDevice: record.flowDevice,
    inDevice,
    inLeaks,
  })
  const curve = calculation.add('run1.curve', 'readings so far', leakageCurve, given)
  refuseWrongSide(curve, run, path)
  const n_a = assumed(ASSUMED_EXPONENT, 'assumed-exponent')
  const line = calculation.add('run1.assumed', 'assumed exponent', assumedExponentCurve, {
    xbar: curve.ref('xbar'),
    ybar: curve.ref('ybar'),
    n_a,
  })
  const standard = calculation.addInputs(
    'run1.standard',
    'reference air density',
    standardAir,
    inputsBySymbol(standardAir, { symbols: densityOfLeaks, of: () => inLeaks }, [line]),
  )
  const rate = calculation.add('run1.at50', 'at 50 Pa', atReferencePressure, {
    dp_r: byRule(50, 'reference pressure'),
    C_L: standard.ref('C_L'),
    n: line.ref('n'),
  })
  return { curve, rate }
}
