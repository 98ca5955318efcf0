import type { TestRecord } from '../contract/record/index.js'
import type { TestLine } from '../reports/register/test-line.js'
import type { ColumnPlaces, Quoted } from '../reports/register/workbook/quoted.js'

/**
 * What came of re-running one archived test, from best to worst. Saved again: by another program, and every figure and everything
 * that is seen agrees. Agrees: every figure and cell does, to the last digits or as far as they are shown.
 */
export const outcomes = [
  'exactly as issued',
  'saved again',
  'agrees',
  'older calculation version',
  'differs',
  'inputs changed after issue',
  'signature not accepted',
  'cannot be read',
] as const
export type RerunOutcome = (typeof outcomes)[number]

/** Outcomes that an auditor must look at. */
export const bad: readonly RerunOutcome[] = [
  'differs',
  'inputs changed after issue',
  'signature not accepted',
  'cannot be read',
]

export const differenceKinds = [
  'input',
  'figure',
  'cell',
  'formula',
  'appearance',
  'sheet',
  'drawing',
  'page',
  'name',
  'workbook',
  'part',
  'digest',
  'signature',
  'evaluation',
] as const
export type DifferenceKind = (typeof differenceKinds)[number]

/** What stands in the archived file against what it should be. */
export interface Difference {
  /**
   * input: a logged value is not the recorded one · figure: a recorded result is not what the inputs give · cell: a
   * cell's value · formula: a cell's formula · appearance: number format, hidden or struck through · sheet: a sheet is
   * missing or added · drawing: chart, picture, text box, comment · page: print set-up · name: a defined name · workbook:
   * calculation settings and file properties · part: something else in a part of the file · digest, signature: does not fit the
   * data · evaluation: another part of the recorded evaluation.
   */
  readonly kind: DifferenceKind
  readonly label: string
  readonly unit?: string
  /** Cell of the archived file, as `Working!C12`. */
  readonly cell?: string
  /** Field of the record or evaluation. */
  readonly path?: string
  /** What the file holds; null: nothing. */
  readonly recorded: DifferenceValue
  /** What it should hold; null: nothing. */
  readonly expected: DifferenceValue
  /** Recorded − expected, for numbers. */
  readonly change?: number
  /** Whether rounding alone explains it. */
  readonly rounding: boolean
  /** The formula with its numbers put in, for a figure. */
  readonly working?: string
  /** What the figures become by this change alone, for a changed input: recorded is as issued, expected is recalculated. */
  readonly follows?: readonly Difference[]
}
export type DifferenceValue = number | string | boolean | null

export type SignatureState =
  | { readonly state: 'not signed' }
  | { readonly state: 'valid' | 'invalid' | 'key not given'; readonly keyId: string }

/** What a file is: a test, or a report on several tests. */
export const rerunKinds = [
  'summary workbook',
  'own layout',
  'register',
  'building',
  'stages',
  're-run',
] as const
export type RerunKind = (typeof rerunKinds)[number]

/** One archived test re-run. */
export interface RerunTest {
  /** Path of the file as given. */
  readonly file: string
  /** What tells several tests of one file apart; absent where there is one. */
  readonly part?: string
  readonly outcome: RerunOutcome
  /** One sentence on the outcome. */
  readonly why: string
  readonly kind?: RerunKind
  readonly building?: string
  readonly site?: string
  readonly date?: string
  readonly testNumber?: string
  readonly verdict?: { readonly recorded: string; readonly recomputed: string }
  readonly calculationVersion?: string
  readonly recordDigest?: string
  readonly signature?: SignatureState
  /** How much was compared. */
  readonly compared: { readonly figures: number; readonly cells: number }
  /** Against what its own calculation version gives. */
  readonly differences: readonly Difference[]
  /** What the current version gives instead, where the file was made under an older one. */
  readonly sinceIssue: readonly Difference[]
  /** What shows only among the files of a re-run: several files of one test, names that were swapped. */
  readonly remarks?: readonly string[]
  /** What was not checked. */
  readonly notes: readonly string[]
  /** What a register is made of. Only until all files of a re-run are compared. */
  readonly line?: TestLine
  /** What it was worked out from, and why its file cannot be taken as issued. Only until all files of a re-run are compared. */
  readonly given?: { readonly record: TestRecord; readonly altered?: string }
  /** Of a register: what it shows. Only until all files of a re-run are compared. */
  readonly register?: RegisterRead
  /** Of a report on several tests: its bytes in hex, which can lie in a queue. Only until all files of a re-run are compared. */
  readonly bytes?: string
}

/** A register as it was read from its file. */
export interface RegisterRead {
  readonly rows: readonly QuotedRow[]
  readonly places: ColumnPlaces
  /** The only month and the only client it is about; absent: all. */
  readonly month?: string
  readonly client?: string
  /** Date that counts as today in it, as 2026-11-26. */
  readonly asOf?: string
}

/** A row of a register, counted from 0, with what it shows of its test. */
export interface QuotedRow {
  readonly row: number
  readonly file: string
  readonly role: string
  /** Whether it is included in totals, to be billed, and still to be retested, as the row says. */
  readonly counts: boolean
  readonly billed: boolean
  readonly retest: boolean
  readonly shown: Quoted
}

/** A file that could not be re-run, with the reason. */
export const unreadable = (file: string, why: string): RerunTest => ({
  file,
  outcome: 'cannot be read',
  why,
  compared: { figures: 0, cells: 0 },
  differences: [],
  sinceIssue: [],
  notes: [],
})

/** One difference as an auditor reads it. Null: nothing there; undefined: not known, or not asked. */
export interface ThreeValues {
  readonly issued: DifferenceValue | undefined
  readonly inFile: DifferenceValue | undefined
  readonly workedOut: DifferenceValue | undefined
}

/**
 * What was issued, what is in the file now, and what a new calculation gives.
 * @param following - whether it stands under a changed input: then it is what the change does to a figure
 */
export function threeValues(
  { kind, recorded, expected }: Pick<Difference, 'kind' | 'recorded' | 'expected'>,
  following = false,
): ThreeValues {
  if (following) return { issued: recorded, inFile: undefined, workedOut: expected }
  if (kind === 'figure' || kind === 'evaluation' || kind === 'digest')
    return { issued: undefined, inFile: recorded, workedOut: expected }
  const computed = kind === 'cell' && typeof expected === 'number'
  return { issued: expected, inFile: recorded, workedOut: computed ? expected : undefined }
}
