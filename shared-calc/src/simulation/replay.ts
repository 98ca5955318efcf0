import {
  type Block,
  type Calculation,
  type Column,
  type Given,
  neededSteps,
  type Origin,
  type Step,
} from '../sheet/index.js'

/** A place in the replay that can be changed from draw to draw. */
export interface Handle {
  /** Value as it was worked out. */
  readonly nominal: number
  readonly set: (value: number) => void
}

interface Frame {
  readonly scalars: number[]
  readonly columns: Float64Array[]
  readonly rows: number
}

interface Stage {
  readonly block: Block
  readonly frame: Frame
  readonly steps: readonly Step[]
  /** What is taken from other blocks before the steps are run, by the place it goes to. */
  readonly copies: Map<string, () => void>
}

/** A figure to read off after each round: a scalar of a block. */
export interface Output {
  readonly block: string
  readonly symbol: string
}

/**
 * A calculation made ready to be run again and again with other inputs, through the very formulas it was worked out
 * with: only the blocks and steps that lead from the changed inputs to the outputs are run.
 */
export class Replay {
  private readonly stages = new Map<string, Stage>()
  private readonly order: Stage[] = []
  private readonly wanted = new Map<string, Set<string>>()

  constructor(
    private readonly calculation: Calculation,
    private readonly outputs: readonly Output[],
  ) {
    this.want()
    for (const block of calculation.blocks) {
      const symbols = this.wanted.get(block.id)
      if (symbols) this.addStage(block, symbols)
    }
  }

  /** A block of the calculation that is replayed. */
  block(id: string): Block {
    return this.calculation.get(id)
  }

  /**
   * An input of a block, in one row where it is a column; from now on it takes what it is set to, not what another
   * block works out. Undefined where the outputs do not depend on it.
   */
  handle(block: string, symbol: string, row?: number): Handle | undefined {
    const stage = this.stages.get(block)
    const slot = stage?.block.chapter.slots.get(symbol)
    if (!stage || !slot) return undefined
    const { scalars, columns } = stage.frame
    stage.copies.delete(row === undefined ? `${slot.index}` : `${slot.index}/${row}`)
    if (row === undefined)
      return {
        nominal: scalars[slot.index] as number,
        set: (value) => {
          scalars[slot.index] = value
        },
      }
    const column = columns[slot.index] as Float64Array
    return {
      nominal: column[row] as number,
      set: (value) => {
        column[row] = value
      },
    }
  }

  /** Works the outputs out again from what the handles were set to. */
  run(): void {
    for (const { copies, steps, frame } of this.order) {
      for (const copy of copies.values()) copy()
      for (const { rows, slot, closure } of steps) {
        if (rows) {
          const column = frame.columns[slot] as Float64Array
          for (let row = 0; row < frame.rows; row += 1) column[row] = closure(frame, row)
        } else frame.scalars[slot] = closure(frame, 0)
      }
    }
  }

  /** Reads an output after {@link run}. */
  reader({ block, symbol }: Output): () => number {
    const stage = this.stages.get(block)
    const slot = stage?.block.chapter.slots.get(symbol)
    if (!stage || !slot) throw new RangeError(`replay does not work out ${symbol} of ${block}`)
    const { scalars } = stage.frame
    return () => scalars[slot.index] as number
  }

  /** Which symbols of which blocks the outputs need, followed back through the origins of the inputs. */
  private want(): void {
    const open = this.outputs.map(({ block, symbol }) => ({ block, symbol }))
    for (let next = open.pop(); next; next = open.pop()) {
      const known = this.wanted.get(next.block) ?? new Set<string>()
      if (known.has(next.symbol)) continue
      known.add(next.symbol)
      this.wanted.set(next.block, known)
      const block = this.calculation.get(next.block)
      for (const origin of originsOf(block, known))
        if (origin.kind === 'block') open.push({ block: origin.block, symbol: origin.symbol })
    }
  }

  private addStage(block: Block, symbols: ReadonlySet<string>): void {
    const { chapter, rows, bindings } = block
    const frame: Frame = { scalars: [], columns: [], rows }
    const copies = new Map<string, () => void>()
    for (const { value } of chapter.constants) frame.scalars.push(value)
    const steps = neededSteps(chapter, symbols)
    const used = new Set(steps.flatMap((step) => [...step.uses]))
    for (const { symbol } of chapter.inputs) {
      const given = bindings[symbol]
      if (given === undefined) continue
      if ('values' in given)
        frame.columns.push(this.column(given, used.has(symbol), frame.columns.length, copies))
      else this.scalar(given, used.has(symbol), frame.scalars, copies)
    }
    for (const step of chapter.steps)
      if (step.rows) frame.columns.push(Float64Array.from(block.column(step.symbol)))
      else frame.scalars.push(block.value(step.symbol))
    const stage = { block, frame, steps, copies }
    this.stages.set(block.id, stage)
    this.order.push(stage)
  }

  private scalar(given: Given, used: boolean, scalars: number[], copies: Map<string, () => void>): void {
    const index = scalars.push(given.value) - 1
    const source = used ? this.source(given.origin) : undefined
    if (!source) return
    const { list, at } = source
    copies.set(`${index}`, () => {
      scalars[index] = list[at] as number
    })
  }

  /** A whole column of one block is shared, not copied; a column put together from several is copied row by row. */
  private column(given: Column, used: boolean, place: number, copies: Map<string, () => void>): Float64Array {
    const { values, origin } = given
    const whole = used ? this.wholeColumn(given) : undefined
    if (whole) return whole
    const column = Float64Array.from(values)
    if (!used) return column
    for (let row = 0; row < column.length; row += 1) {
      const source = this.source(origin(row))
      if (!source) continue
      const { list, at } = source
      copies.set(`${place}/${row}`, () => {
        column[row] = list[at] as number
      })
    }
    return column
  }

  private wholeColumn({ values, origin }: Column): Float64Array | undefined {
    const first = values.length > 0 ? origin(0) : undefined
    if (first?.kind !== 'block') return undefined
    for (let row = 0; row < values.length; row += 1) {
      const at = origin(row)
      if (at.kind !== 'block' || at.block !== first.block || at.symbol !== first.symbol || at.row !== row)
        return undefined
    }
    const stage = this.stages.get(first.block)
    const slot = stage?.block.chapter.slots.get(first.symbol)
    return slot?.rows && stage?.frame.rows === values.length ? stage.frame.columns[slot.index] : undefined
  }

  private source(origin: Origin): { list: number[] | Float64Array; at: number } | undefined {
    if (origin.kind !== 'block') return undefined
    const stage = this.stages.get(origin.block)
    const slot = stage?.block.chapter.slots.get(origin.symbol)
    if (!stage || !slot) return undefined
    if (!slot.rows) return { list: stage.frame.scalars, at: slot.index }
    return { list: stage.frame.columns[slot.index] as Float64Array, at: origin.row ?? 0 }
  }
}

/** Where the inputs come from that the symbols of a block need. */
function originsOf(block: Block, symbols: ReadonlySet<string>): Origin[] {
  const used = new Set(neededSteps(block.chapter, symbols).flatMap((step) => [...step.uses]))
  return [...used, ...symbols].flatMap((symbol) => {
    const given = block.bindings[symbol]
    if (given === undefined) return []
    if ('value' in given) return [given.origin]
    return Array.from(given.values, (_, row) => given.origin(row))
  })
}
