import { digestOf, type Evaluation } from '../../contract/record/index.js'

/** A signature of the record and its evaluation, as it is on sheet Record. */
export interface RecordSignature {
  /** Fingerprint of the public key. */
  readonly keyId: string
  /** Ed25519 signature (RFC 8032), base64. */
  readonly signature: string
}

const SIGNATURE = 'signature (Ed25519)'
const KEY = 'signing key'

/**
 * What is signed: the digests of record, evaluation and of the workbook's parts as they were issued, with the calculation
 * version. @param partsDigest - left out for workbooks issued before their parts were digested
 */
export const signedMessage = (evaluation: Evaluation, partsDigest?: string): string =>
  [
    partsDigest === undefined ? 'draughtbook/signature@1' : 'draughtbook/signature@2',
    `calculation version ${evaluation.calculationVersion}`,
    `record ${evaluation.recordDigest}`,
    `evaluation ${digestOf(evaluation)}`,
    ...(partsDigest === undefined ? [] : [`parts ${partsDigest}`]),
  ].join('\n')

export const signatureRows = ({ keyId, signature }: RecordSignature): [string, string][] => [
  [KEY, keyId],
  [SIGNATURE, signature],
]

/** The signature among the rows of sheet Record; undefined where the workbook was not signed. */
export function signatureOf(rows: ReadonlyMap<string, readonly string[]>): RecordSignature | undefined {
  const [signature] = rows.get(SIGNATURE) ?? []
  if (signature === undefined) return undefined
  return { keyId: rows.get(KEY)?.[0] ?? '', signature }
}
