import type { Calculation } from '../engine/index.js'
import { organicLine } from '../formulas/fit-organic.js'
import { fitBothErrors } from './fits/both-errors.js'
import type { RunUncertainty } from './run-sensitivity.js'
import type { WorkedFits } from './worked-uncertainty.js'

/** The same readings by two other fits, beside the method's own where that fits a line; they need expected scatter. */
export function workFits(calculation: Calculation, { run, id, readings }: RunUncertainty): WorkedFits {
  const { curve, direction, index } = run
  const word = direction === 'depressurisation' ? 'Depressurisation' : 'Pressurisation'
  if (!curve.has('lnC')) return { run: index }
  const points = {
    x: curve.refColumn('x'),
    y: curve.refColumn('y'),
    u_x: readings.pressures.refColumn('u_x'),
    u_y: readings.flows,
  }
  const usable = [...points.u_x.values, ...points.u_y.values].every((u) => u > 0)
  if (!usable) return { run: index }
  const organic = calculation.add(
    `${id}.organic`,
    `${word}: line of organic correlation`,
    organicLine,
    points,
  )
  const bothErrors = fitBothErrors(
    calculation,
    `${id}.bothErrors`,
    `${word}: least squares, errors in both variables`,
    points,
    organic.value('n'),
  )
  return { run: index, organic, ...(bothErrors && { bothErrors }) }
}
