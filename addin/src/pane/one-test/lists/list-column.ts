/** One row of a list as typed: text by path within the row, as in `solid.length_m`. */
export type ListRow = Readonly<Record<string, string>>

/** What a choice offers: the record's word and what the form shows for it. */
export type Choices = readonly (readonly [word: string, shown: string])[]

/** A list of the record's words as choices; a word without a label of its own is shown as it is. */
export const choicesOf = <Word extends string>(
  words: readonly Word[],
  labels: Partial<Readonly<Record<NoInfer<Word>, string>>> = {},
): readonly (readonly [Word, string])[] => words.map((word) => [word, labels[word] ?? word] as const)

export const YES_NO: Choices = choicesOf(['yes', 'no'])

/** One thing asked for in each row of a list. */
export interface ListColumn {
  readonly path: string
  readonly label: string
  readonly unit?: string
  readonly kind: 'text' | 'number' | 'whole' | 'flag' | 'choice' | 'date' | 'photo'
  readonly options?: Choices
  /** Asked for only in rows where it applies; what stands there else is not read. */
  readonly when?: (row: ListRow) => boolean
  /** What a new row starts with; shown, and changed by the user. */
  readonly start?: string
}
