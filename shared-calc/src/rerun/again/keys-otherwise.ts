import type { RerunTest } from '../report.js'
import { signatureText } from '../workbook/files-sheet.js'

const STATED = /^(valid|invalid|key not given) \(([0-9a-f]+)\)$/
const UNKNOWN = 'key not given'

/**
 * Whether a re-run report was made with another set of public keys than are given now: what it says of signatures cannot be
 * compared then. Undefined where the same were given.
 */
export function keysOtherwise(
  tests: readonly RerunTest[],
  signatures: readonly string[],
): string | undefined {
  for (const [i, test] of tests.entries()) {
    const [, then, key] = STATED.exec(signatures[i] ?? '') ?? []
    const [, now, keyNow] = STATED.exec(signatureText(test.signature)) ?? []
    if (key === undefined || key !== keyNow || (then === UNKNOWN) === (now === UNKNOWN)) continue
    return now === UNKNOWN
      ? `it was made with the public key ${key}: give that key as well`
      : `it was made without the public key ${key}: leave that key out`
  }
  return undefined
}
