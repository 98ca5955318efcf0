import { fileText } from '../../catalogue/findings/log/file.js'
import { type Remark, remarkFinding } from '../../catalogue/findings/remark.js'
import type { Finding } from '../../contract/record/index.js'
import { READ, type View } from './grid/view.js'

/** Called with the first cell at which a search of a sheet ended early. */
export type Stopped = (cell: string) => void

/** Gathers where searches ended before the end of a sheet. */
export class NotSearched {
  private readonly found: Finding[] = []

  /** For one search of one sheet; what it looks for goes into the finding. */
  of(view: View, what: string): Stopped {
    return (cell) => {
      if (view.sheet.hidden || this.found.some(({ cells }) => cells?.includes(cell))) return
      this.tell(fileText('log-not-searched/end', { sheet: view.name, what, last: cell }), cell)
    }
  }

  /** Rows, columns and sheets beyond those that are looked at; rows of a raw series are read elsewhere. */
  beyond(
    tables: readonly { readonly view: View; readonly series: readonly unknown[] }[],
    unread: readonly string[],
  ): void {
    for (const { view, series } of tables) {
      const { sheet } = view
      if (sheet.hidden) continue
      if (sheet.rows > READ.rows && series.length === 0)
        this.tell(beyond(view, sheet.rows, READ.rows, 'rows'), view.address(READ.rows, 0))
      if (sheet.columns > READ.columns)
        this.tell(beyond(view, sheet.columns, READ.columns, 'columns'), view.address(0, READ.columns))
    }
    const [first] = unread
    if (first !== undefined)
      this.tell(fileText('log-not-searched/sheets', { first, count: unread.length }), `${first}!A1`)
  }

  findings(): readonly Finding[] {
    return this.found
  }

  private tell(remark: Remark, cell: string): void {
    this.found.push(remarkFinding(remark, [cell]))
  }
}

const beyond = ({ name }: View, count: number, most: number, what: 'rows' | 'columns'): Remark =>
  fileText('log-not-searched/beyond', { sheet: name, count, most, what })
