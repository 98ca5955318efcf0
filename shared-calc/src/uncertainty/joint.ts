import type { BlockOf, Calculation, Column } from '../engine/index.js'
import type { conformity } from '../formulas/uncertainty-budget.js'
import { allMet, bothMet, correlationOfFigures } from '../formulas/uncertainty-joint.js'
import type { Probability, WorkedBudget } from './worked-uncertainty.js'

/** One limit that one figure must meet: its budget, and the decision about it alone (`P_m`). */
export interface LimitMet {
  readonly budget: WorkedBudget
  readonly decision: BlockOf<typeof conformity>
}

/**
 * Probability that several limits are all met. Each after the first is tied to that one before it with which it goes most
 * closely: two directions by the causes they share, two limits of one direction by nearly all.
 * @param id - name of the first of the blocks worked out
 */
export function jointProbability(
  calculation: Calculation,
  id: string,
  title: string,
  [first, ...others]: readonly LimitMet[],
): Probability {
  if (!first) throw new RangeError('no limit to meet')
  const met = [first]
  let all: Probability = { block: first.decision, symbol: 'P_m' }
  for (const [i, next] of others.entries()) {
    const ties = met.map((one, j) => ({
      one,
      correlation: calculation.add(
        `${id}.correlation${i + 2}with${j + 1}`,
        `${title}: correlation of ${next.budget.label} with ${one.budget.label}`,
        correlationOfFigures,
        correlated(one.budget, next.budget),
      ),
    }))
    const { one, correlation } = ties.reduce((closest, tie) =>
      tie.correlation.value('rho') > closest.correlation.value('rho') ? tie : closest,
    )
    const both = calculation.add(
      `${id}.both${i + 2}`,
      `${title}: ${one.budget.label} with ${next.budget.label}`,
      bothMet,
      {
        P_1: one.decision.ref('P_m'),
        P_2: next.decision.ref('P_m'),
        rho: correlation.ref('rho'),
        t: places,
        w: weights,
      },
    )
    all =
      met.length === 1
        ? { block: both, symbol: 'P_b' }
        : {
            block: calculation.add(`${id}.all${i + 2}`, `${title}: all up to ${next.budget.label}`, allMet, {
              P_s: all.block.ref(all.symbol),
              P_b: both.ref('P_b'),
              P_j: one.decision.ref('P_m'),
            }),
            symbol: 'P_a',
          }
    met.push(next)
  }
  return all
}

/** The same cause in the same row; 0 where a budget lacks it. */
function correlated(first: WorkedBudget, second: WorkedBudget) {
  const ids = [...new Set([...first.rows, ...second.rows].map(({ id }) => id))]
  const signed = ({ rows, block }: WorkedBudget): Column => {
    const [c, d] = [block.column('c'), block.column('d')]
    const values = ids.map((id) => {
      const row = rows.findIndex((one) => one.id === id)
      return row < 0 ? 0 : Math.sign(c[row] as number) * (d[row] as number)
    })
    return { values, origin: () => ({ kind: 'rule', reason: `contributions of ${block.title}` }) }
  }
  return {
    d_1: signed(first),
    d_2: signed(second),
    u_1: first.block.ref('u_c'),
    u_2: second.block.ref('u_c'),
  }
}

const PLACES = 32
const gauss = gaussLegendre(PLACES)
const places = fixed(gauss.map(({ at }) => at))
const weights = fixed(gauss.map(({ weight }) => weight))

function fixed(values: readonly number[]): Column {
  return { values, origin: () => ({ kind: 'rule', reason: `Gauss–Legendre quadrature, ${PLACES} nodes` }) }
}

/** Places and weights between 0 and 1: roots of the Legendre polynomial, by Newton's rounds from its usual first guess. */
function gaussLegendre(count: number): { at: number; weight: number }[] {
  return Array.from({ length: count }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5))
    let slope = 0
    for (let round = 0; round < 20; round += 1) {
      let [last, value] = [1, x]
      for (let degree = 2; degree <= count; degree += 1)
        [last, value] = [value, ((2 * degree - 1) * x * value - (degree - 1) * last) / degree]
      slope = (count * (x * value - last)) / (x * x - 1)
      x -= value / slope
    }
    return { at: (1 - x) / 2, weight: 1 / ((1 - x * x) * slope * slope) }
  })
}
