import { InputError, type Problem } from '../problem.js'
import type { Run } from '../record/index.js'
import { plain } from '../rules/rule.js'
import type { Block } from '../sheet/index.js'

/**
 * Readings that no logarithmic line can be put through are an error, not a finding.
 * @throws InputError naming the reading on the wrong side of zero, or the run whose readings do not differ
 */
export function refuseWrongSide(curve: Block, run: Run, path: string): void {
  const pressures = curve.column('dp')
  const problems: Problem[] = []
  for (let i = 0; i < pressures.length; i += 1) {
    if ((pressures[i] as number) > 0) continue
    const logged = run.readings[i]?.pressure_Pa ?? Number.NaN
    problems.push({
      path: `${path}.readings[${i}].pressure_Pa`,
      message:
        logged === 0
          ? 'pressure difference is 0 Pa: no reading'
          : `pressure difference ${plain(logged)} Pa is on the wrong side of the zero-flow pressure ${plain(curve.value('dp_0'))} Pa, or has not the sign of the other readings`,
    })
  }
  if (problems.length > 0) throw new InputError(problems)
  if (sameThroughout(pressures))
    throw new InputError([
      { path: `${path}.readings`, message: 'all pressure differences are equal: no curve can be fitted' },
    ])
  if (sameThroughout(curve.column('q_env')))
    throw new InputError([
      { path: `${path}.readings`, message: 'all air flows are equal: no curve can be fitted' },
    ])
}

/** @throws InputError when the fitted line leaves the range of numbers at a reference pressure */
export function refuseUnusableCurve(rate: Block, curve: Block, path: string): void {
  const usable = ['q_pr', 'q_lo', 'q_hi', 'A_L'].every((symbol) => {
    if (!rate.has(symbol)) return true
    const value = rate.value(symbol)
    return Number.isFinite(value) && value > 0
  })
  if (usable) return
  throw new InputError([
    {
      path: `${path}.readings`,
      message: `the readings give an air flow exponent of ${plain(curve.value('n'), 3)} and no usable curve: check pressures and flows`,
    },
  ])
}

function sameThroughout(values: Float64Array): boolean {
  let lowest = Number.POSITIVE_INFINITY
  let highest = 0
  for (const value of values) {
    if (value < lowest) lowest = value
    if (value > highest) highest = value
  }
  return highest - lowest <= 1e-12 * highest
}
