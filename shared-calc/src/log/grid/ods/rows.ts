import type { Attributes } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import { addressOf, withSheet } from '../address.js'
import type { CellStore } from '../cell-store.js'
import type { Cell } from '../grid.js'
import { CellText } from './cell-text.js'
import { cellOf } from './stored-cell.js'
import type { Styles } from './styles.js'

/** Rows and cells of one table. Repeats are counted on; only those that hold something are written out. */
export class Rows {
  private row = 0
  private column = 0
  private rowRepeat = 1
  private rowStyle: string | undefined
  private rowHidden = false
  private held: [column: number, cell: Cell][] = []
  private comments: [column: number, text: string][] = []
  private readonly columnStyles: string[] = []
  private columns = 0
  private cell: { attributes: Attributes; repeat: number; covered: boolean } | undefined
  private left = false
  private readonly paragraphs: CellText

  constructor(
    private readonly store: CellStore,
    private readonly styles: Styles,
    private readonly budget: { cells: number },
  ) {
    this.paragraphs = new CellText(styles)
  }

  get inCell(): boolean {
    return this.cell !== undefined
  }

  /** What follows of this table is not read. */
  leave(): void {
    this.left = true
  }

  open(name: string, attributes: Attributes): void {
    if (this.left) return
    if (name === 'table-column') this.openColumn(attributes)
    else if (name === 'table-row') {
      this.rowRepeat = repeats(attributes['table:number-rows-repeated'])
      this.rowStyle = attributes['table:default-cell-style-name']
      this.rowHidden = (attributes['table:visibility'] ?? 'visible') !== 'visible'
      this.column = 0
      this.held = []
      this.comments = []
    } else if (name === 'table-cell' || name === 'covered-table-cell')
      this.cell = {
        attributes,
        repeat: repeats(attributes['table:number-columns-repeated']),
        covered: name === 'covered-table-cell',
      }
  }

  openInCell(name: string, attributes: Attributes): void {
    this.paragraphs.open(name, attributes)
  }

  text(text: string): void {
    if (this.cell) this.paragraphs.text(text)
  }

  closeInCell(name: string): void {
    if (name === 'table-cell' || name === 'covered-table-cell') this.closeCell()
    else this.paragraphs.close()
  }

  close(name: string): void {
    if (name === 'table-row' && !this.left) this.closeRow()
  }

  private openColumn(attributes: Attributes): void {
    const repeat = repeats(attributes['table:number-columns-repeated'])
    const last = Math.min(LIMITS.columns, this.columns + repeat)
    const style = attributes['table:default-cell-style-name'] ?? ''
    for (let column = this.columns; column < last; column++) this.columnStyles[column] = style
    if (last > this.columns && (attributes['table:visibility'] ?? 'visible') !== 'visible')
      this.store.hideColumns(this.columns, last - 1)
    this.columns = last
  }

  private closeCell(): void {
    const { attributes, repeat, covered } = this.cell as NonNullable<Rows['cell']>
    this.cell = undefined
    const cell = this.heldBy(attributes, covered)
    if (cell) {
      if (this.column + repeat > LIMITS.columns)
        refuse('damaged-file', `sheet ${this.store.name}: a cell is beyond the last column`)
      for (let count = 0; count < repeat; count++) this.held.push([this.column + count, cell])
    }
    this.merge(attributes)
    this.column += repeat
  }

  private heldBy(attributes: Attributes, covered: boolean): Cell | undefined {
    const content = this.paragraphs.take()
    if (content.comment !== '') this.comments.push([this.column, content.comment])
    const said = attributes['office:value-type'] ?? attributes['table:formula']
    if (covered || (said === undefined && content.text === '')) return undefined
    const style = attributes['table:style-name'] ?? this.rowStyle ?? this.columnStyles[this.column] ?? ''
    return cellOf(attributes, content, this.styles.of('table-cell', style), () =>
      withSheet(this.store.name, addressOf(this.row, this.column)),
    )
  }

  private merge(attributes: Attributes): void {
    const down = repeats(attributes['table:number-rows-spanned'])
    const across = repeats(attributes['table:number-columns-spanned'])
    if (down === 1 && across === 1) return
    const [bottom, right] = [this.row + down - 1, this.column + across - 1]
    if (bottom >= LIMITS.rows || right >= LIMITS.columns)
      refuse('damaged-file', `sheet ${this.store.name}: a merged block reaches beyond the sheet`)
    this.store.merge({ top: this.row, left: this.column, bottom, right })
  }

  private closeRow(): void {
    if (this.held.length > 0) {
      if (this.row + this.rowRepeat > LIMITS.rows)
        refuse('damaged-file', `sheet ${this.store.name}: a row is beyond the last row`)
      this.budget.cells += this.held.length * this.rowRepeat
      if (this.budget.cells > LIMITS.cells)
        refuse(
          'too-many-cells',
          `more than ${LIMITS.cells} cells are filled (reached at ${withSheet(this.store.name, addressOf(this.row, 0))}): move other data out of the log`,
        )
      for (let row = this.row; row < this.row + this.rowRepeat; row++) {
        if (this.rowHidden) this.store.hideRow(row)
        for (const [column, cell] of this.held) this.store.set(row, column, cell)
        for (const [column, text] of this.comments) this.store.comment(row, column, text)
      }
    }
    this.row += this.rowRepeat
  }
}

/** How often an element is repeated: 1 where nothing or nonsense is said. */
function repeats(said: string | undefined): number {
  const count = Number(said ?? 1)
  return Number.isInteger(count) && count >= 1 ? Math.min(count, LIMITS.rows) : 1
}
