/**
 * A chapter as `npm run formulas` writes it: what stands where, and the straight-line function that works it out. Nothing
 * evaluates text at run time, so a strict content-security policy holds.
 */
export interface Script {
  /** Symbols of its constants. */
  readonly constants: readonly string[]
  /** Its inputs in their order, as {@link listed}. */
  readonly inputs: string
  /** Its formulas in the order of their working, as {@link listed}, each with the expression it was written from. */
  readonly steps: readonly (readonly [name: string, expression: string])[]
  readonly run: Run
}

/** Fills the places of a chapter's formulas from those of its constants and inputs. */
export type Run = (scalars: number[], columns: (readonly number[])[], rows: number) => void

/** How a script names a symbol: a column is marked. */
export const listed = ({ symbol, rows }: { readonly symbol: string; readonly rows?: boolean }): string =>
  rows ? `${symbol}[]` : symbol

export const unlisted = (name: string): { readonly symbol: string; readonly rows: boolean } =>
  name.endsWith('[]') ? { symbol: name.slice(0, -2), rows: true } : { symbol: name, rows: false }
