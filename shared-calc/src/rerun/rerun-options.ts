import type { Layout } from '../log/layout/schema.js'
import type { RecordSignature } from '../reports/workbook/record-signature.js'
import type { KnownVersion } from '../versions/version.js'
import type { IssuedFiles } from './issued-file.js'

export interface RerunOptions {
  /** Layouts of firms' own workbooks, chosen by fingerprint. */
  readonly layouts?: readonly Layout[]
  /** Calculation versions to run, oldest first; all known ones when left out. */
  readonly versions?: readonly KnownVersion[]
  /** Checks a signature; 'key not given' where its key is not among those trusted. */
  readonly verify?: (message: string, signature: RecordSignature) => 'valid' | 'invalid' | 'key not given'
  /** Whether a summary that is not signed with one of the keys given fails. */
  readonly requireSignature?: boolean
  /** Keeps what was made to compare with, for whoever re-runs many copies of one test; nothing is kept where it is left out. */
  readonly kept?: IssuedFiles
}
