import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import canonicalize from 'canonicalize'

/** Canonical JSON of a value (RFC 8785): sorted keys, shortest numbers, no white space. */
export function canonicalJson(value: unknown): string {
  const text = (canonicalize as unknown as (input: unknown) => string | undefined)(value)
  if (text === undefined) throw new TypeError('value has no JSON form')
  return text
}

/** SHA-256 of the canonical JSON of a value, in lower-case hex. Source: RFC 8785, FIPS 180-4. */
export function digestOf(value: unknown): string {
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(value))))
}
