import type { ReadSummary } from '../reports/workbook/read-summary.js'
import type { RunnableVersion } from '../versions/index.js'
import type { Difference } from './report.js'

/** Digests that do not fit what they stand for, and digests that are missing. */
export function digestDifferences(
  { digests, evaluation, calculationVersion, issuedParts }: ReadSummary,
  version: RunnableVersion,
): Difference[] {
  const differences: Difference[] = []
  const differs = (label: string, recorded: string | null, expected: string): void => {
    if (recorded !== expected)
      differences.push({ kind: 'digest', label, cell: 'Record', recorded, expected, rounding: false })
  }
  differs('digest of the record', digests.record.written, digests.record.found)
  differs('digest of the evaluation', digests.evaluation.written, digests.evaluation.found)
  differs('digest of the record in the evaluation', evaluation.recordDigest, digests.record.found)
  differs('calculation version in the evaluation', evaluation.calculationVersion, calculationVersion)
  if (!issuedParts && !version.withoutPartDigests)
    differs('digests of the parts of the file', null, 'one line for each part')
  return differences
}
