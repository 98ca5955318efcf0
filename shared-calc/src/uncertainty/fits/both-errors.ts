import { type BlockOf, byRule, Calculation, type Column } from '../../engine/index.js'
import { bothErrorsLine } from '../../formulas/fit-both-errors.js'

const ROUNDS = 200

export interface LinePoints {
  readonly x: Column
  readonly y: Column
  readonly u_x: Column
  readonly u_y: Column
}

/**
 * Weighted least squares with errors in both variables: rounds of the chapter until its slope reproduces itself.
 * The last round is added to the calculation, where its change `n_d` stands for all to see.
 * @param start - slope to begin with, that of ordinary least squares
 * @returns undefined where the rounds do not settle
 */
export function fitBothErrors(
  calculation: Calculation,
  id: string,
  title: string,
  points: LinePoints,
  start: number,
): BlockOf<typeof bothErrorsLine> | undefined {
  let slope = start
  for (let round = 0; round < ROUNDS; round += 1) {
    const trial = new Calculation().add('round', title, bothErrorsLine, {
      ...points,
      n_b: byRule(slope, 'slope of the previous iteration'),
    })
    const next = trial.value('n')
    if (!Number.isFinite(next)) return undefined
    if (Math.abs(next - slope) <= 1e-13 * Math.abs(next))
      return calculation.add(id, title, bothErrorsLine, {
        ...points,
        n_b: byRule(slope, 'slope found by iteration until it no longer changes'),
      })
    slope = next
  }
  return undefined
}
