import { evaluateWorked } from '@draughtbook/shared-calc'
import { oneRun } from '../../shared-calc/support/records'
import { expectClose } from './expect-close'

/** A run evaluated in air of reference density, so that the results are those of the readings' own curve. */
export function curveInReferenceAir(
  pressures_Pa: readonly number[],
  flows_m3_h: readonly number[],
  zeroFlow?: { before: number[]; after: number[] },
) {
  const { evaluation, test } = evaluateWorked(oneRun(pressures_Pa, flows_m3_h, zeroFlow))
  const [run] = evaluation.runs
  const [worked] = test.runs
  if (!run || !worked?.scatter) throw new Error('nothing was fitted')
  return { run, scatter: worked.scatter, findings: evaluation.findings }
}

/** What R makes of the same readings: `lm` of the logarithms, `predict` and `qt`, put back into flows. */
export interface FromR {
  n: number
  C: number
  se_n: number
  se_lnC: number
  r2: number
  n_ci95: readonly number[]
  C_ci95: readonly number[]
  q4: number
  q4_ci95: readonly number[]
  q10: number
  q10_ci95: readonly number[]
  q50: number
  q50_ci95: readonly number[]
  ELA4_cm2_Cd1: number
  'EqLA10_cm2_Cd0.611': number
}

/** Compares every figure of a run with what R computed, to 1e-9. */
export function expectAsR({ run, scatter }: ReturnType<typeof curveInReferenceAir>, r: FromR): void {
  const close = (actual: number | undefined, expected: number | undefined, what: string) =>
    expectClose(actual ?? Number.NaN, expected ?? Number.NaN, 1e-9, what)
  const figures = [
    ['exponent', run.airFlowExponent, r.n, r.n_ci95],
    ['air flow coefficient', run.airFlowCoefficient, r.C, r.C_ci95],
    ['air leakage coefficient', run.airLeakageCoefficient, r.C, r.C_ci95],
    ['q4', run.q4, r.q4, r.q4_ci95],
    ['q10', run.q10, r.q10, r.q10_ci95],
    ['q50', run.q50, r.q50, r.q50_ci95],
  ] as const
  for (const [what, figure, value, interval] of figures) {
    close(figure.value, value, what)
    close(figure.ci95?.[0], interval[0], `${what}, lower end`)
    close(figure.ci95?.[1], interval[1], `${what}, upper end`)
  }
  close(run.rSquared, r.r2, 'r²')
  close(scatter.value('S_n'), r.se_n, 'standard error of the exponent')
  close(scatter.value('S_lnC'), r.se_lnC, 'standard error of ln C')
  close(run.ela4.value, r.ELA4_cm2_Cd1, 'effective leakage area at 4 Pa')
  // R's second area has a discharge coefficient of 0.611; ours has none.
  close(run.ela10.value / 0.611, r['EqLA10_cm2_Cd0.611'], 'equivalent leakage area at 10 Pa')
}
