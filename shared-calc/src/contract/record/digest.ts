import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import canonicalize from 'canonicalize'

/** Canonical JSON of a value (RFC 8785): sorted keys, shortest numbers, no white space. */
export function canonicalJson(value: unknown): string {
  const text = (canonicalize as unknown as (input: unknown) => string | undefined)(value)
  if (text === undefined) throw new TypeError('value has no JSON form')
  return text
}

/** SHA-256 of a text's UTF-8 bytes, in lower-case hex. Source: FIPS 180-4. */
export type Sha256 = (text: string) => string

const sha256InScript: Sha256 = (text) => bytesToHex(sha256(utf8ToBytes(text)))

/**
 * SHA-256 of the canonical JSON of a value, in lower-case hex. Source: RFC 8785, FIPS 180-4.
 * @param hash - the platform's own SHA-256 where it has one: some seven times as fast as one in script
 */
export const digestOf = (value: unknown, hash = sha256InScript): string => hash(canonicalJson(value))
