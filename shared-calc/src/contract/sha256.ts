import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { canonicalJson } from './canonical-json.js'

interface NodeCrypto {
  hash(algorithm: 'sha256', data: string | Uint8Array): string
}
interface WithNode {
  process?: { getBuiltinModule?: (id: 'node:crypto') => NodeCrypto }
}

/** SHA-256 calculated in script, for browsers: their own answers only asynchronously. Source: FIPS 180-4. */
export const sha256InScript = (data: string | Uint8Array): string =>
  bytesToHex(sha256(typeof data === 'string' ? utf8ToBytes(data) : data))

const crypto = (globalThis as WithNode).process?.getBuiltinModule?.('node:crypto')

/** SHA-256 of bytes, or of a text as UTF-8, in lower-case hex. Node's own is some seven times as fast as one in script. */
export const sha256Hex: (data: string | Uint8Array) => string = crypto
  ? (data) => crypto.hash('sha256', data)
  : sha256InScript

/** SHA-256 of the canonical JSON of a value, in lower-case hex. Source: RFC 8785, FIPS 180-4. */
export const digestOf = (value: unknown): string => sha256Hex(canonicalJson(value))
