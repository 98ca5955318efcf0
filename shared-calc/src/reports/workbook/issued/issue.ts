import type { Evaluation } from '../../../contract/record/index.js'
import { sheetParts } from '../chart/package-parts.js'
import { RECORD } from '../record-sheet.js'
import { type RecordSignature, signatureRows, signedMessage } from '../record-signature.js'
import { type Parts, setText, textOf } from '../zip/parts.js'
import { addIssuedRows, ISSUED_PART, type IssuedRow } from './add-issued-rows.js'
import { canonicalPart, issuedRowsText } from './canonical-part.js'
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

/** Whether sheet Record holds just the rows of digests and signature that were written, where they were written. */
export function holdsIssuedRows(parts: Parts, issued: IssuedParts, signature?: RecordSignature): boolean {
  const path = sheetParts(parts).get(RECORD) ?? ''
  const now = textOf(parts, path)
  const written: Parts = new Map(parts)
  setText(written, path, canonicalPart(path, now, path))
  addIssuedRows(written, issuedRows(issued, signature))
  return issuedRowsText(textOf(written, path)) === issuedRowsText(now)
}

/** Rows of sheet Record: the digest of each part, then the signature. */
export const issuedRows = (issued: IssuedParts, signature?: RecordSignature): IssuedRow[] => [
  ...partLines(issued).map((line): IssuedRow => [ISSUED_PART, line]),
  ...(signature ? signatureRows(signature) : []),
]
