export type Value = string | number | Date

export interface Look {
  format?: string
  struck?: boolean
  grey?: boolean
  formula?: string
}

export interface Cell extends Look {
  value: Value
}

/** A sheet as a person fills it, apart from any file format, so that a test can also change it before it is written. Rows and columns count from 1. */
export class Sheet {
  readonly cells = new Map<string, Cell>()
  readonly merges: [number, number, number, number][] = []
  readonly hiddenRows = new Set<number>()
  readonly hiddenColumns = new Set<number>()
  hidden = false

  constructor(readonly name: string) {}

  put(row: number, column: number, value: Value | undefined, look: Look = {}): void {
    if (value !== undefined && value !== '') this.cells.set(`${row},${column}`, { value, ...look })
  }

  at(row: number, column: number): Cell | undefined {
    return this.cells.get(`${row},${column}`)
  }

  line(row: number, column: number, values: readonly (Value | undefined)[], look: Look = {}): void {
    for (const [index, value] of values.entries()) this.put(row, column + index, value, look)
  }

  /** A heading over several cells. */
  wide(row: number, column: number, width: number, value: Value): void {
    this.put(row, column, value)
    if (width > 1) this.merges.push([row, column, row, column + width - 1])
  }

  get size(): { rows: number; columns: number } {
    let [rows, columns] = [0, 0]
    for (const key of this.cells.keys()) {
      const [row = 0, column = 0] = key.split(',').map(Number)
      rows = Math.max(rows, row)
      columns = Math.max(columns, column)
    }
    return { rows, columns }
  }

  /** The same sheet with every cell where `move` puts it, under its name or another; formulas do not follow. */
  moved(move: (row: number, column: number) => readonly [number, number], name = this.name): Sheet {
    const sheet = new Sheet(name)
    sheet.hidden = this.hidden
    for (const [key, cell] of this.cells) {
      const [row = 0, column = 0] = key.split(',').map(Number)
      sheet.cells.set(move(row, column).join(','), cell)
    }
    return sheet
  }
}
