import { plain } from '../../catalogue/words.js'
import { InputError, type Problem } from '../../contract/problem.js'
import type { Run } from '../../contract/record/index.js'
import type { Block } from '../../engine/index.js'
import type { AtPressure, WorkedRun } from './worked-test.js'

/**
 * Readings that no logarithmic line can be put through are an error, not a finding.
 * @throws InputError naming the reading on the wrong side of zero
 */
export function refuseWrongSide(curve: WorkedRun['curve'], run: Run, path: string): void {
  const pressures = curve.column('dp')
  const problems: Problem[] = []
  for (let i = 0; i < pressures.length; i += 1) {
    if ((pressures[i] as number) > 0) continue
    const logged = run.readings[i]?.pressure_Pa ?? Number.NaN
    problems.push({
      path: `${path}.readings[${i}].pressure_Pa`,
      message:
        logged === 0
          ? 'a pressure difference of 0 Pa cannot be used: correct it, or leave the reading out'
          : `pressure difference ${plain(logged)} Pa is on the wrong side of the zero-flow pressure ${plain(curve.value('dp_0'))} Pa, or has a different sign from the other readings: correct the pressure or its sign`,
    })
  }
  const flows = curve.column('q_env')
  for (let i = 0; i < flows.length; i += 1) {
    const flow = flows[i] as number
    if (flow > 0 && flow < Number.POSITIVE_INFINITY) continue
    problems.push({
      path: `${path}.readings[${i}].devicePressure_Pa`,
      message: `device pressure ${run.readings[i]?.devicePressure_Pa} Pa gives no usable air flow with this range`,
    })
  }
  if (problems.length > 0) throw new InputError(problems)
}

/** @throws InputError when the readings do not differ, so that no exponent can be found from them */
export function refuseLevelReadings(curve: WorkedRun['curve'], path: string): void {
  if (sameThroughout(curve.column('dp')))
    throw new InputError([
      { path: `${path}.readings`, message: 'all pressure differences are equal, so no curve can be fitted' },
    ])
  if (sameThroughout(curve.column('q_env')))
    throw new InputError([
      { path: `${path}.readings`, message: 'all air flows are equal, so no curve can be fitted' },
    ])
}

/** No leakage rate, in m³/h, and no leakage area, in cm², lies outside these: the fit has run away. */
const USABLE = { from: 1e-30, to: 1e30 } as const

const isUsable = (rate: AtPressure['rate']): boolean =>
  figures.every((symbol) => {
    const value = rate.has(symbol) ? rate.value(symbol) : 1
    return value > USABLE.from && value < USABLE.to
  })
const figures = ['q_pr', 'q_lo', 'q_hi', 'A_L'] as const

const isAllFinite = (block: Block | undefined): boolean => block === undefined || block.isFinite()

/** @throws InputError when a figure of a run is no number, or lies beyond all measure at a reference pressure */
export function refuseUnusableCurve(
  rates: readonly AtPressure['rate'][],
  others: readonly (Block | undefined)[],
  curve: WorkedRun['curve'],
  path: string,
): void {
  if (rates.every(isUsable) && isAllFinite(curve) && rates.every(isAllFinite) && others.every(isAllFinite))
    return
  const exponent = curve.value('n')
  const found = Number.isFinite(exponent) ? `an air flow exponent of ${plain(exponent, 3)} and ` : ''
  throw new InputError([
    {
      path: `${path}.readings`,
      message: `the readings give ${found}no usable curve; check pressures and flows`,
    },
  ])
}

function sameThroughout(values: readonly number[]): boolean {
  let lowest = Number.POSITIVE_INFINITY
  let highest = 0
  for (const value of values) {
    if (value < lowest) lowest = value
    if (value > highest) highest = value
  }
  return highest - lowest <= 1e-12 * highest
}
