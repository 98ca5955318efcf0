import { cellsOf, type View } from './view.js'

/** A sheet seen from the other side, with the way back to its own cells. */
export interface Mirrored {
  readonly view: View
  /** Row and column of the sheet itself. */
  own(row: number, column: number): { row: number; column: number }
}

/** The sheet with its columns in the opposite order, so that labels behind their values stand in front of them. */
export function fromTheRight(view: View): Mirrored {
  return seen(view, (row, column) => ({ row, column: view.columns - 1 - column }))
}

/** The sheet with its rows in the opposite order, so that labels below their values stand above them. */
export function fromBelow(view: View): Mirrored {
  return seen(view, (row, column) => ({ row: view.rows - 1 - row, column }))
}

function seen(view: View, own: Mirrored['own']): Mirrored {
  const through =
    <T>(of: (row: number, column: number) => T) =>
    (row: number, column: number): T => {
      const at = own(row, column)
      return of(at.row, at.column)
    }
  return {
    own,
    view: {
      ...view,
      ...cellsOf(through(view.at)),
      address: through(view.address),
      hidden: through(view.hidden),
      comment: through(view.comment),
      right: (_, column) => column,
    },
  }
}
