import type { Block, Cell, DefinedName, Finding, Sheet } from '@draughtbook/shared-calc/log'

/** A sheet as plain data, as the worker hands it over, places counted from 0. */
export interface OpenedSheet {
  name: string
  hidden: boolean
  cells: [row: number, column: number, cell: Cell][]
  hiddenRows: number[]
  hiddenColumns: number[]
  merges: Block[]
}

/** A workbook as the worker hands it over. */
export interface OpenedBook {
  fileName: string
  /** Day the file was last changed, YYYY-MM-DD. */
  fileDate?: string
  kind: 'workbook' | 'text' | 'ranges'
  sheets: OpenedSheet[]
  names: DefinedName[]
  date1904: boolean
  decimal?: '.' | ','
  findings: Finding[]
}

const STRIDE = 16_384

/** A sheet in memory, for the on-page grid and for ranges read from Excel. Edits stay here, no file is written. */
export class CellSheet implements Sheet {
  readonly name: string
  readonly hidden: boolean
  rows = 0
  columns = 0
  readonly merges: readonly Block[]
  readonly #cells = new Map<number, Cell>()
  readonly #hiddenRows: ReadonlySet<number>
  readonly #hiddenColumns: ReadonlySet<number>
  /** Merged blocks by the rows they touch, so that a lookup does not walk all of them. */
  readonly #mergesByRow = new Map<number, Block[]>()

  constructor(opened: OpenedSheet) {
    this.name = opened.name
    this.hidden = opened.hidden
    this.merges = opened.merges
    this.#hiddenRows = new Set(opened.hiddenRows)
    this.#hiddenColumns = new Set(opened.hiddenColumns)
    for (const [row, column, cell] of opened.cells) this.set(row, column, cell)
    for (const block of opened.merges)
      for (let row = block.top; row <= block.bottom; row++)
        this.#mergesByRow.set(row, [...(this.#mergesByRow.get(row) ?? []), block])
  }

  at(row: number, column: number): Cell | undefined {
    return this.#cells.get(row * STRIDE + column)
  }

  set(row: number, column: number, cell: Cell | undefined): void {
    if (!cell) {
      this.#cells.delete(row * STRIDE + column)
      return
    }
    this.#cells.set(row * STRIDE + column, cell)
    this.rows = Math.max(this.rows, row + 1)
    this.columns = Math.max(this.columns, column + 1)
  }

  isRowHidden(row: number): boolean {
    return this.#hiddenRows.has(row)
  }

  isColumnHidden(column: number): boolean {
    return this.#hiddenColumns.has(column)
  }

  mergeAt(row: number, column: number): Block | undefined {
    return this.#mergesByRow.get(row)?.find(({ left, right }) => column >= left && column <= right)
  }

  get hasFormulas(): boolean {
    for (const { formula } of this.#cells.values()) if (formula !== undefined) return true
    return false
  }
}
