import { byRule, Calculation, columnOf, exceeds } from '../../engine/index.js'
import { leakageStep } from '../../formulas/leakage-step.js'
import { expectedScatter } from './expected-scatter.js'
import type { LeakageStep, WorkedRun } from './worked-test.js'

/**
 * Chance that a good run is said to have changed, shared by the places looked at: of runs with even scatter by the
 * formula, of 7 200 simulated runs in calm, wind and drift 0.3 %. Runs of both directions have twice that chance together.
 */
const FALSE_ALARM = 0.005
/** Fewest readings before a change and after it. */
const EACH_SIDE = 2
/** Below this the pressures explain the whole step: all readings before it at one pressure, all others at another. */
const EXPLAINED = 1e-9

/** The change that fits a run best, where it stands out from the scatter; its block is added to the calculation. */
export function workLeakageStep(calculation: Calculation, run: WorkedRun): LeakageStep | undefined {
  const { curve, scatter } = run
  if (!scatter) return undefined
  // No step can be larger than all residuals together.
  if (Math.sqrt(scatter.value('SSE')) < expectedScatter.times * expectedScatter.flow) return undefined
  let best: LeakageStep | undefined
  let least = Number.POSITIVE_INFINITY
  for (let from = EACH_SIDE; from <= curve.rows - EACH_SIDE; from += 1) {
    const step = workStep(run, from)
    if (!(step.value('Q_z') > EXPLAINED) || !step.isFinite()) continue
    const left = step.value('SSE_z')
    if (left >= least) continue
    least = left
    best = { run, from, step }
  }
  if (!best || !exceeds(Math.abs(best.step.value('s_z')), best.step.value('l_z'))) return undefined
  calculation.take(best.step)
  return best
}

/** Apart from the calculation of the test: only the best is taken into it. */
function workStep({ curve, direction, index }: WorkedRun, from: number) {
  const word = direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
  const side = Array.from({ length: curve.rows }, (_, row) =>
    byRule(row < from ? 0 : 1, `change looked for before reading ${from + 1}`),
  )
  return new Calculation().add(`run${index + 1}.step`, `${word}: change of the leakage`, leakageStep, {
    x: curve.refColumn('x'),
    y: curve.refColumn('y'),
    dp: curve.refColumn('dp'),
    z: columnOf(side),
    p_f: byRule(FALSE_ALARM, 'chance of a false alarm in a good run'),
    u_f: byRule(expectedScatter.flow, 'scatter expected of a flow'),
    u_p: byRule(expectedScatter.pressure_Pa, 'scatter expected of a pressure difference'),
    k_u: byRule(expectedScatter.times, 'what is worth repeating'),
  })
}
