import { type BlockOf, byRule, Calculation, columnFromRecord } from '../../../shared-calc/src/engine/index.js'
import { atReferencePressure } from '../../../shared-calc/src/formulas/at-reference-pressure.js'
import { fitScatter } from '../../../shared-calc/src/formulas/confidence.js'
import { leakageCurve } from '../../../shared-calc/src/formulas/leakage-curve.js'
import { chapterFrom } from '../../shared-calc/sheet/support/run-script'

// The project's own formulas of the straight line, taken as they stand, but given x and y instead of the
// logarithms of pressures and flows: so that published straight lines can be put through them.
const fitted = new Set(['x', 'y', 'N', 'xbar', 'ybar', 'S_xx', 'S_yy', 'S_xy', 'n', 'lnC', 'r_2', 'e'])
const ofCurve = leakageCurve.steps.filter(({ symbol }) => fitted.has(symbol))
const straightLine = chapterFrom({
  title: 'straight line',
  inputs: ofCurve
    .filter(({ symbol }) => symbol === 'x' || symbol === 'y')
    .map(({ symbol, name, unit }) => ({ symbol, name, unit, rows: true })),
  formulas: ofCurve.filter(({ symbol }) => symbol !== 'x' && symbol !== 'y'),
})

/** A straight line through (x, y) by the project's own formulas; two points are enough. */
export function ownBareLine(
  x: readonly number[],
  y: readonly number[],
  calculation = new Calculation(),
): BlockOf<typeof straightLine> {
  return calculation.add('line', 'line', straightLine, {
    x: columnFromRecord(x, (i) => `x[${i}]`),
    y: columnFromRecord(y, (i) => `y[${i}]`),
  })
}

/** The same with its standard errors, from three points on. */
export function ownLine(x: readonly number[], y: readonly number[]) {
  const calculation = new Calculation()
  const line = ownBareLine(x, y, calculation)
  const scatter = calculation.add('scatter', 'scatter', fitScatter, {
    x: columnFromRecord(x, (i) => `x[${i}]`),
    e: line.refColumn('e'),
    N: line.ref('N'),
    xbar: line.ref('xbar'),
    S_xx: line.ref('S_xx'),
    n: line.ref('n'),
    lnC: line.ref('lnC'),
  })
  let points = 0
  return {
    slope: line.value('n'),
    intercept: line.value('lnC'),
    rSquared: line.value('r_2'),
    standardErrorOfSlope: scatter.value('S_n'),
    standardErrorOfIntercept: scatter.value('S_lnC'),
    /** √(SSE/(N − 2)). */
    residualStandardDeviation: Math.sqrt(scatter.value('SSE') / (x.length - 2)),
    /** Value on the line, its standard error and its 95 % interval at x: the formulas work at ln Δp = x. */
    at(where: number) {
      points += 1
      const point = calculation.add(`at${points}`, 'at', atReferencePressure, {
        dp_r: byRule(Math.exp(where), 'where the line is asked for'),
        C_L: byRule(Math.exp(line.value('lnC')), 'intercept'),
        n: line.ref('n'),
        N: line.ref('N'),
        xbar: line.ref('xbar'),
        S_xx: line.ref('S_xx'),
        S_n: scatter.ref('S_n'),
        t_95: scatter.ref('t_95'),
      })
      return {
        value: Math.log(point.value('q_pr')),
        standardError: point.value('S_y'),
        interval: [Math.log(point.value('q_lo')), Math.log(point.value('q_hi'))] as const,
      }
    },
  }
}
