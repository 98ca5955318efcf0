import { type Closure, compile, type Frame, type Slot } from '../evaluate/compile.js'
import type { Constant, Formula, Input, Quantity } from '../quantity.js'
import { type Expression, FormulaError, symbolsOf } from './expression.js'
import { orderByUse } from './order.js'

/** A formula made ready: parsed, and placed after all it uses. */
export interface Step<S extends string = string> extends Formula<S> {
  readonly tree: Expression
  readonly uses: ReadonlySet<string>
  /** Whether it gives a column, one value a row. */
  readonly rows: boolean
  readonly slot: number
  readonly closure: Closure
}

/**
 * A set of formulas with what they are given; evaluated as one unit, once for each run, direction or pressure.
 * `S`: every symbol that can be read off it; `I`: those it is given. A misspelt symbol does not compile.
 */
export interface Chapter<S extends string = string, I extends string = string> {
  readonly definition: ChapterDefinition
  readonly title: string
  readonly inputs: readonly Input<I>[]
  readonly constants: readonly Constant[]
  readonly steps: readonly Step<S>[]
  readonly slots: ReadonlyMap<string, Slot>
  readonly quantities: ReadonlyMap<string, Quantity>
  /** Scalars of a frame before anything is given: the constants in their slots, NaN in the rest. */
  readonly blank: readonly number[]
  /** The same chapter with only the formulas that can be computed from some of its inputs. */
  readonly given: (has: (symbol: string, input: number) => boolean) => Chapter<S, I>
}

export interface ChapterDefinition<F extends string = string, I extends string = string> {
  readonly title: string
  readonly inputs: readonly Input<I>[]
  readonly formulas: readonly Formula<F>[]
}

/** From the text of an expression to its tree. */
export type Parse = (text: string) => Expression

/**
 * Builds a chapter from formulas in any order.
 * @param constants - constants an expression may refer to without declaring them
 * @param parse - gives the tree of an expression's text
 * @throws FormulaError for a cycle, an unknown or doubled symbol, an unused input, a misuse of columns
 */
export function defineChapter<F extends string, I extends string>(
  definition: ChapterDefinition<F, I>,
  constants: readonly Constant[],
  parse: Parse,
): Chapter<F | I, I> {
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
  const ordered = orderByUse(parsed, known)

  const slots = new Map<string, Slot>()
  let scalars = 0
  let columns = 0
  const place = (symbol: string, rows: boolean) => {
    const slot = { index: rows ? columns++ : scalars++, rows }
    slots.set(symbol, slot)
    return slot.index
  }
  for (const constant of own) place(constant.symbol, false)
  for (const input of inputs) place(input.symbol, input.rows === true)
  const steps = ordered.map((formula): Step<F> => {
    const { closure, rows } = compile(formula.tree, slots)
    return { ...formula, rows, closure, slot: place(formula.symbol, rows) }
  })
  const quantities = new Map<string, Quantity>([...own, ...inputs, ...steps].map((q) => [q.symbol, q]))
  const blank = Array.from({ length: scalars }, (_, slot) => own[slot]?.value ?? Number.NaN)
  const given = reduced(definition, constants, parse)
  return { definition, title, inputs, constants: own, steps, slots, quantities, blank, given }
}

/** Builds a chapter when it is first used: most commands use few of them. */
export function lazyChapter<F extends string, I extends string>(
  definition: ChapterDefinition<F, I>,
  constants: readonly Constant[],
  parse: Parse,
): Chapter<F | I, I> {
  let built: Chapter<F | I, I> | undefined
  const get = (): Chapter<F | I, I> => {
    built ??= defineChapter(definition, constants, parse)
    return built
  }
  return {
    definition,
    title: definition.title,
    inputs: definition.inputs,
    get constants() {
      return get().constants
    },
    get steps() {
      return get().steps
    },
    get slots() {
      return get().slots
    },
    get quantities() {
      return get().quantities
    },
    get blank() {
      return get().blank
    },
    get given() {
      return get().given
    },
  }
}

function reduced<F extends string, I extends string>(
  definition: ChapterDefinition<F, I>,
  constants: readonly Constant[],
  parse: Parse,
): Chapter<F | I, I>['given'] {
  const known = new Map<string, Chapter<F | I, I>>()
  return (has) => {
    let key = ''
    for (let i = 0; i < definition.inputs.length; i += 1)
      key += has(definition.inputs[i]?.symbol ?? '', i) ? '1' : '0'
    const cached = known.get(key)
    if (cached) return cached
    const left = new Set<string>(
      definition.inputs.map(({ symbol }) => symbol).filter((symbol, i) => !has(symbol, i)),
    )
    let formulas = definition.formulas
    for (let before = -1; before !== formulas.length; ) {
      before = formulas.length
      formulas = formulas.filter((formula) => {
        const keep = ![...symbolsOf(parse(formula.expression))].some((symbol) => left.has(symbol))
        if (!keep) left.add(formula.symbol)
        return keep
      })
    }
    const used = new Set(formulas.flatMap((f) => [...symbolsOf(parse(f.expression))]))
    const inputs = definition.inputs.filter(({ symbol }) => used.has(symbol))
    const chapter = defineChapter({ ...definition, inputs, formulas }, constants, parse)
    known.set(key, chapter)
    return chapter
  }
}

/** Evaluates every step of a chapter in a frame whose inputs and constants are filled in. */
export function runSteps({ steps }: Chapter, frame: Frame): void {
  const { scalars, columns, rows: count } = frame
  for (const { closure, rows, slot } of steps) {
    if (rows) {
      const column: number[] = []
      for (let row = 0; row < count; row += 1) column.push(closure(frame, row))
      columns[slot] = column
    } else scalars[slot] = closure(frame, 0)
  }
}

/** The steps of a chapter that some of its symbols need, in their order. */
export function neededSteps(chapter: Chapter, symbols: ReadonlySet<string>): readonly Step[] {
  const needed = new Set(symbols)
  return [...chapter.steps]
    .reverse()
    .filter(({ symbol, uses }) => {
      if (!needed.has(symbol)) return false
      for (const used of uses) needed.add(used)
      return true
    })
    .reverse()
}
