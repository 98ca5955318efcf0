import { createPrivateKey, X509Certificate } from 'node:crypto'
import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { writeAtomically } from '../files/write-atomically.js'

/** macOS takes no certificate that is valid for more than 825 days. Source: Apple, support article 103769. */
const VALID_days = 730
/** One that ends sooner is made again, so that it does not end on site. */
const LEFT_days = 30
const DAY_MS = 86_400_000

export interface LocalCertificate {
  readonly certificate: string
  readonly key: string
  /** SHA-1 of the certificate in hexadecimal digits, as the systems name it. */
  readonly fingerprint: string
}

export const certificateFiles = (folder: string) => ({
  certificate: join(folder, 'localhost.crt'),
  key: join(folder, 'localhost.key'),
})

/** The certificate for localhost in the folder. Undefined when there is none or it cannot be read. */
export async function readCertificate(folder: string): Promise<LocalCertificate | undefined> {
  const files = certificateFiles(folder)
  try {
    const { fingerprint } = new X509Certificate(await readFile(files.certificate))
    return { ...files, fingerprint: fingerprint.replaceAll(':', '') }
  } catch {
    return undefined
  }
}

/** Whether it is for localhost, matches its key and is valid for {@link LEFT_days} more days. */
export async function isUsable({ certificate, key }: LocalCertificate): Promise<boolean> {
  try {
    const read = new X509Certificate(await readFile(certificate))
    const left_days = (Date.parse(read.validTo) - Date.now()) / DAY_MS
    const matches = read.checkPrivateKey(createPrivateKey(await readFile(key)))
    return matches && read.checkHost('localhost') !== undefined && left_days > LEFT_days
  } catch {
    return false
  }
}

/**
 * Makes a certificate for localhost that signs itself, and its key, which only this user may read. It is not an authority: whoever
 * trusts it trusts nothing else with it.
 */
export async function makeCertificate(folder: string): Promise<LocalCertificate> {
  const { generate } = await import('selfsigned')
  const { cert, private: key } = await generate([{ name: 'commonName', value: 'Draughtbook (localhost)' }], {
    keyType: 'ec',
    algorithm: 'sha256',
    // It must also be valid for a clock that is a little slow.
    notBeforeDate: new Date(Date.now() - DAY_MS),
    notAfterDate: new Date(Date.now() + VALID_days * DAY_MS),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      { name: 'subjectAltName', altNames: [{ type: 2, value: 'localhost' }] },
    ],
  })
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const files = certificateFiles(folder)
  await writeAtomically(files.key, key, 0o600)
  await writeAtomically(files.certificate, cert)
  return { ...files, fingerprint: new X509Certificate(cert).fingerprint.replaceAll(':', '') }
}
