import type { Column, Origin } from '../../engine/index.js'
import type { Address } from './address.js'

/** Where every value of the workbook stands: fields of the record, and symbols of the blocks. */
export class Places {
  private readonly record = new Map<string, Address>()
  private readonly symbols = new Map<string, Address>()

  placeField(path: string, address: Address): void {
    this.record.set(path, address)
  }

  /** The cell of a scalar, or the first of a column's cells, which stand one below the other. */
  placeSymbol(block: string, symbol: string, address: Address): void {
    this.symbols.set(`${block}|${symbol}`, address)
  }

  field(path: string): Address | undefined {
    return this.record.get(path)
  }

  /** Every field with its cell, in the order in which they were placed. */
  get fields(): ReadonlyMap<string, Address> {
    return this.record
  }

  symbol(block: string, symbol: string, row = 0): Address {
    const first = this.symbols.get(`${block}|${symbol}`)
    if (!first) throw new RangeError(`${symbol} of block ${block} has no cell`)
    return { ...first, row: first.row + row }
  }

  /** The cell a value comes from; undefined where the value has no cell of its own yet (a rule's, or an assumed one). */
  origin(origin: Origin): Address | undefined {
    if (origin.kind === 'record') return this.record.get(origin.path)
    if (origin.kind === 'block') return this.symbol(origin.block, origin.symbol, origin.row)
    return undefined
  }

  /** The first cell of a column whose rows already stand one below the other on a sheet. */
  run({ values, origin }: Column): Address | undefined {
    let first: Address | undefined
    for (let row = 0; row < values.length; row += 1) {
      const cell = this.origin(origin(row))
      if (!cell) return undefined
      first ??= cell
      if (cell.sheet !== first.sheet || cell.column !== first.column || cell.row !== first.row + row)
        return undefined
    }
    return first
  }
}
