import type { Segment } from './columns.js'
import { withoutEmpty } from './empty-rows.js'
import { type LabelledMean, withLabelledMeans } from './labelled-means.js'
import { withoutMeans } from './means.js'
import { type NoteBetween, withNotes } from './notes-between.js'
import { withOddLabels } from './odd-labels.js'
import { withBrackets } from './row-cells.js'
import { withoutCommonGrey } from './row-doubts.js'
import { withoutSamples } from './sampled-steps.js'
import { withoutSigned } from './signed-zero.js'
import { withStepMeans } from './steps.js'
import type { LeftOut, TableRow } from './table-row.js'

/** The rows of a table as its walk found them, with what stood between them. */
interface Walked {
  readonly rows: readonly TableRow[]
  readonly notes: readonly NoteBetween[]
  readonly means: readonly LabelledMean[]
  /** What is left out here is added. */
  readonly leftOut: LeftOut[]
}

/** What the rows of a table are once all of them are known: one alone does not tell a sample from a reading, or a mean from either. */
export function judged(segment: Segment, { rows, notes, means, leftOut }: Walked): TableRow[] {
  const filled = withLabelledMeans(withoutEmpty([...rows], leftOut), [...means], leftOut)
  const told = withNotes(withoutSamples(filled, leftOut), notes, leftOut)
  const plain = withOddLabels(segment, withoutCommonGrey(withBrackets(withoutSigned(told, leftOut))))
  return withStepMeans(segment, withoutMeans(plain, leftOut))
}
