/** How a source is known: its passage was seen, only remembered, worked out here, or it is trade practice. */
export type Seen = 'read' | 'memory' | 'derived' | 'common practice' | 'definition'

export interface Source {
  readonly text: string
  readonly seen: Seen
  /** Set where a method borrows a limit from another standard: a breach of it is then only a note. */
  readonly takenOver?: boolean
}

/** A named number or column of numbers with its unit ('1' for a plain number). */
export interface Quantity<S extends string = string> {
  readonly symbol: S
  readonly name: string
  readonly unit: string
}

/** What a chapter of formulas is given. `rows: true` marks a column: one value for each row of the chapter. */
export interface Input<S extends string = string> extends Quantity<S> {
  readonly rows?: boolean
}

/** A domain formula as data. The expression is legal mathjs and is written nowhere else. */
export interface Formula<S extends string = string> extends Quantity<S> {
  readonly expression: string
  readonly source: Source
}

export interface Constant extends Quantity {
  readonly value: number
  readonly source: Source
}

const marks: Record<Seen, string> = {
  read: '',
  memory: ' (value from memory)',
  derived: ' (derived)',
  'common practice': '',
  definition: '',
}

/** The source as printed: a clause that nobody has read is marked so. */
export const sourceText = ({ text, seen }: Source): string => `${text}${marks[seen]}`
