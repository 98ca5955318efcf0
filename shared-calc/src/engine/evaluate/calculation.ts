import { type Chapter, runSteps } from '../parse/chapter.js'
import { FormulaError } from '../parse/expression.js'
import type { Input } from '../quantity.js'
import type { Frame } from './compile.js'

/** Where an input of a block comes from: the record, another block, or an assumption that a finding names. */
export type Origin =
  | { readonly kind: 'record'; readonly path: string }
  | { readonly kind: 'block'; readonly block: string; readonly symbol: string; readonly row?: number }
  | { readonly kind: 'assumed'; readonly reason: string }
  | { readonly kind: 'rule'; readonly reason: string }

/** A value with its origin. */
export interface Given {
  readonly value: number
  readonly origin: Origin
}

/**
 * A column of values, one a row, with the origin of each row. Plain arrays: a test's columns hold ten numbers or so, and
 * a typed array of that size costs more to make than all that is done with it.
 */
export interface Column {
  readonly values: readonly number[]
  readonly origin: (row: number) => Origin
}

/** Inputs of a chapter by symbol. */
export type Bindings<I extends string = string> = Readonly<Partial<Record<I, Given | Column | undefined>>>
/** Inputs of a chapter in its order, undefined where one is left out. */
export type Inputs = readonly (Given | Column | undefined)[]

export const fromRecord = (path: string, value: number): Given => ({
  value,
  origin: { kind: 'record', path },
})
/** A column of the record: `path` names the field of each row. */
export const columnFromRecord = (values: readonly number[], path: (row: number) => string): Column => ({
  values,
  origin: (row) => ({ kind: 'record', path: path(row) }),
})
/** A column made up of single values. */
export const columnOf = (given: readonly Given[]): Column => ({
  values: given.map(({ value }) => value),
  origin: (row) => (given[row] as Given).origin,
})
/** A stand-in for something not logged: a finding must say so. */
export const assumed = (value: number, reason: string): Given => ({
  value,
  origin: { kind: 'assumed', reason },
})
/** A number that a method, a target or a direction fixes. */
export const byRule = (value: number, reason: string): Given => ({ value, origin: { kind: 'rule', reason } })

/** A chapter evaluated once, with the origin of everything it was given. `S`: the symbols that can be read off it. */
export class Block<S extends string = never> {
  constructor(
    readonly id: string,
    readonly title: string,
    readonly chapter: Chapter,
    /** What the chapter was given, in the order of its inputs. */
    readonly inputs: readonly (Given | Column)[],
    private readonly frame: Frame,
  ) {}

  /** What the chapter was given for a symbol; undefined where that is no input of its own. */
  input(symbol: S): Given | Column | undefined {
    return this.inputs[this.chapter.inputs.findIndex((input) => input.symbol === symbol)]
  }

  get rows(): number {
    return this.frame.rows
  }

  /** Whether every number of the block is finite. */
  isFinite(): boolean {
    const { scalars, columns } = this.frame
    return allFinite(scalars) && columns.every(allFinite)
  }

  has(symbol: S): boolean {
    return this.chapter.slots.has(symbol)
  }

  /** Value of a scalar. Throws FormulaError when the block has no such scalar. */
  value(symbol: S): number {
    const slot = this.chapter.slots.get(symbol)
    if (!slot || slot.rows) throw new FormulaError(`block ${this.id} has no scalar ${symbol}`)
    return this.frame.scalars[slot.index] as number
  }

  /** Values of a column, one a row. Throws FormulaError when the block has no such column. */
  column(symbol: S): readonly number[] {
    const slot = this.chapter.slots.get(symbol)
    if (!slot?.rows) throw new FormulaError(`block ${this.id} has no column ${symbol}`)
    return this.frame.columns[slot.index] as readonly number[]
  }

  /** A scalar as an input for another block. */
  ref(symbol: S): Given {
    return { value: this.value(symbol), origin: { kind: 'block', block: this.id, symbol } }
  }

  /** One row of a column as an input for another block. */
  refRow(symbol: S, row: number): Given {
    return {
      value: this.column(symbol)[row] as number,
      origin: { kind: 'block', block: this.id, symbol, row },
    }
  }

