import type { Direction } from '../../../contract/record/index.js'
import type { Written } from '../../cells/written.js'
import type { KnownColumn } from './columns.js'
import type { RowDoubt } from './row-doubts.js'

/** One number of the log with its cell. */
export interface Figure extends Written {
  readonly cell: string
}

export interface TableRow {
  readonly row: number
  readonly kind: 'reading' | 'zero'
  readonly which?: 'before' | 'after'
  readonly pressure: Figure
  /** Flows or device pressures, one a carrier column. */
  readonly carriers: readonly (Figure | undefined)[]
  /** Ring or plate of each carrier, where the table has a column for it. */
  readonly ranges: readonly ({ text: string; cell: string } | undefined)[]
  readonly direction?: Direction
  readonly test?: string
  readonly hidden: boolean
  /** The mean of the zero-flow values of one sign only. */
  readonly ofOneSign?: true
  /** Nought in pressure and flow, and no word that it is zero flow. */
  readonly empty?: true
  /** Set where the reading is the mean of several rows: cells of their pressures, and the column that names the step. */
  readonly meanOf?: { readonly cells: readonly string[]; readonly steps: KnownColumn }
  /** What makes it doubtful whether the row counts: grey writing, or a remark. */
  readonly doubt?: RowDoubt
}

export interface LeftOut {
  readonly cell: string
  readonly why: string
  readonly hidden?: boolean
  /** It is a remark in a line of its own. */
  readonly isNote?: true
  /** Row whose cells say by themselves why they are no reading. */
  readonly row?: number
}

export interface WalkedRows {
  readonly rows: readonly TableRow[]
  readonly leftOut: readonly LeftOut[]
  /** Last row that belongs to the table. */
  readonly last: number
}
