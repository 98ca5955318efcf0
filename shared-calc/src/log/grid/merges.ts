import Flatbush from 'flatbush'
import type { Block } from './address.js'

/** The merged blocks of a sheet, found by a cell without looking through all of them: a sheet may have 50,000. */
export class Merges {
  private readonly blocks: Block[] = []
  private index: Flatbush | undefined

  get count(): number {
    return this.blocks.length
  }

  add(block: Block): void {
    this.blocks.push(block)
    this.index = undefined
  }

  /** The block a cell belongs to. Spreadsheets do not let blocks overlap; where a file does, it is one of them. */
  at(row: number, column: number): Block | undefined {
    if (this.blocks.length === 0) return undefined
    this.index ??= this.indexed()
    const [found] = this.index.neighbors(column, row, 1, 0)
    return found === undefined ? undefined : this.blocks[found]
  }

  private indexed(): Flatbush {
    const index = new Flatbush(this.blocks.length)
    for (const { top, left, bottom, right } of this.blocks) index.add(left, top, right, bottom)
    index.finish()
    return index
  }
}
