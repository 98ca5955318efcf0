import { earlierColumns, leakColumns } from './lists/leaks.js'
import { deviceColumns, gaugeColumns } from './lists/plan.js'
import { cautionColumns, openingColumns } from './lists/preparation.js'
import { elementColumns, spaceColumns } from './lists/take-off.js'

/** One row of a list as typed: text by path within the row, as in `solid.length_m`. */
export type ListRow = Readonly<Record<string, string>>

/** One thing asked for in each row of a list. */
export interface ListColumn {
  readonly path: string
  readonly label: string
  readonly unit?: string
  readonly kind: 'text' | 'number' | 'whole' | 'flag' | 'choice' | 'date'
  readonly options?: readonly (readonly [value: string, label: string])[]
  /** Asked for only in rows where it applies; what stands there else is not read. */
  readonly when?: (row: ListRow) => boolean
  /** What a new row starts with; shown, and changed by the user. */
  readonly start?: string
}

/** Lists of a record, by their path in it. */
export const listColumns = {
  'takeOff.spaces': spaceColumns,
  'takeOff.elements': elementColumns,
  'plan.devices': deviceColumns,
  'plan.gauges': gaugeColumns,
  'test.openings': openingColumns,
  'preparation.cautions': cautionColumns,
  'leaks.list': leakColumns,
  'leaks.earlierTests': earlierColumns,
} as const satisfies Readonly<Record<string, readonly ListColumn[]>>

export type ListName = keyof typeof listColumns
export type Lists = Readonly<Partial<Record<ListName, readonly ListRow[]>>>

/** A new row, with what its columns start with. */
export const newRow = (list: ListName): ListRow =>
  Object.fromEntries(
    (listColumns[list] as readonly ListColumn[]).flatMap(({ path, start }) =>
      start === undefined ? [] : [[path, start]],
    ),
  )
