import { LIMITS } from '../limits.js'
import { refuse } from '../problem.js'
import type { Block } from './address.js'
import type { Cell, Sheet } from './grid.js'
import { HiddenColumns } from './hidden-columns.js'
import { Merges } from './merges.js'

const STRIDE = 16_384

/** Cells of one sheet by place, with the little a reader must know about rows, columns and merges. */
export class CellStore implements Sheet {
  private readonly byPlace = new Map<number, Cell>()
  private readonly hiddenRows = new Set<number>()
  private readonly hiddenColumns = new HiddenColumns()
  private readonly merges = new Merges()
  private readonly comments = new Map<number, string>()
  rows = 0
  columns = 0

  constructor(
    readonly name: string,
    readonly hidden = false,
  ) {}

  get size(): number {
    return this.byPlace.size
  }

  has(row: number, column: number): boolean {
    return this.byPlace.has(row * STRIDE + column)
  }

  set(row: number, column: number, cell: Cell): void {
    this.byPlace.set(row * STRIDE + column, cell)
    if (row >= this.rows) this.rows = row + 1
    if (column >= this.columns) this.columns = column + 1
  }

  at(row: number, column: number): Cell | undefined {
    return this.byPlace.get(row * STRIDE + column)
  }

  *cells(): Iterable<[row: number, column: number, cell: Cell]> {
    for (const [key, cell] of this.byPlace) yield [Math.floor(key / STRIDE), key % STRIDE, cell]
  }

  hideRow(row: number): void {
    this.hiddenRows.add(row)
  }

  hideColumns(first: number, last: number): void {
    this.hiddenColumns.add(first, last)
  }

  merge(block: Block): void {
    if (this.merges.count >= LIMITS.merges)
      refuse('too-many-cells', `sheet ${this.name} holds more than ${LIMITS.merges} merged blocks`)
    this.merges.add(block)
  }

  comment(row: number, column: number, text: string): void {
    if (this.comments.size >= LIMITS.comments)
      refuse('too-many-cells', `sheet ${this.name} holds more than ${LIMITS.comments} comments`)
    this.comments.set(row * STRIDE + column, text.slice(0, LIMITS.commentCharacters))
  }

  commentAt(row: number, column: number): string | undefined {
    return this.comments.get(row * STRIDE + column)
  }

  isRowHidden(row: number): boolean {
    return this.hiddenRows.has(row)
  }

  isColumnHidden(column: number): boolean {
    return this.hiddenColumns.has(column)
  }

  mergeAt(row: number, column: number): Block | undefined {
    return this.merges.at(row, column)
  }
}
