import type { Chapter } from '../parse/chapter.js'
import { FormulaError } from '../parse/expression.js'
import { Block } from './block.js'
import type { Column, Given } from './given.js'
import type { Inputs } from './inputs.js'

/** Inputs of a chapter by symbol. */
export type Bindings<I extends string = string> = Readonly<Partial<Record<I, Given | Column | undefined>>>

/** A test worked out, block by block: the evaluation, the working and the workbook all read it. */
export class Calculation {
  private readonly worked: Block<string>[] = []
  private readonly byId = new Map<string, Block<string>>()

  /** All blocks in the order they were worked out. */
  get blocks(): readonly Block<string>[] {
    return this.worked
  }

  /** Throws FormulaError where there is none of that id. */
  get(id: string): Block<string> {
    const block = this.find(id)
    if (!block) throw new FormulaError(`no block ${id}`)
    return block
  }

  /** Throws FormulaError where an id was used twice. */
  find(id: string): Block<string> | undefined {
    // Most evaluations look for few blocks, and an id is put together from its parts where it is looked at.
    while (this.byId.size < this.worked.length) {
      const block = this.worked[this.byId.size] as Block<string>
      if (this.byId.has(block.id)) throw new FormulaError(`block ${block.id} is calculated twice`)
      this.byId.set(block.id, block)
    }
    return this.byId.get(id)
  }

  /**
   * Evaluates a chapter. Formulas whose inputs are left out (undefined) are left out too.
   * @throws FormulaError when the columns given differ in length
   */
  add<S extends string, I extends string>(
    id: string,
    title: string,
    chapter: Chapter<S, I>,
    bindings: Bindings<I>,
  ): Block<S> {
    const given: (Given | Column | undefined)[] = []
    for (const { symbol } of chapter.inputs) given.push(bindings[symbol])
    return this.addInputs(id, title, chapter, given)
  }

  /** The same with what is given in the order of the chapter's inputs. */
  addInputs<S extends string>(id: string, title: string, chapter: Chapter<S>, given: Inputs): Block<S> {
    const block = isWhole(given)
      ? new Block<S>(id, title, chapter, given)
      : partOf<S>(id, title, chapter, given)
    this.worked.push(block)
    return block
  }

  /** Takes a block that was worked out apart, as one of several of which the best is kept. */
  take<S extends string>(block: Block<S>): Block<S> {
    this.worked.push(block)
    return block
  }
}

const isWhole = (given: Inputs): given is readonly (Given | Column)[] => !given.includes(undefined)

function partOf<S extends string>(id: string, title: string, whole: Chapter<S>, given: Inputs): Block<S> {
  const { chapter, kept } = whole.given((_, input) => given[input] !== undefined)
  const inputs: (Given | Column)[] = []
  for (const input of kept) inputs.push(given[input] as Given | Column)
  return new Block<S>(id, title, chapter, inputs)
}
