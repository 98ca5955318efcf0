import type { Evaluation } from '../../../contract/record/index.js'
import { type RecordSignature, signatureRows, signedMessage } from '../record-signature.js'
import type { Parts } from '../zip/parts.js'
import { addIssuedRows, ISSUED_PART, type IssuedRow } from './add-issued-rows.js'
import { digestOfParts, digestParts, type IssuedParts, partLines } from './issued-parts.js'

/**
 * Finishes a workbook: the digests of its parts, whatever they are, go below the record on sheet Record, and under the signature
 * where it is signed.
 */
export function issue(
  parts: Parts,
  evaluation: Evaluation,
  sign?: (message: string) => RecordSignature,
): void {
  const issued = digestParts(parts)
  const signature = sign?.(signedMessage(evaluation, digestOfParts(issued)))
  addIssuedRows(parts, issuedRows(issued, signature))
}

/** Rows of sheet Record: the digest of each part, then the signature. */
export const issuedRows = (issued: IssuedParts, signature?: RecordSignature): IssuedRow[] => [
  ...partLines(issued).map((line): IssuedRow => [ISSUED_PART, line]),
  ...(signature ? signatureRows(signature) : []),
]
