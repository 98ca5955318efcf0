/** Where an input of a block comes from: the record, another block, or an assumption that a finding names. */
export type Origin =
  | { readonly kind: 'record'; readonly path: string }
  | { readonly kind: 'block'; readonly block: string; readonly symbol: string; readonly row?: number }
  | { readonly kind: 'assumed'; readonly reason: string }
  | { readonly kind: 'rule'; readonly reason: string }

/** A value with its origin. */
export interface Given {
  readonly value: number
  readonly origin: Origin
}

/**
 * A column of values, one a row, with the origin of each row. Plain arrays: a test's columns hold ten numbers or so, and
 * a typed array of that size costs more to make than all that is done with it.
 */
export interface Column {
  readonly values: readonly number[]
  readonly origin: (row: number) => Origin
}

export const fromRecord = (path: string, value: number): Given => ({
  value,
  origin: { kind: 'record', path },
})
/** A column of the record: `path` names the field of each row. */
export const columnFromRecord = (values: readonly number[], path: (row: number) => string): Column => ({
  values,
  origin: (row) => ({ kind: 'record', path: path(row) }),
})
/** A column made up of single values. */
export const columnOf = (given: readonly Given[]): Column => ({
  values: given.map(({ value }) => value),
  origin: (row) => (given[row] as Given).origin,
})
/** A stand-in for something not logged: a finding must say so. */
export const assumed = (value: number, reason: string): Given => ({
  value,
  origin: { kind: 'assumed', reason },
})
/** A number that a method, a target or a direction fixes. */
export const byRule = (value: number, reason: string): Given => ({ value, origin: { kind: 'rule', reason } })
