import { ed25519 } from '@noble/curves/ed25519.js'
import { utf8ToBytes } from '@noble/hashes/utils.js'
import { sha256Hex } from '../contract/sha256.js'
import type { RecordSignature } from '../reports/workbook/record-signature.js'
import type { RerunOptions } from './rerun-options.js'

/** What stands before the 32 bytes of an Ed25519 key in its SPKI form (RFC 8410, section 4). */
const SPKI_HEAD = [0x30, 0x2a, 0x30, 0x05, 0x06, 0x03, 0x2b, 0x65, 0x70, 0x03, 0x21, 0x00]

/**
 * Checks Ed25519 signatures (RFC 8032) against public keys in PEM form, in any runtime.
 * @throws RangeError where a text is no such key
 */
export function signatureVerifier(pems: readonly string[]): NonNullable<RerunOptions['verify']> {
  const keys = new Map(pems.map(keyOf))
  return (message: string, { keyId, signature }: RecordSignature) => {
    const key = keys.get(keyId)
    if (!key) return 'key not given'
    try {
      return ed25519.verify(base64Bytes(signature), utf8ToBytes(message), key) ? 'valid' : 'invalid'
    } catch {
      // Not 64 bytes, or no point of the curve.
      return 'invalid'
    }
  }
}

/** A key with its fingerprint: the first half of the SHA-256 of its SPKI form, in hex. */
function keyOf(pem: string): [keyId: string, key: Uint8Array] {
  if (pem.includes('PRIVATE KEY')) throw new RangeError('it is a private key; give the public one')
  const body = pem.split('-----BEGIN PUBLIC KEY-----')[1]?.split('-----END PUBLIC KEY-----')[0]
  const spki = body === undefined ? new Uint8Array() : base64Bytes(body)
  if (spki.length !== SPKI_HEAD.length + 32 || SPKI_HEAD.some((byte, i) => spki[i] !== byte))
    throw new RangeError('it is not an Ed25519 public key in PEM form')
  return [sha256Hex(spki).slice(0, 32), spki.slice(SPKI_HEAD.length)]
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Bytes of a base64 text (RFC 4648, section 4); anything that is no digit of it is passed over. */
function base64Bytes(text: string): Uint8Array {
  const digits = [...text].map((letter) => DIGITS.indexOf(letter)).filter((digit) => digit >= 0)
  const bytes = new Uint8Array(Math.floor((digits.length * 6) / 8))
  let bits = 0
  let held = 0
  let at = 0
  for (const digit of digits) {
    held = (held << 6) | digit
    bits += 6
    if (bits < 8) continue
    bits -= 8
    bytes[at] = (held >> bits) & 0xff
    held &= (1 << bits) - 1
    at += 1
  }
  return bytes
}
