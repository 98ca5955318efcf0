import type { Constant, Formula, Input } from '../quantity.js'
import { isColumn, type Slot } from './columns.js'
import { type Expression, FormulaError, symbolsOf } from './expression.js'
import { orderByUse } from './order.js'

export interface ChapterDefinition<F extends string = string, I extends string = string> {
  readonly title: string
  readonly inputs: readonly Input<I>[]
  readonly formulas: readonly Formula<F>[]
}

/** From the text of an expression to its tree. */
export type Parse = (text: string) => Expression

/** A formula parsed and placed after all it uses. */
export interface Step<S extends string = string> extends Formula<S> {
  readonly tree: Expression
  readonly uses: ReadonlySet<string>
  /** Whether it gives a column, one value a row. */
  readonly rows: boolean
}

/** The numbers of a chapter, each with its place: first constants, then inputs, then formulas in the order of their working. */
export interface Layout {
  readonly constants: readonly Constant[]
  readonly inputs: readonly Input[]
  readonly steps: readonly Step[]
  readonly slots: ReadonlyMap<string, Slot>
}

/**
 * Lays out a chapter from formulas in any order. That is done when the project is built: what it finds, the generated
 * script of the chapter holds.
 * @param constants - constants an expression may refer to without declaring them
 * @throws FormulaError for a cycle, an unknown or doubled symbol, an unused input, a misuse of columns
 */
export function layOut(definition: ChapterDefinition, constants: readonly Constant[], parse: Parse): Layout {
  const { title, inputs } = definition
  const parsed = definition.formulas.map((formula) => {
    const tree = parse(formula.expression)
    return { ...formula, tree, uses: symbolsOf(tree) }
  })
  const used = new Set(parsed.flatMap((formula) => [...formula.uses]))
  const own = constants.filter(({ symbol }) => used.has(symbol))
  const unused = inputs.find(({ symbol }) => !used.has(symbol))
  if (unused) throw new FormulaError(`chapter "${title}": input ${unused.symbol} is used by no formula`)
  const known = new Set([...inputs, ...own].map(({ symbol }) => symbol))
  const defined = parsed.find(({ symbol }) => known.has(symbol))
  if (defined) throw new FormulaError(`chapter "${title}": ${defined.symbol} is an input and a formula`)
  const places = new Places()
  for (const constant of own) places.add(constant.symbol, false)
  for (const input of inputs) places.add(input.symbol, input.rows === true)
  const steps = orderByUse(parsed, known).map((formula): Step => {
    const rows = isColumn(formula.tree, places.slots)
    places.add(formula.symbol, rows)
    return { ...formula, rows }
  })
  return { constants: own, inputs, steps, slots: places.slots }
}

/** Gives each symbol its place, scalars and columns counted apart. */
export class Places {
  readonly slots = new Map<string, Slot>()
  scalars = 0
  private columns = 0

  add(symbol: string, rows: boolean): void {
    const index = rows ? this.columns : this.scalars
    if (rows) this.columns += 1
    else this.scalars += 1
    this.slots.set(symbol, { index, rows })
  }
}
