import { describe, expect, it } from 'vitest'
import { type Block, byRule, Calculation, type Column } from '../../shared-calc/src/engine/index.js'
import { atReferencePressure } from '../../shared-calc/src/formulas/at-reference-pressure.js'
import { fitScatter, weightedFitScatter } from '../../shared-calc/src/formulas/confidence.js'
import { organicLine } from '../../shared-calc/src/formulas/fit-organic.js'
import { leakageCurve, weightedLeakageCurve } from '../../shared-calc/src/formulas/leakage-curve.js'
import { fitBothErrors } from '../../shared-calc/src/uncertainty/fits/both-errors.js'
import gumH3 from '../references/gum-h3.json'
import york from '../references/pearson-york.json'
import rma from '../references/reduced-major-axis.json'
import { expectPrinted } from '../support/expect-printed'
import { minimise } from './minimise'

const column = (values: readonly number[]): Column => ({
  values: values,
  origin: () => ({ kind: 'rule', reason: 'test' }),
})
const given = (value: number) => byRule(value, 'test')

/** Least squares through x and y by the chapters of the leakage curve: their logarithms are what it is given. */
function leastSquares(x: readonly number[], y: readonly number[], chapter = leakageCurve): Block<string> {
  return new Calculation().add('curve', 'curve', chapter, {
    dp_m: column(x.map(Math.exp)),
    q_m: column(y.map(Math.exp)),
    sign: given(1),
    dp_01: given(0),
    dp_02: given(0),
    rho_d: given(1.2041),
    rho_x: given(1.2041),
  })
}

function scatterOf(curve: Block<string>, chapter = fitScatter): Block<string> {
  const scalar = (symbol: string) => given(curve.value(symbol))
  return new Calculation().add('scatter', 'scatter', chapter, {
    x: curve.refColumn('x'),
    e: curve.refColumn('e'),
    ...(curve.has('w') && { w: curve.refColumn('w') }),
    N: scalar('N'),
    xbar: scalar('xbar'),
    S_xx: scalar('S_xx'),
    n: scalar('n'),
    lnC: scalar('lnC'),
  })
}

const equal = (count: number) => column(Array.from({ length: count }, () => 0.01))

describe('ordinary least squares', () => {
  it('gives the line, its standard errors and its prediction at 30 °C of JCGM 100:2008, H.3', () => {
    const x = gumH3.temperature_C.map((t) => t - gumH3.referenceTemperature_C)
    const curve = leastSquares(x, gumH3.correction_C)
    const scatter = scatterOf(curve)
    expectPrinted(curve.value('lnC'), gumH3.published.y1)
    expectPrinted(curve.value('n'), gumH3.published.y2)
    expectPrinted(scatter.value('S_lnC'), gumH3.published.u_y1)
    expectPrinted(scatter.value('S_n'), gumH3.published.u_y2)
    const covariance = -curve.value('xbar') * scatter.value('S_n') ** 2
    expectPrinted(covariance / (scatter.value('S_n') * scatter.value('S_lnC')), gumH3.published.correlation)
    const at30 = new Calculation().add('at', 'at', atReferencePressure, {
      dp_r: given(Math.exp(30 - gumH3.referenceTemperature_C)),
      C_L: given(Math.exp(curve.value('lnC'))),
      n: given(curve.value('n')),
      N: given(curve.value('N')),
      xbar: given(curve.value('xbar')),
      S_xx: given(curve.value('S_xx')),
      S_n: given(scatter.value('S_n')),
      t_95: given(scatter.value('t_95')),
    })
    expectPrinted(Math.log(at30.value('q_pr')), gumH3.published.b30)
    expectPrinted(at30.value('S_y'), gumH3.published.u_b30)
  })
})

describe('weighted least squares with errors in both variables', () => {
  const points = {
    x: column(york.x),
    y: column(york.y),
    u_x: column(york.weightX.map((w) => 1 / Math.sqrt(w))),
    u_y: column(york.weightY.map((w) => 1 / Math.sqrt(w))),
  }
  const fitted = (start: number) => fitBothErrors(new Calculation(), 'york', 'York', points, start)

  it("gives Pearson's data with York's weights as York et al. 2004, table II, print it", () => {
    const line = fitted(-0.5)
    expectPrinted(line?.value('lnC') ?? Number.NaN, york.published.intercept)
    expectPrinted(line?.value('n') ?? Number.NaN, york.published.slope)
    expectPrinted(line?.value('u_lnC') ?? Number.NaN, york.published.u_intercept)
    expectPrinted(line?.value('u_n') ?? Number.NaN, york.published.u_slope)
    expectPrinted(line?.value('chi_r') ?? Number.NaN, york.published.reducedChiSquare)
  })

  it('settles on the same line from a bad start, and shows that the slope reproduces itself', () => {
    const [near, far] = [fitted(-0.5), fitted(-3)]
    expect(far?.value('n')).toBeCloseTo(near?.value('n') ?? Number.NaN, 12)
    expect(Math.abs(far?.value('n_d') ?? 1)).toBeLessThan(1e-12)
  })

  it('lies where a brute-force search finds the least weighted squares', () => {
    const squares = (a: number, b: number) =>
      york.x.reduce(
        (sum, x, i) =>
          sum +
          ((york.y[i] ?? 0) - a - b * x) ** 2 /
            (1 / (york.weightY[i] ?? 0) + b ** 2 / (york.weightX[i] ?? 0)),
        0,
      )
    const [a, b] = minimise(squares, [5, -0.4], [2, 0.5])
    expect(fitted(-0.5)?.value('lnC')).toBeCloseTo(a, 5)
    expect(fitted(-0.5)?.value('n')).toBeCloseTo(b, 6)
  })
})

