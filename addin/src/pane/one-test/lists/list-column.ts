/** One row of a list as typed: text by path within the row, as in `solid.length_m`. */
export type ListRow = Readonly<Record<string, string>>

/** One thing asked for in each row of a list. */
export interface ListColumn {
  readonly path: string
  readonly label: string
  readonly unit?: string
  readonly kind: 'text' | 'number' | 'whole' | 'flag' | 'choice' | 'date' | 'photo'
  readonly options?: readonly (readonly [value: string, label: string])[]
  /** Asked for only in rows where it applies; what stands there else is not read. */
  readonly when?: (row: ListRow) => boolean
  /** What a new row starts with; shown, and changed by the user. */
  readonly start?: string
}
