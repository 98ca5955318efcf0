import type { Constant, Formula, Input, Quantity, Source } from '../quantity.js'
import type { Slot } from './columns.js'
import { type Expression, FormulaError, symbolsOf } from './expression.js'
import { type ChapterDefinition, type Parse, Places, type Step } from './layout.js'
import { type Remaining, remaining } from './remaining.js'
import { listed, type Run, type Script, unlisted } from './script.js'

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
  readonly frame: FrameLayout
  /** The same chapter with only the formulas that can be computed from some of its inputs. */
  given(has: (input: Input<I>, index: number) => boolean): ChapterPart<S, I>
}

/** A chapter with some of its inputs. */
export interface ChapterPart<S extends string = string, I extends string = string> {
  readonly chapter: Chapter<S, I>
  /** Which inputs of the whole chapter it takes, in order. */
  readonly kept: readonly number[]
}

/** How the numbers of a chapter stand and are worked out. */
export interface FrameLayout {
  readonly slots: ReadonlyMap<string, Slot>
  /** The places that are listed. */
  readonly places: readonly Slot[]
  /** Place of each input, in their order. */
  readonly inputs: readonly Slot[]
  /** Places of columns that are not given: they hold NaN, and nothing listed uses them. */
  readonly absent: readonly number[]
  /** Scalars before anything is given: constants in their places, NaN in the rest. */
  readonly blank: readonly number[]
  readonly run: Run
}

interface Built<S extends string> extends Pick<Chapter<S>, 'constants' | 'steps' | 'slots' | 'quantities'> {
  readonly frame: FrameLayout
}

/**
 * Builds a chapter from its script when it is first used: most commands use few of them.
 * @throws FormulaError, when it is built, where the formulas are not those that the script was written from
 */
export const chapterOf = <F extends string, I extends string>(
  definition: ChapterDefinition<F, I>,
  constants: readonly Constant[],
  parse: Parse,
  script: (title: string) => Script | undefined,
): Chapter<F | I, I> => {
  const { title } = definition
  return new LazyChapter<F | I, I>(definition, () => build(definition, constants, parse, script(title)))
}

class LazyChapter<S extends string, I extends string> implements Chapter<S, I> {
  private known: Built<S> | undefined
  /** By which inputs are given, as the bits of a number. */
  private readonly parts = new Map<number, ChapterPart<S, I>>()

  constructor(
    readonly definition: ChapterDefinition<S, I>,
    private readonly build: () => Built<S>,
  ) {}

  private get built(): Built<S> {
    this.known ??= this.build()
    return this.known
  }
  get title() {
    return this.definition.title
  }
  get inputs() {
    return this.definition.inputs
  }
  get constants() {
    return this.built.constants
  }
  get steps() {
    return this.built.steps
  }
  get slots() {
    return this.built.slots
  }
  get quantities() {
    return this.built.quantities
  }
  get frame() {
    return this.built.frame
  }

  given(has: (input: Input<I>, index: number) => boolean): ChapterPart<S, I> {
    const { inputs } = this
    let key = 0
    let bit = 1
    for (let i = 0; i < inputs.length; i += 1) {
      if (has(inputs[i] as Input<I>, i)) key += bit
      bit *= 2
    }
    const known = this.parts.get(key)
    if (known) return known
    const rest = remaining(this.definition, this.steps, has)
    const chapter = new LazyChapter<S, I>(rest.definition, () => reduce(this.built, inputs, rest))
    const part = { chapter, kept: rest.definition.inputs.map((input) => inputs.indexOf(input)) }
    this.parts.set(key, part)
    return part
  }
}

function build<S extends string>(
  { title, inputs, formulas }: ChapterDefinition<S>,
  constants: readonly Constant[],
  parse: Parse,
  script: Script | undefined,
): Built<S> {
  const stale = (): FormulaError =>
    new FormulaError(`the script of chapter "${title}" is not that of its formulas: run npm run formulas`)
  if (!script || script.inputs !== inputs.map(listed).join(' ') || script.steps.length !== formulas.length)
    throw stale()
  const own = constants.filter(({ symbol }) => script.constants.includes(symbol))
  if (own.length !== script.constants.length) throw stale()
  const bySymbol = new Map<string, Formula<S>>(formulas.map((formula) => [formula.symbol, formula]))
  const steps = script.steps.map(([name, expression]) => {
    const { symbol, rows } = unlisted(name)
    const formula = bySymbol.get(symbol)
    if (formula?.expression !== expression) throw stale()
    return new ParsedStep<S>(formula, rows, parse)
  })
  const places = new Places()
  for (const { symbol } of own) places.add(symbol, false)
  for (const { symbol, rows } of inputs) places.add(symbol, rows === true)
  for (const { symbol, rows } of steps) places.add(symbol, rows)
  const blank = Array.from({ length: places.scalars }, (_, place) => own[place]?.value ?? Number.NaN)
  return assembled(own, inputs, steps, { slots: places.slots, blank, absent: [], run: script.run })
}

/** A chapter without some inputs: its numbers stand where they stand in the whole chapter, and the same script fills them. */
function reduce<S extends string>(
  { constants, frame }: Built<S>,
  whole: readonly Input[],
  { definition: { inputs }, steps, used }: Remaining<S, string>,
): Built<S> {
  const own = constants.filter(({ symbol }) => used.has(symbol))
  const listed = new Set([...own, ...inputs, ...steps].map(({ symbol }) => symbol))
  const notGiven = whole.filter(({ symbol, rows }) => rows && !listed.has(symbol))
  return assembled(own, inputs, steps, {
    slots: new Map([...frame.slots].filter(([symbol]) => listed.has(symbol))),
    absent: notGiven.map(({ symbol }) => frame.slots.get(symbol)?.index ?? -1),
    blank: frame.blank,
    run: frame.run,
  })
}

function assembled<S extends string>(
  constants: readonly Constant[],
  inputs: readonly Input[],
  steps: readonly Step<S>[],
  frame: Omit<FrameLayout, 'places' | 'inputs'>,
): Built<S> {
  const { slots } = frame
  return {
    constants,
    steps,
    slots,
    quantities: new Map([...constants, ...inputs, ...steps].map((quantity) => [quantity.symbol, quantity])),
    frame: {
      ...frame,
      places: [...slots.values()],
      inputs: inputs.map(({ symbol }) => slots.get(symbol) as Slot),
    },
  }
}

/** A formula whose tree is unpacked when it is first asked for: for a trace, a workbook, a draw. */
class ParsedStep<S extends string> implements Step<S> {
  readonly symbol: S
  readonly name: string
  readonly unit: string
  readonly expression: string
  readonly source: Source
  private parsed: Expression | undefined
  private used: ReadonlySet<string> | undefined

  constructor(
    formula: Formula<S>,
    readonly rows: boolean,
    private readonly parse: Parse,
  ) {
    this.symbol = formula.symbol
    this.name = formula.name
    this.unit = formula.unit
    this.expression = formula.expression
    this.source = formula.source
  }

  get tree(): Expression {
    this.parsed ??= this.parse(this.expression)
    return this.parsed
  }

  get uses(): ReadonlySet<string> {
    this.used ??= symbolsOf(this.tree)
    return this.used
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
