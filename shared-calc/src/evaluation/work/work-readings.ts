import type { FlowDevice, Run } from '../../contract/record/index.js'
import { byRule, type Calculation, type Column, columnFromRecord, type Given } from '../../engine/index.js'
import { type WorkedFlows, workFlows } from './device-flow.js'
import { workZeroFlow, type ZeroFlow } from './zero-flow.js'

/** A run with what its readings need to be understood. */
export interface LoggedRun {
  readonly run: Run
  /** Its place in the record. */
  readonly path: string
  /** Start of the ids of its blocks. */
  readonly id: string
  /** The direction, as block titles begin. */
  readonly word: string
  readonly flowDevice: FlowDevice | undefined
  /** Densities of the air that passes the device and of the air that passes the leaks. */
  readonly inDevice: Given
  readonly inLeaks: Given
  /** Whether the method takes flows for reference air. */
  readonly nominal?: boolean
}

/** What every curve is made from: readings, zero-flow pressures, densities. */
export interface WorkedReadings {
  readonly zero: ZeroFlow
  readonly flows: WorkedFlows
  readonly given: {
    readonly dp_m: Column
    readonly q_m: Column
    readonly sign: Given
    readonly dp_01: Given
    readonly dp_02: Given
    readonly rho_d: Given
    readonly rho_x: Given
  }
}

/** The sign with which most of a run's pressures were logged; the direction itself is a word in the record. */
export function loggedSign(run: Run): 1 | -1 {
  let negative = 0
  for (const { pressure_Pa } of run.readings) if (pressure_Pa < 0) negative += 1
  return negative * 2 > run.readings.length ? -1 : 1
}

/**
 * The readings of a run made ready for a curve: flows through the device, zero-flow means, densities.
 * @throws InputError when a reading names a range that the device lacks, or one without its coefficients
 */
export function workReadings(calculation: Calculation, logged: LoggedRun): WorkedReadings {
  const { run, path, id, word, flowDevice: device, inDevice, inLeaks, nominal = false } = logged
  const zero = workZeroFlow(calculation, id, word, run, path)
  const title = `${word}: flow through the device`
  const flows = workFlows(calculation, `${id}.device`, title, {
    run,
    path,
    device,
    density: inDevice,
    nominal,
  })
  const pressures = run.readings.map(({ pressure_Pa }) => pressure_Pa)
  return {
    zero,
    flows,
    given: {
      dp_m: columnFromRecord(pressures, (row) => `${path}.readings[${row}].pressure_Pa`),
      q_m: flows.flows,
      sign: byRule(loggedSign(run), 'sign with which the pressures of this run were logged'),
      dp_01: zero.meanBefore,
      dp_02: zero.meanAfter,
      rho_d: inDevice,
      rho_x: inLeaks,
    },
  }
}

/**
 * Which readings belong to the upper of two stations: 1 above the geometric mean of the lowest and the highest
 * pressure, else 0. Only chapters of two-point methods ask for it.
 */
export function upperStation(pressures_Pa: readonly number[]): Column {
  const sizes = pressures_Pa.map(Math.abs)
  const middle = Math.sqrt(Math.min(...sizes) * Math.max(...sizes))
  return {
    values: sizes.map((size) => (size > middle ? 1 : 0)),
    origin: () => ({ kind: 'rule', reason: 'station to which the reading belongs' }),
  }
}
