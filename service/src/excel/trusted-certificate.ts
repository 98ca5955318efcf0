import { isUsable, type LocalCertificate, makeCertificate, readCertificate } from './certificate.js'
import type { Excel } from './excel.js'

/** The system, or the person it asked, refused. */
export class NotTrusted extends Error {
  override readonly name = 'NotTrusted'
}

/**
 * The certificate for localhost, trusted for this user: the one of an earlier run, or a new one after asking.
 * @param agrees - asks the person at the computer
 * @returns undefined when the person does not agree; then nothing has changed
 * @throws {@link NotTrusted} with what the system said
 */
export async function trustedCertificate(
  excel: Excel,
  agrees: () => Promise<boolean>,
): Promise<LocalCertificate | undefined> {
  const kept = await readCertificate(excel.folder)
  const usable = kept !== undefined && (await isUsable(kept))
  if (usable && (await excel.isTrusted(kept.certificate, kept.fingerprint))) return kept
  if (!(await agrees())) return undefined
  // An old one is not left in the list of what is trusted.
  if (kept && !usable && (await excel.isTrusted(kept.certificate, kept.fingerprint)))
    await excel.distrust(kept.fingerprint)
  const certificate = usable ? kept : await makeCertificate(excel.folder)
  await excel.trust(certificate.certificate).catch((error: unknown) => {
    throw new NotTrusted(error instanceof Error ? error.message : String(error))
  })
  return certificate
}
