import { atReferencePressure } from '../formulas/at-reference-pressure.js'
import { fitScatter, studentisedResiduals } from '../formulas/confidence.js'
import { leakageCurve } from '../formulas/leakage-curve.js'
import { lowestPressure } from '../formulas/limits.js'
import { standardAir } from '../formulas/standard-air.js'
import type { Method } from '../methods/method.js'
import type { Run, TestRecord } from '../record/index.js'
import { type Block, byRule, type Calculation, columnFromRecord, columnOf } from '../sheet/index.js'
import { refuseUnusableCurve, refuseWrongSide } from './curve-faults.js'
import { workDerived } from './derived.js'
import { workFlows } from './device-flow.js'
import type { AtPressure, WorkedRun } from './worked-test.js'
import { workZeroFlow, type ZeroFlow } from './zero-flow.js'

export interface RunSurroundings {
  readonly calculation: Calculation
  readonly record: TestRecord
  readonly method: Method
  readonly indoor: Block
  readonly outdoor: Block
  readonly referencePressures: readonly number[]
  /** Reference pressures at which rates per volume and area are reported. */
  readonly derivedPressures: ReadonlySet<number>
}

/** The sign with which most of a run's pressures were logged; the direction itself is a word in the record. */
export function loggedSign(run: Run): 1 | -1 {
  let negative = 0
  for (const { pressure_Pa } of run.readings) if (pressure_Pa < 0) negative += 1
  return negative * 2 > run.readings.length ? -1 : 1
}

/** Works out one run, from its readings to the leakage rates at every reference pressure asked for. */
export function workRun(around: RunSurroundings, run: Run, index: number): WorkedRun {
  const { calculation, record, method, indoor, outdoor } = around
  const id = `run${index + 1}`
  const path = `runs[${index}]`
  const word = run.direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
  const blowingOut = run.direction === 'depressurisation'
  const inDevice = (blowingOut ? indoor : outdoor).ref('rho')
  const inLeaks = (blowingOut ? outdoor : indoor).ref('rho')

  const zero = workZeroFlow(calculation, id, word, run, path)
  const { flows, device } = workFlows(
    calculation,
    `${id}.device`,
    `${word}: flow through the device`,
    { run, path },
    record.flowDevice,
    inDevice,
  )
  const curve = calculation.add(`${id}.curve`, `${word}: leakage curve`, leakageCurve, {
    dp_m: columnFromRecord(
      run.readings.map(({ pressure_Pa }) => pressure_Pa),
      (row) => `${path}.readings[${row}].pressure_Pa`,
    ),
    q_m: flows,
    sign: byRule(loggedSign(run), 'sign with which the pressures of this run were logged'),
    dp_01: zero.meanBefore,
    dp_02: zero.meanAfter,
    rho_d: inDevice,
    rho_x: inLeaks,
  })
  refuseWrongSide(curve, run, path)
  const residual = curve.refColumn('e')
  const scatter = calculation.add(`${id}.scatter`, `${word}: scatter of the fit`, fitScatter, {
    x: curve.refColumn('x'),
    e: residual,
    N: curve.ref('N'),
    xbar: curve.ref('xbar'),
    S_xx: curve.ref('S_xx'),
    n: curve.ref('n'),
    lnC: curve.ref('lnC'),
  })
  const standard = calculation.add(`${id}.standard`, `${word}: reference air density`, standardAir, {
    C_env: curve.ref('C_env'),
    C_lo: scatter.ref('C_lo'),
    C_hi: scatter.ref('C_hi'),
    n: curve.ref('n'),
    rho_x: inLeaks,
  })
  const residuals = canJudgeResiduals(scatter)
    ? calculation.add(`${id}.residuals`, `${word}: residuals`, studentisedResiduals, {
        e: residual,
        d_e: scatter.refColumn('d_e'),
        N: curve.ref('N'),
      })
    : undefined
  const at = new Map<number, AtPressure>()
  for (const pressure of around.referencePressures) {
    const rate = calculation.add(`${id}.at${pressure}`, `${word}: at ${pressure} Pa`, atReferencePressure, {
      dp_r: byRule(pressure, 'reference pressure'),
      C_L: standard.ref('C_L'),
      n: curve.ref('n'),
      N: curve.ref('N'),
      xbar: curve.ref('xbar'),
      S_xx: curve.ref('S_xx'),
      S_n: scatter.ref('S_n'),
      t_95: scatter.ref('t_95'),
    })
    refuseUnusableCurve(rate, curve, path)
    const derived = around.derivedPressures.has(pressure)
      ? workDerived(
          calculation,
          `${id}.at${pressure}.rates`,
          `${word}: derived at ${pressure} Pa`,
          record,
          rate,
          true,
        )
      : undefined
    at.set(pressure, derived ? { rate, derived } : { rate })
  }
  const lowest = workLowest(calculation, id, word, method, zero)
  return {
    direction: run.direction,
    index,
    ...(zero.before && { before: zero.before }),
    ...(zero.after && { after: zero.after }),
    ...(device && { device }),
    curve,
    scatter,
    ...(residuals && { residuals }),
    standard,
    ...(lowest && { lowest }),
    at,
  }
}

/**
 * Whether each reading can be set against the line through the others: at least four readings, and a scatter
 * that is more than rounding. A reading without which the fit were perfect has no finite residual (rule `outlier`).
 */
function canJudgeResiduals(scatter: Block): boolean {
  const squares = scatter.value('SSE')
  if (scatter.rows < 4 || squares <= 1e-24 * scatter.rows) return false
  return scatter.column('d_e').every((left) => left > 1e-9 * squares)
}

export function workLowest(
  calculation: Calculation,
  id: string,
  word: string,
  method: Method,
  zero: ZeroFlow,
): Block | undefined {
  const means = [zero.before, zero.after].flatMap((block) =>
    block ? [block.ref('dp_plus'), block.ref('dp_minus')] : [],
  )
  if (means.length === 0) return undefined
  return calculation.add(`${id}.lowest`, `${word}: lowest pressure to use`, lowestPressure, {
    dp_floor: byRule(method.limits.lowestPressure_Pa.value, 'lowest pressure difference of the method'),
    k_z: byRule(method.limits.zeroFlowMultiple.value, 'multiple of the zero-flow pressure'),
    dp_s: columnOf(means),
  })
}
