import { byRule, Calculation } from '../../engine/index.js'
import { atReferencePressure } from '../../formulas/at-reference-pressure.js'
import type { WorkedRun } from './worked-test.js'

/**
 * A point of a run's fitted curve: induced pressure difference, Pa; envelope flow with its 95 % interval, m³/h. Where
 * the method fits no line there is no scatter of a fit, and the ends are the flow itself.
 */
export interface CurvePoint {
  readonly pressure_Pa: number
  readonly flow_m3_h: number
  readonly lower_m3_h: number
  readonly upper_m3_h: number
}

/** The fitted curve of a run, as measured (before the correction to reference air density), with its fit scatter. */
export function curvePoints({ curve, scatter }: WorkedRun): CurvePoint[] {
  const calculation = new Calculation()
  return curvePressures(curve.column('dp')).map((pressure, i) => {
    const point = calculation.add(`point${i}`, 'point of the curve', atReferencePressure, {
      dp_r: byRule(pressure, 'point of the curve'),
      C_L: curve.ref('C_env'),
      n: curve.ref('n'),
      ...(scatter && { N: curve.ref('N'), xbar: curve.ref('xbar'), S_xx: curve.ref('S_xx') }),
      ...(scatter && { S_n: scatter.ref('S_n'), t_95: scatter.ref('t_95') }),
    })
    return {
      pressure_Pa: pressure,
      flow_m3_h: point.value('q_pr'),
      lower_m3_h: point.value(scatter ? 'q_lo' : 'q_pr'),
      upper_m3_h: point.value(scatter ? 'q_hi' : 'q_pr'),
    }
  })
}

/** Pressures to draw a curve through, Pa: evenly in logarithms, a little beyond the readings and over 50 Pa. */
export function curvePressures(pressures_Pa: Iterable<number>): number[] {
  const all = [...pressures_Pa, 50]
  const from = Math.min(...all) * 0.93
  const to = Math.max(...all) * 1.07
  return Array.from({ length: 17 }, (_, step) => from * (to / from) ** (step / 16))
}
