import type { AssessedTest, EvaluateOptions } from '../assessment/evaluate.js'
import type { Evaluation, TestRecord } from '../contract/record/index.js'
import type { packSummary } from '../reports/workbook/issued/pack-summary.js'
import type { layOutSummary } from '../reports/workbook/write-summary.js'
import type * as several from './several.js'

/** How a version evaluates a record, and how it lays the summary out in cells. */
export interface VersionParts {
  readonly evaluateWorked: (
    record: TestRecord,
    options?: EvaluateOptions,
  ) => { evaluation: Evaluation; test: AssessedTest }
  readonly layOutSummary: typeof layOutSummary
  /** Its workbooks hold no digests of their parts: they were issued before that. */
  readonly withoutPartDigests?: true
  /** Makes the parts of the workbook from it; left out: as the current version does. */
  readonly packSummary?: typeof packSummary
  /** Its buildings and stages; left out of versions frozen before they were kept with the rest. */
  readonly several?: SeveralParts
}

/** How a version writes what is made of several tests. */
export type SeveralParts = typeof several

/** One calculation version that can be run. */
export interface RunnableVersion extends VersionParts {
  /** As written into evaluations and workbooks. */
  readonly version: string
  /** What changed against the version before, for the auditor. */
  readonly changed: string
}

/** A version that is no longer the current one: its code is loaded only when a file asks for it. */
export interface StoredVersion {
  readonly version: string
  readonly changed: string
  readonly load: () => Promise<VersionParts>
  /** Where its buildings and stages are kept in a file of their own. */
  readonly loadSeveral?: () => Promise<SeveralParts>
}

export type KnownVersion = RunnableVersion | StoredVersion

/** The version ready to run. */
export async function runnable(known: KnownVersion): Promise<RunnableVersion> {
  if (!('load' in known)) return known
  const { version, changed } = known
  return { version, changed, ...(await known.load()) }
}

/** How a version writes buildings and stages; undefined for the first, which wrote none. */
export async function severalOf(known: KnownVersion): Promise<SeveralParts | undefined> {
  if ('loadSeveral' in known && known.loadSeveral) return known.loadSeveral()
  return (await runnable(known)).several
}