  /** A whole column as an input for another block. */
  refColumn(symbol: S): Column {
    return { values: this.column(symbol), origin: (row) => ({ kind: 'block', block: this.id, symbol, row }) }
  }
}

function allFinite(values: readonly number[]): boolean {
  for (let i = 0; i < values.length; i += 1) if (!Number.isFinite(values[i])) return false
  return true
}

/** The symbols that can be read off a chapter, or off any of several. */
export type SymbolOf<C> = C extends Chapter<infer S, string> ? S : never
/** A chapter evaluated; of several chapters, whichever of them it was. */
export type BlockOf<C> = Block<SymbolOf<C>>

/** A test worked out, block by block: the evaluation, the working and the workbook all read it. */
export class Calculation {
  private readonly byId = new Map<string, Block<string>>()

  /** All blocks in the order they were worked out. */
  get blocks(): readonly Block<string>[] {
    return [...this.byId.values()]
  }

  get(id: string): Block<string> {
    const block = this.byId.get(id)
    if (!block) throw new FormulaError(`no block ${id}`)
    return block
  }

  find(id: string): Block<string> | undefined {
    return this.byId.get(id)
  }

  /**
   * Evaluates a chapter. Formulas whose inputs are left out (undefined) are left out too.
   * @throws FormulaError when the columns given differ in length or an id is used twice
   */
  add<S extends string, I extends string>(
    id: string,
    title: string,
    chapter: Chapter<S, I>,
    bindings: Bindings<I>,
  ): Block<S> {
    return this.addInputs(
      id,
      title,
      chapter,
      chapter.inputs.map(({ symbol }) => bindings[symbol]),
    )
  }

  /** The same with what is given in the order of the chapter's inputs. */
  addInputs<S extends string>(id: string, title: string, chapter: Chapter<S>, given: Inputs): Block<S> {
    const used = given.includes(undefined) ? chapter.given((_, input) => given[input] !== undefined) : chapter
    const inputs =
      used === chapter
        ? (given as readonly (Given | Column)[])
        : used.inputs.map(({ symbol }) => {
            const input = given[chapter.inputs.findIndex((one) => one.symbol === symbol)]
            if (input === undefined) throw new FormulaError(`block ${id}: ${symbol} is not given`)
            return input
          })
    const block = new Block<S>(id, title, used, inputs, frameOf(id, used, inputs))
    const before = this.byId.size
    this.byId.set(id, block)
    if (this.byId.size === before) throw new FormulaError(`block ${id} is calculated twice`)
    return block
  }
}

/** The numbers of a chapter: constants and what is given in their slots, then every step worked out. */
function frameOf(id: string, chapter: Chapter, inputs: readonly (Given | Column)[]): Frame {
  const scalars = chapter.blank.slice()
  const columns: (readonly number[])[] = []
  let scalar = chapter.constants.length
  let rows = 0
  for (let i = 0; i < inputs.length; i += 1) {
    const { symbol, rows: isColumn } = chapter.inputs[i] as Input
    const given = inputs[i] as Given | Column
    if (isColumn) {
      if (!('values' in given)) throw new FormulaError(`block ${id}: ${symbol} must be a column`)
      if (columns.length > 0 && given.values.length !== rows)
        throw new FormulaError(`block ${id}: columns differ in length`)
      rows = given.values.length
      columns.push(given.values)
    } else {
      if (!('value' in given)) throw new FormulaError(`block ${id}: ${symbol} must be one value`)
      scalars[scalar] = given.value
      scalar += 1
    }
  }
  const frame = { scalars, columns, rows }
  runSteps(chapter, frame)
  return frame
}

/**
 * What a chapter asks for, by symbol: what is given by hand, else what the first block has that has it.
 * What nobody has is left out, and with it the formulas that need it.
 */
export const inputsBySymbol = <I extends string>(
  chapter: Chapter<string, I>,
  given: Bindings<NoInfer<I>>,
  blocks: readonly Block<string>[],
): Inputs => chapter.inputs.map(({ symbol, rows }) => given[symbol] ?? taken(symbol, rows === true, blocks))

function taken(symbol: string, rows: boolean, blocks: readonly Block<string>[]): Given | Column | undefined {
  for (const block of blocks) if (block.has(symbol)) return rows ? block.refColumn(symbol) : block.ref(symbol)
  return undefined
}
