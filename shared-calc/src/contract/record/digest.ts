import canonicalize from 'canonicalize'
import { sha256Hex } from '../sha256.js'

/** Canonical JSON of a value (RFC 8785): sorted keys, shortest numbers, no white space. */
export function canonicalJson(value: unknown): string {
  const text = (canonicalize as unknown as (input: unknown) => string | undefined)(value)
  if (text === undefined) throw new TypeError('value has no JSON form')
  return text
}

/** SHA-256 of the canonical JSON of a value, in lower-case hex. Source: RFC 8785, FIPS 180-4. */
export const digestOf = (value: unknown): string => sha256Hex(canonicalJson(value))
