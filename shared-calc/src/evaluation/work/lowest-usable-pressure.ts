import type { Run } from '../../contract/record/index.js'
import { Calculation } from '../../engine/index.js'
import type { Method } from '../../methods/index.js'
import { workLowest } from './run.js'
import { workZeroFlow } from './zero-flow.js'

/** Lowest pressure difference, Pa, that a method lets a run use, given its zero-flow pressures so far. */
export function lowestUsablePressure(run: Run, method: Method): number {
  const calculation = new Calculation()
  const zero = workZeroFlow(calculation, 'run', run.direction, run, 'runs[0]')
  const lowest = workLowest(calculation, 'run', run.direction, method, zero)
  return lowest?.value('dp_min') ?? method.limits.lowestPressure_Pa.value
}
