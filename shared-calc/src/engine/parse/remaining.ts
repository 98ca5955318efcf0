import type { Input } from '../quantity.js'
import type { ChapterDefinition, Step } from './layout.js'
import { orderByUse } from './order.js'

/** What is left of a chapter where some of its inputs are not given. */
export interface Remaining<F extends string, I extends string> {
  readonly definition: ChapterDefinition<F, I>
  /** Formulas that need nothing of what is not given, in the order of their working. */
  readonly steps: readonly Step<F>[]
  /** Every symbol that they use. */
  readonly used: ReadonlySet<string>
}

export function remaining<F extends string, I extends string>(
  definition: ChapterDefinition<F, I>,
  steps: readonly Step[],
  has: (input: Input<I>, index: number) => boolean,
): Remaining<F, I> {
  const missing = new Set<string>(
    definition.inputs.filter((input, i) => !has(input, i)).map(({ symbol }) => symbol),
  )
  // In the order of their working a formula comes after all it uses, so that one pass finds all.
  for (const { symbol, uses } of steps) if ([...uses].some((used) => missing.has(used))) missing.add(symbol)
  const formulas = definition.formulas.filter(({ symbol }) => !missing.has(symbol))
  const bySymbol = new Map(steps.map((step) => [step.symbol, step]))
  const kept = formulas.map(({ symbol }) => bySymbol.get(symbol) as Step<F>)
  const used = new Set(kept.flatMap(({ uses }) => [...uses]))
  const inputs = definition.inputs.filter(({ symbol }) => used.has(symbol))
  return { definition: { ...definition, inputs, formulas }, steps: orderByUse(kept, used), used }
}
