import type { OtherFit, RunFits } from '../contract/record/index.js'
import { type Block, byRule, Calculation } from '../engine/index.js'
import type { WorkedRun, WorkedTest } from '../evaluation/work/worked-test.js'
import { fitCompared } from '../formulas/fit-compared.js'
import { refuseBeyondMeasure, type WorkedFits } from './worked-uncertainty.js'

/** The official fit of a run with the other two beside it, all before the correction to reference air. */
export function assembleFits(test: WorkedTest, { run, organic, bothErrors }: WorkedFits): RunFits[] {
  const worked = test.runs.find(({ index }) => index === run)
  if (!worked || !organic) return []
  const fits = [
    compared('official', worked, worked.curve),
    compared('line of organic correlation', worked, organic),
    ...(bothErrors ? [compared('least squares, errors in both variables', worked, bothErrors)] : []),
  ]
  return [{ direction: worked.direction, fits, explanation: explanation(fits) }]
}

function compared(fit: OtherFit['fit'], { curve }: WorkedRun, other: Block<'n' | 'lnC' | 'chi_r'>): OtherFit {
  const calculation = new Calculation()
  const at = (pressure: number) =>
    calculation.add(`at${pressure}`, `Fits compared at ${pressure} Pa`, fitCompared, {
      dp_r: byRule(pressure, 'reference pressure'),
      n: curve.ref('n'),
      lnC: curve.ref('lnC'),
      n_o: other.ref('n'),
      lnC_o: other.ref('lnC'),
    })
  const [fifty, four] = [at(50), at(4)]
  refuseBeyondMeasure([fifty, four])
  return {
    fit,
    exponent: other.value('n'),
    airFlowCoefficient: fifty.value('C_b'),
    q50: fifty.value('q_n'),
    q4: four.value('q_n'),
    q50Difference: fifty.value('d_o'),
    q4Difference: four.value('d_o'),
    ...(other.has('chi_r') && { reducedChiSquare: other.value('chi_r') }),
  }
}

function explanation(fits: readonly OtherFit[]): string {
  const [official, ...others] = fits
  const largest = Math.max(...others.map(({ q4Difference }) => Math.abs(q4Difference)))
  const at50 = Math.max(...others.map(({ q50Difference }) => Math.abs(q50Difference)))
  const percent = (share: number) => `${Number((share * 100).toPrecision(2))} %`
  const chi = others.find(({ reducedChiSquare }) => reducedChiSquare !== undefined)?.reducedChiSquare
  const scatter =
    chi === undefined
      ? ''
      : chi > 4
        ? ' The readings scatter more than the instruments explain. Look for wind or a change during the run.'
        : chi < 0.1
          ? ' The readings scatter less than expected.'
          : ''
  const steeper = others.some(({ exponent }) => exponent > (official?.exponent ?? 0))
  return (
    `The official figure is from the method's own fit. The other fits weight each reading by its uncertainty and allow for errors in pressure. They differ from it by up to ${percent(at50)} at 50 Pa and ${percent(largest)} at 4 Pa` +
    `${largest > 0.02 ? ` (${steeper ? 'steeper' : 'flatter'}, because low-pressure readings have less weight)` : ''}.${scatter}`
  )
}
