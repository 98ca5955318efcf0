import type { TraceStep } from '../../contract/record/index.js'
import type { Block } from '../evaluate/block.js'
import type { Calculation } from '../evaluate/calculation.js'
import type { Step } from '../parse/layout.js'
import { symbolText } from '../parse/symbols.js'
import { sourceText } from '../quantity.js'
import { toMathml } from './to-mathml.js'
import { numberText, toText } from './to-text.js'

/** Every step of a calculation: the formula, the same with numbers put in, its value and its source. */
export function traceOf(calculation: Calculation): TraceStep[] {
  return calculation.blocks.flatMap((block) => block.chapter.steps.map((step) => traceStep(block, step)))
}

/** One step of a block. */
export function traceStep(block: Block<string>, step: Step): TraceStep {
  const value = step.rows ? [...block.column(step.symbol)] : block.value(step.symbol)
  const first = step.rows && block.rows > 0 ? 'first row: ' : ''
  return {
    block: block.title,
    symbol: symbolText(step.symbol),
    name: step.name,
    unit: step.unit,
    expression: toText(step.tree),
    substituted: `${first}${toText(step.tree, (symbol) => put(block, step, symbol))}`,
    mathml: toMathml(step.symbol, step.tree),
    value,
    source: sourceText(step.source),
  }
}

/** A column stands as its number in the first row where the step itself is a column, as its symbol inside a sum. */
function put(block: Block<string>, step: Step, symbol: string): string {
  if (!block.chapter.slots.get(symbol)?.rows) return numberText(block.value(symbol))
  return step.rows && block.rows > 0 ? numberText(block.column(symbol)[0] as number) : symbolText(symbol)
}
