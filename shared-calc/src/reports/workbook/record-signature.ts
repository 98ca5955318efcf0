import { digestOf, type Evaluation } from '../../contract/record/index.js'

/** A signature of the record and its evaluation, as it stands on sheet Record. */
export interface RecordSignature {
  /** Fingerprint of the public key. */
  readonly keyId: string
  /** Ed25519 signature (RFC 8032), base64. */
  readonly signature: string
}

const SIGNATURE = 'signature (Ed25519)'
const KEY = 'signing key'

/** What is signed: the digests of record and evaluation with the version that made them, under a heading of its own. */
export const signedMessage = (evaluation: Evaluation): string =>
  [
    'draughtbook/signature@1',
    `calculation version ${evaluation.calculationVersion}`,
    `record ${evaluation.recordDigest}`,
    `evaluation ${digestOf(evaluation)}`,
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
