import type { Finding } from '../../contract/record/index.js'
import { caution } from '../findings.js'
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
      this.tell(
        `sheet "${view.name}" is too long to search whole: ${what} were looked for as far as ${cell} and not beyond`,
        cell,
      )
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
        this.tell(
          `sheet "${view.name}" has ${sheet.rows} rows; only the first ${READ.rows} were searched`,
          view.address(READ.rows, 0),
        )
      if (sheet.columns > READ.columns)
        this.tell(
          `sheet "${view.name}" has ${sheet.columns} columns; only the first ${READ.columns} were searched`,
          view.address(0, READ.columns),
        )
    }
    const [first] = unread
    if (first !== undefined)
      this.tell(
        `the log has too many sheets; "${first}" and the ${unread.length - 1} after it were not searched`,
        `${first}!A1`,
      )
  }

  findings(): readonly Finding[] {
    return this.found
  }

  private tell(message: string, cell: string): void {
    this.found.push(
      caution('log-not-searched', message, [], [cell], {
        remedy: 'move what belongs to the test to the beginning of the sheet, or to a log of its own',
      }),
    )
  }
}
