import type { Block } from '../../engine/index.js'
import type { RunUncertainty } from '../../uncertainty/run-sensitivity.js'
import { BATCH } from './batch-value.js'
import type { Random } from './random.js'
import type { Handle, Replay } from './replay.js'

/** What all runs of a test share, one value a draw. */
export interface SharedDraws {
  /** Relative error of the flow calibration. */
  readonly flows: Float64Array
  /** Relative error of the flows in other ranges than that of most readings, against it. */
  readonly flowsOfOtherRanges: Float64Array
  /** How much of the change applies that another meaning of the typed flows would make. */
  readonly meaningOfFlows: Float64Array
  /** Relative error of the span of the gauge. */
  readonly span: Float64Array
  /** Shift of the mean pressure over the openings, Pa (inside − outside). */
  readonly pressureShift: Float64Array
  /** Its variance over the openings, Pa². */
  readonly pressureVariance: Float64Array
  /** Curvature of ln q against ln Δp: second derivative. */
  readonly curvature: Float64Array
}

/**
 * Where the curved law and the line drawn through its readings are made to touch. The figures are carried back from
 * there along the curve, so that the choice changes nothing.
 */
export const CURVE_TOUCHES_AT_Pa = 50

/** Fills the readings of one run for a batch of draws. */
export type PerturbRun = (shared: SharedDraws, random: Random) => void

/**
 * Prepares the errors of one run: its zero-flow pressure and the scatter of its readings, with what is shared.
 * Scatter is drawn as the budget counts it.
 */
export function perturbRun(replay: Replay, uncertainty: RunUncertainty): PerturbRun {
  const { run, zeroFlow, readings, otherRanges, sensitivityAt } = uncertainty
  const { curve } = run
  const sensitivity = sensitivityAt(SCATTER_JUDGED_AT_Pa)
  // A line through the readings shows what the pressure scattered beyond expectation; repeated readings, the flow.
  const v_g = sensitivity.has('v_g') ? sensitivity.value('v_g') : 0
  const found = v_g === 0 && sensitivity.value('u_s') > sensitivity.value('u_b')
  const n = curve.value('n')
  const sign = curve.value('sign')
  const zero = curve.value('dp_0')
  const u_0 = zeroFlow.value('u_0')
  const change = run.flows.otherMeaning?.value ?? 0
  const direction = run.direction === 'depressurisation' ? -1 : 1
  const s_e = found ? sensitivity.value('s_e') : 0
  const rows = Array.from(curve.column('dp'), (induced, row) => ({
    induced,
    pressure: replay.handle(curve.id, 'dp_m', row)?.draws,
    flows: flowHandles(replay, curve, row),
    pressureNoise: found
      ? 0
      : Math.hypot(readings.pressures.column('u_x')[row] as number, Math.sqrt(v_g) / induced),
    flowNoise: found ? s_e : (readings.flows.values[row] as number),
    other: otherRanges?.values[row] ?? 0,
    spread: (n * (n - 1)) / (2 * induced * induced),
    bend: Math.log(induced / CURVE_TOUCHES_AT_Pa) ** 2 / 2,
  }))
  const offset = new Float64Array(BATCH)
  const factor = new Float64Array(BATCH)
  return (
    {
      flows: calibration,
      flowsOfOtherRanges,
      meaningOfFlows,
      span,
      pressureShift,
      pressureVariance,
      curvature,
    },
    { normal },
  ) => {
    for (let i = 0; i < BATCH; i += 1)
      offset[i] = direction * (pressureShift[i] as number) - sign * u_0 * normal()
    for (const { induced, pressure, flows, pressureNoise, flowNoise, other, spread, bend } of rows) {
      if (pressure) {
        const base = zero + sign * induced
        const scale = sign * induced
        for (let i = 0; i < BATCH; i += 1)
          pressure[i] = base + scale * (span[i] as number) + sign * (offset[i] as number)
        if (pressureNoise > 0) {
          const noise = scale * pressureNoise
          for (let i = 0; i < BATCH; i += 1) pressure[i] = (pressure[i] as number) + noise * normal()
        }
      }
      for (let i = 0; i < BATCH; i += 1)
        // Causes that act one way only are subtracted from the readings, to give the true values behind them.
        factor[i] = Math.exp(
          (calibration[i] as number) +
            other * (flowsOfOtherRanges[i] as number) +
            change * (meaningOfFlows[i] as number) -
            spread * (pressureVariance[i] as number) -
            bend * (curvature[i] as number) +
            flowNoise * normal(),
        )
      for (const { nominal, draws } of flows)
        for (let i = 0; i < BATCH; i += 1) draws[i] = nominal * (factor[i] as number)
    }
  }
}

const SCATTER_JUDGED_AT_Pa = 50

/** What to scale so that the flow of a reading scales: the logged flow, or the coefficient behind each device. */
function flowHandles(replay: Replay, block: Block<string>, row: number, symbol = 'q_m'): readonly Handle[] {
  const given = block.input(symbol)
  const origin = given && 'values' in given ? given.origin(row) : undefined
  if (origin?.kind !== 'block') return present(replay.handle(block.id, symbol, row))
  const from = replay.block(origin.block)
  if (from.has('c_d')) return present(replay.handle(from.id, 'c_d', origin.row ?? 0))
  // A flow typed for other air than it is counted for.
  if (from.has('q_s')) return present(replay.handle(from.id, 'q_s', origin.row ?? 0))
  return Array.from({ length: from.rows }, (_, each) => flowHandles(replay, from, each, 'q_j')).flat()
}

const present = (handle: Handle | undefined): Handle[] => (handle ? [handle] : [])
