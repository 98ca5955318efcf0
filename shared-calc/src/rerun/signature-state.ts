import { digestOfParts } from '../reports/workbook/issued/issued-parts.js'
import type { ReadSummary } from '../reports/workbook/read-summary.js'
import { signedMessage } from '../reports/workbook/record-signature.js'
import type { SignatureState } from './report.js'
import type { RerunOptions } from './rerun-options.js'

/** Whether a summary is signed, and by whom. What is checked is what stands in the file, not the digests it states. */
export function signatureState(
  { signature, evaluation, digests, issuedParts }: ReadSummary,
  verify: RerunOptions['verify'],
): SignatureState {
  if (!signature) return { state: 'not signed' }
  const { keyId } = signature
  if (!verify) return { state: 'key not given', keyId }
  const found = { ...evaluation, recordDigest: digests.record.found }
  const parts = issuedParts && digestOfParts(issuedParts)
  return { state: verify(signedMessage(found, parts), signature), keyId }
}

/** The four states in words, for whoever reads the report. */
export const signatureWords: Readonly<Record<SignatureState['state'], string>> = {
  valid: 'signed and valid',
  'key not given': 'signed with a key you did not give',
  'not signed': 'not signed',
  invalid: 'invalid signature',
}

/** Why a signature is not accepted; undefined where it is. @param required - whether the file must be signed with a key that was given */
export function notAccepted({ state }: SignatureState, required: boolean): string | undefined {
  if (state === 'invalid')
    return 'the signature does not match the record, the evaluation and the parts of the file'
  if (!required || state === 'valid') return undefined
  return state === 'not signed'
    ? 'the file is not signed, and a signature is required'
    : 'the file is signed with a key you did not give, and a signature with one of yours is required'
}

/** What an agreeing file leaves open when its signature does not prove who issued it. */
export function unprovenWords({ state }: SignatureState): { readonly unproven?: string } {
  if (state === 'not signed')
    return { unproven: 'not signed, so a workbook made from changed readings would agree too' }
  return state === 'key not given'
    ? { unproven: 'signed with a key you did not give, so nobody has checked who issued it' }
    : {}
}
