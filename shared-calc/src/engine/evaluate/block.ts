import type { Chapter, FrameLayout } from '../parse/chapter.js'
import type { Slot } from '../parse/columns.js'
import { FormulaError } from '../parse/expression.js'
import type { Column, Given, Origin } from './given.js'

/** A chapter evaluated once, with the origin of everything it was given. `S`: the symbols that can be read off it. */
export class Block<S extends string = never> {
  /** How many rows its columns have; 0 where it was given none. */
  readonly rows: number
  private readonly layout: FrameLayout
  private readonly scalars: number[]
  private readonly columns: (readonly number[])[] = []

  /** @throws FormulaError when a column is given for a value, a value for a column, or columns of unlike length */
  constructor(
    readonly id: string,
    readonly title: string,
    readonly chapter: Chapter,
    /** What the chapter was given, in the order of its inputs. */
    readonly inputs: readonly (Given | Column)[],
  ) {
    this.layout = chapter.frame
    this.scalars = this.layout.blank.slice()
    this.rows = this.take()
    for (const column of this.layout.absent) this.columns[column] = new Array(this.rows).fill(Number.NaN)
    this.layout.run(this.scalars, this.columns, this.rows)
  }

  /** Puts what was given in its places and returns the number of rows. */
  private take(): number {
    let rows = -1
    for (let i = 0; i < this.inputs.length; i += 1) {
      const given = this.inputs[i] as Given | Column
      const { index, rows: isColumn } = this.layout.inputs[i] as Slot
      if (!isColumn) {
        if (!('value' in given)) throw this.fault(`${this.chapter.inputs[i]?.symbol} must be one value`)
        this.scalars[index] = given.value
        continue
      }
      if (!('values' in given)) throw this.fault(`${this.chapter.inputs[i]?.symbol} must be a column`)
      if (rows >= 0 && given.values.length !== rows) throw this.fault('columns differ in length')
      rows = given.values.length
      this.columns[index] = given.values
    }
    return Math.max(0, rows)
  }

  private fault(what: string): FormulaError {
    return new FormulaError(`block ${this.id}: ${what}`)
  }

  /** What the chapter was given for a symbol; undefined where that is no input of its own. */
  input(symbol: S): Given | Column | undefined {
    return this.inputs[this.chapter.inputs.findIndex((input) => input.symbol === symbol)]
  }

  /** Whether every number of the block is finite. */
  isFinite(): boolean {
    for (const { index, rows } of this.layout.places)
      if (rows ? !allFinite(this.columns[index] as readonly number[]) : !Number.isFinite(this.scalars[index]))
        return false
    return true
  }

  has(symbol: S): boolean {
    return this.layout.slots.has(symbol)
  }

  /** Value of a scalar. Throws FormulaError when the block has no such scalar. */
  value(symbol: S): number {
    const slot = this.layout.slots.get(symbol)
    if (!slot || slot.rows) throw new FormulaError(`block ${this.id} has no scalar ${symbol}`)
    return this.scalars[slot.index] as number
  }

  /** Values of a column, one a row. Throws FormulaError when the block has no such column. */
  column(symbol: S): readonly number[] {
    const slot = this.layout.slots.get(symbol)
    if (!slot?.rows) throw new FormulaError(`block ${this.id} has no column ${symbol}`)
    return this.columns[slot.index] as readonly number[]
  }

  /** A scalar as an input for another block. */
  ref(symbol: S): Given {
    return new BlockValue(this.value(symbol), this.id, symbol)
  }

  /** One row of a column as an input for another block. */
  refRow(symbol: S, row: number): Given {
    return new BlockValue(this.column(symbol)[row] as number, this.id, symbol, row)
  }

  /** A whole column as an input for another block. */
  refColumn(symbol: S): Column {
    return { values: this.column(symbol), origin: (row) => ({ kind: 'block', block: this.id, symbol, row }) }
  }

  /** Whatever the block has of that symbol, as an input for another block. */
  offer(symbol: S): Given | Column | undefined {
    const slot = this.layout.slots.get(symbol)
    if (!slot) return undefined
    return slot.rows
      ? this.refColumn(symbol)
      : new BlockValue(this.scalars[slot.index] as number, this.id, symbol)
  }
}

/** A value read off a block. Its origin is put together where it is asked for: for the working, not for the figures. */
class BlockValue implements Given {
  constructor(
    readonly value: number,
    private readonly block: string,
    private readonly symbol: string,
    private readonly row?: number,
  ) {}

  get origin(): Origin {
    const { block, symbol, row } = this
    return { kind: 'block', block, symbol, ...(row !== undefined && { row }) }
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
