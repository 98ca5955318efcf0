import { all, create, type FactoryFunctionMap, floor, round } from 'mathjs'
import { scalarFunctions } from '../../../../shared-calc/src/engine/evaluate/functions.js'

// Full mathjs, not the lean part the project parses with. Its comparisons take close numbers for equal unless told not to.
const math = create(all as FactoryFunctionMap, { relTol: Number.MIN_VALUE, absTol: 0 })

type Value = number | number[]
const elementwise =
  (of: (value: number) => number) =>
  (value: Value): Value =>
    typeof value === 'number' ? of(value) : value.map((one) => of(one))

const meanOfSide = (side: 1 | -1) => (values: number[]) => {
  const on = values.filter((value) => value * side > 0)
  return on.length === 0 ? 0 : Number(math.mean(on))
}

// mathjs takes functions of a column only through map(); the rest are no functions of mathjs.
const functions = {
  abs: elementwise(Math.abs),
  sqrt: elementwise((value) => math.sqrt(value) as number),
  exp: elementwise(math.exp),
  log: elementwise((value) => math.log(value) as number),
  // With the comparisons made exact, mathjs no longer takes 0 for a whole number of places: its round and floor
  // as they come.
  round,
  floor,
  count: (values: number[]) => values.length,
  positive_mean: meanOfSide(1),
  negative_mean: meanOfSide(-1),
  // Distributions are no functions of mathjs: they are checked against published tables.
  ...Object.fromEntries(
    ['student_t', 'student_share', 'normal_share', 'normal_quantile', 'to_limit'].map((name) => [
      name,
      scalarFunctions[name]?.evaluate,
    ]),
  ),
}

/**
 * What mathjs itself makes of an expression: operators, precedence, sums and means are its own.
 * It turns to complex numbers where no part of an expression may: then this throws.
 */
export function mathjsValue(expression: string, numbers: Readonly<Record<string, Value>>): Value {
  const value: unknown = math.evaluate(expression, { ...functions, ...numbers })
  if (typeof value === 'number') return value
  if (Array.isArray(value)) return value as number[]
  throw new TypeError(`mathjs made no number of ${expression}`)
}
