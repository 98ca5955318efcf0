import {
  type Block,
  type Calculation,
  type Column,
  type Given,
  neededSteps,
  type Origin,
} from '../../engine/index.js'
import { BATCH, type Batch, type BatchColumn, layOut, Program } from './batch-value.js'

/** A place in the replay that changes from draw to draw. */
export interface Handle {
  /** Value as it was worked out. */
  readonly nominal: number
  /** One value a draw of the batch; to be filled before each run. */
  readonly draws: Float64Array
}

/** A figure to read off after each run: a scalar of a block. */
export interface Output {
  readonly block: string
  readonly symbol: string
}

/**
 * A calculation made ready to be run again and again with other inputs, {@link BATCH} draws at a time, through the very
 * formulas it was worked out with. First every place that will change is asked for, then it is run.
 */
export class Replay {
  private readonly handles = new Map<string, Handle>()
  private readonly laidOut = new Map<string, Batch | BatchColumn>()
  private readonly program = new Program()
  private readonly wanted: ReadonlyMap<string, ReadonlySet<string>>

  constructor(
    private readonly calculation: Calculation,
    outputs: readonly Output[],
  ) {
    this.wanted = wantedSymbols(calculation, outputs)
  }

  /** A block of the calculation that is replayed. */
  block(id: string): Block<string> {
    return this.calculation.get(id)
  }

  /**
   * An input of a block, in one row where it is a column; it takes what its draws are filled with, not what another
   * block works out. Undefined where the outputs do not depend on it.
   */
  handle(id: string, symbol: string, row?: number): Handle | undefined {
    const block = this.calculation.find(id)
    const given = block?.input(symbol)
    if (!block || given === undefined || !this.wanted.get(id)?.has(symbol)) return undefined
    const key = keyOf(id, symbol, row)
    const known = this.handles.get(key)
    if (known) return known
    const nominal = 'values' in given ? given.values[row ?? 0] : given.value
    if (nominal === undefined) return undefined
    const handle = { nominal, draws: new Float64Array(BATCH).fill(nominal) }
    this.handles.set(key, handle)
    return handle
  }

  /** Reads an output of each draw after a run. Asking for the first lays the work out: no handle can follow. */
  reader({ block, symbol }: Output): Batch {
    const value = this.symbol(block, symbol)
    if (Array.isArray(value)) throw new RangeError(`${symbol} of ${block} is a column`)
    return value as Batch
  }

  /** Works the outputs out again from what the handles were filled with. */
  run(): void {
    for (const loop of this.program.loops) loop()
  }

  private symbol(id: string, symbol: string): Batch | BatchColumn {
    const key = keyOf(id, symbol)
    const known = this.laidOut.get(key)
    if (known !== undefined) return known
    const block = this.calculation.get(id)
    const step = block.chapter.steps.find((candidate) => candidate.symbol === symbol)
    const value = step
      ? layOut(step.tree, (used) => this.symbol(id, used), this.program)
      : this.input(block, symbol)
    this.laidOut.set(key, value)
    return value
  }

  private input(block: Block<string>, symbol: string): Batch | BatchColumn {
    const given = block.input(symbol)
    if (given === undefined) return block.value(symbol)
    if ('values' in given) return this.column(block, symbol, given)
    return this.handles.get(keyOf(block.id, symbol))?.draws ?? this.from(given.origin) ?? given.value
  }

  private column(block: Block<string>, symbol: string, { values, origin }: Column): BatchColumn {
    return Array.from(
      values,
      (value, row) =>
        this.handles.get(keyOf(block.id, symbol, row))?.draws ?? this.from(origin(row)) ?? value,
    )
  }

  private from(origin: Origin): Batch | undefined {
    if (origin.kind !== 'block') return undefined
    const value = this.symbol(origin.block, origin.symbol)
    return Array.isArray(value) ? (value[origin.row ?? 0] as Batch) : (value as Batch)
  }
}

const keyOf = (block: string, symbol: string, row?: number): string =>
  row === undefined ? `${block}|${symbol}` : `${block}|${symbol}|${row}`

/** Which symbols of which blocks the outputs need, followed back through the origins of the inputs. */
function wantedSymbols(calculation: Calculation, outputs: readonly Output[]): Map<string, Set<string>> {
  const wanted = new Map<string, Set<string>>()
  const open = [...outputs]
  for (let next = open.pop(); next; next = open.pop()) {
    const known = wanted.get(next.block) ?? new Set<string>()
    wanted.set(next.block, known)
    if (known.has(next.symbol)) continue
    const block = calculation.get(next.block)
    for (const { symbol, given } of inputsOf(block, next.symbol)) {
      known.add(symbol)
      for (const origin of originsOf(given))
        if (origin.kind === 'block') open.push({ block: origin.block, symbol: origin.symbol })
    }
    known.add(next.symbol)
  }
  return wanted
}

/** The inputs that one symbol of a block needs. */
function inputsOf(block: Block<string>, symbol: string): { symbol: string; given: Given | Column }[] {
  const used = new Set([
    symbol,
    ...neededSteps(block.chapter, new Set([symbol])).flatMap((step) => [...step.uses]),
  ])
  return [...used].flatMap((name) => {
    const given = block.input(name)
    return given === undefined ? [] : [{ symbol: name, given }]
  })
}

const originsOf = (given: Given | Column): Origin[] =>
  'value' in given ? [given.origin] : Array.from(given.values, (_, row) => given.origin(row))