describe('weighted line of organic correlation', () => {
  const line = (x: readonly number[], y: readonly number[], u_x: Column, u_y: Column) =>
    new Calculation().add('line', 'line', organicLine, { x: column(x), y: column(y), u_x, u_y })

  it('is the reduced major axis of Sokal and Rohlf, box 14.12, where all weights are equal', () => {
    const { x, y, published } = rma
    const organic = line(x, y, equal(x.length), equal(x.length))
    expectPrinted(organic.value('n'), published.slope)
    expectPrinted(organic.value('lnC'), published.intercept)
    // Printed there beside the reduced major axis are the standard errors of ordinary least squares.
    const curve = leastSquares(
      x,
      y.map((v) => v / 10),
    )
    const scatter = scatterOf(curve)
    expectPrinted(scatter.value('S_n') * 10, published.se_slope)
    expectPrinted(scatter.value('S_lnC') * 10, published.se_intercept)
    expectPrinted(curve.value('r_2'), published.rSquared)
    // The printed interval was made with a t of 2.262158 where 2.262157 is right: six digits agree.
    const lower = organic.value('n') - scatter.value('t_95') * scatter.value('S_n') * 10
    expect(lower).toBeCloseTo(Number(published.slopeInterval[0]), 6)
  })

  const x = [2.5, 2.9, 3.2, 3.5, 3.8, 4.1, 4.2]
  const y = [6.28, 6.51, 6.74, 6.91, 7.13, 7.29, 7.4]
  const u_x = [0.05, 0.03, 0.022, 0.016, 0.011, 0.008, 0.008]
  const u_y = [0.01, 0.02, 0.01, 0.012, 0.01, 0.02, 0.01]

  it('lies where a brute-force search finds the least weighted area of triangles', () => {
    const area = (a: number, b: number) =>
      x.reduce((sum, xi, i) => sum + ((y[i] ?? 0) - a - b * xi) ** 2 / (b * (u_x[i] ?? 0) * (u_y[i] ?? 0)), 0)
    const [a, b] = minimise(area, [4.5, 0.6], [1, 0.3])
    const organic = line(x, y, column(u_x), column(u_y))
    expect(organic.value('n')).toBeCloseTo(b, 6)
    expect(organic.value('lnC')).toBeCloseTo(a, 5)
  })

  it('moves with each reading as its sensitivities say (central differences)', () => {
    const organic = line(x, y, column(u_x), column(u_y))
    const moved = (dx: number, dy: number, i: number) =>
      line(
        x.map((v, k) => (k === i ? v + dx : v)),
        y.map((v, k) => (k === i ? v + dy : v)),
        column(u_x),
        column(u_y),
      )
    const h = 1e-6
    for (let i = 0; i < x.length; i += 1)
      for (const [symbol, result, dx, dy] of [
        ['d_ny', 'n', 0, h],
        ['d_nx', 'n', h, 0],
        ['d_Cy', 'lnC', 0, h],
        ['d_Cx', 'lnC', h, 0],
      ] as const) {
        const slope = (moved(dx, dy, i).value(result) - moved(-dx, -dy, i).value(result)) / (2 * h)
        expect(organic.column(symbol)[i], `${symbol} of reading ${i + 1}`).toBeCloseTo(slope, 7)
      }
  })
})

describe('the fit weighted by flow squared', () => {
  // Readings invented; R 4.2.2: lm(log(q) ~ log(dp), weights = q^2) on them.
  const dp = [62.4, 55.1, 47.8, 40.3, 32.9, 25.2, 17.6, 11.3].map(Math.log)
  const q = [1562, 1441, 1318, 1174, 1034, 868, 690, 512].map(Math.log)
  const curve = leastSquares(dp, q, weightedLeakageCurve)
  const scatter = scatterOf(curve, weightedFitScatter)

  it('gives line, standard errors and intervals as R does', () => {
    expect(curve.value('n')).toBeCloseTo(0.648960851167857, 10)
    expect(curve.value('C_env')).toBeCloseTo(106.901946862703, 7)
    expect(curve.value('r_2')).toBeCloseTo(0.999933519500242, 11)
    expect(scatter.value('S_n')).toBeCloseTo(0.00216025215830501, 11)
    expect(scatter.value('S_lnC')).toBeCloseTo(0.00818220522617043, 11)
    expect(scatter.value('C_lo')).toBeCloseTo(104.782931884726, 7)
    expect(scatter.value('n_hi')).toBeCloseTo(0.654246797775475, 10)
  })

  it('lies where a brute-force search finds the least weighted squares', () => {
    const squares = (a: number, b: number) =>
      dp.reduce((sum, x, i) => sum + Math.exp(2 * (q[i] ?? 0)) * ((q[i] ?? 0) - a - b * x) ** 2, 0)
    const [a, b] = minimise(squares, [4.5, 0.6], [0.5, 0.2])
    expect(curve.value('lnC')).toBeCloseTo(a, 6)
    expect(curve.value('n')).toBeCloseTo(b, 7)
  })
})
