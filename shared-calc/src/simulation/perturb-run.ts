import type { Block } from '../sheet/index.js'
import type { RunUncertainty } from '../uncertainty/run-sensitivity.js'
import type { Random } from './random.js'
import type { Handle, Replay } from './replay.js'

/** What all runs of a test share in one draw. */
export interface SharedDraw {
  /** Logarithm of the error of the flow calibration. */
  flow: number
  /** Relative error of the span of the gauge. */
  span: number
  /** Shift of the mean pressure round the envelope, Pa (inside − outside). */
  windShift: number
  /** Its variance round the envelope, Pa². */
  windVariance: number
}

/** Changes the readings of one run by one draw. */
export type PerturbRun = (shared: SharedDraw, random: Random) => void

/**
 * Prepares the errors of one run: its zero-flow pressure and the scatter of its readings, with what is shared.
 * Scatter is drawn as the budget counts it: as found by the fit, or as expected, whichever is larger at 50 Pa.
 */
export function perturbRun(
  replay: Replay,
  { run, zeroFlow, readings, flowReading, sensitivityAt }: RunUncertainty,
): PerturbRun {
  const { curve } = run
  const sensitivity = sensitivityAt(SCATTER_JUDGED_AT_Pa)
  const found = sensitivity.value('u_s') > sensitivity.value('u_b')
  const rows = curve.rows
  const n = curve.value('n')
  const sign = curve.value('sign')
  const zero = curve.value('dp_0')
  const u_0 = zeroFlow.value('u_0')
  const direction = run.direction === 'depressurisation' ? -1 : 1
  const dp = curve.column('dp')
  const u_x = readings.column('u_x')
  const u_y = flowReading.value
  const s_e = sensitivity.value('s_e')
  const weight = curve.has('w') ? curve.column('w') : undefined
  const pressures = Array.from({ length: rows }, (_, row) => replay.handle(curve.id, 'dp_m', row))
  const flows = Array.from({ length: rows }, (_, row) => flowHandles(replay, curve, row))
  return (shared, random) => {
    const offset = -sign * u_0 * random.normal() + direction * shared.windShift
    const scale = 1 + shared.span
    for (let row = 0; row < rows; row += 1) {
      const induced = dp[row] as number
      const noise = found ? 0 : (u_x[row] as number) * random.normal()
      const pressure = induced * (scale + noise) + offset
      pressures[row]?.set(zero + sign * pressure)
      const scatter = found ? s_e / Math.sqrt(weight ? (weight[row] as number) : 1) : u_y
      const spread = (n * (n - 1) * shared.windVariance) / (2 * induced * induced)
      const factor = Math.exp(shared.flow + spread + scatter * random.normal())
      for (const handle of flows[row] as readonly Handle[]) handle.set(handle.nominal * factor)
    }
  }
}

const SCATTER_JUDGED_AT_Pa = 50

/** What to scale so that the flow of a reading scales: the logged flow, or the coefficient behind each device. */
function flowHandles(replay: Replay, block: Block, row: number, symbol = 'q_m'): readonly Handle[] {
  const given = block.bindings[symbol]
  const origin = given && 'values' in given ? given.origin(row) : undefined
  if (origin?.kind !== 'block') return present(replay.handle(block.id, symbol, row))
  const from = replay.block(origin.block)
  if (from.has('c_d')) return present(replay.handle(from.id, 'c_d', origin.row ?? 0))
  return Array.from({ length: from.rows }, (_, each) => flowHandles(replay, from, each, 'q_j')).flat()
}

const present = (handle: Handle | undefined): Handle[] => (handle ? [handle] : [])
