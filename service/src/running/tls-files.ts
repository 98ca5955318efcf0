import { readFile } from 'node:fs/promises'
import { createSecureContext } from 'node:tls'
import type { Settings } from '../settings/settings.js'

export interface TlsFiles {
  readonly cert: Buffer
  readonly key: Buffer
}

/**
 * Certificate and key, tried together before anything else is started. Undefined when TLS is off.
 * @throws Error naming the files when they do not work together, or the system's error
 */
export async function readTlsFiles({ tlsCertificate, tlsKey }: Settings): Promise<TlsFiles | undefined> {
  if (tlsCertificate === undefined || tlsKey === undefined) return undefined
  const files = { cert: await readFile(tlsCertificate), key: await readFile(tlsKey) }
  try {
    createSecureContext(files)
  } catch {
    throw new Error(`${tlsCertificate} and ${tlsKey} are not a certificate and its key in PEM form`)
  }
  return files
}
