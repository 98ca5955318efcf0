import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto'
import type { Role } from '../caller.js'
import type { StoredToken } from './token-file.js'

const PREFIX = 'dbk'
const DAY_MS = 86_400_000

/**
 * A new token and what is kept of it. The secret has 256 random bits, so one keyed hash is enough: slow hashes are for
 * passwords that people choose.
 * @param days - days until it expires
 */
export function makeToken(
  name: string,
  days: number,
  roles: readonly Role[],
  now = new Date(),
): { token: string; stored: StoredToken } {
  const id = randomBytes(8).toString('hex')
  const secret = randomBytes(32).toString('base64url')
  const salt = randomBytes(16).toString('hex')
  return {
    token: `${PREFIX}_${id}_${secret}`,
    stored: {
      id,
      name,
      salt,
      hash: hashOf(secret, salt).toString('hex'),
      created: now.toISOString(),
      expires: new Date(now.getTime() + days * DAY_MS).toISOString(),
      roles: [...roles],
      library: roles.includes('library'),
    },
  }
}

const FORM = new RegExp(`^${PREFIX}_([0-9a-f]{16})_([A-Za-z0-9_-]{43})$`)
// Compared against when the id is unknown, so that an unknown id takes as long as a wrong secret.
const NOBODY = { salt: '00'.repeat(16), hash: '00'.repeat(32) }

/** The stored token that a presented one proves, or undefined. Expired and revoked ones prove nothing. */
export function provenBy(
  presented: string,
  tokens: readonly StoredToken[],
  now = new Date(),
): StoredToken | undefined {
  const [, id, secret = ''] = FORM.exec(presented) ?? []
  const stored = tokens.find((token) => token.id === id)
  const { salt, hash } = stored ?? NOBODY
  const matches = timingSafeEqual(hashOf(secret, salt), Buffer.from(hash, 'hex'))
  if (!stored || !matches || stored.revoked !== undefined) return undefined
  return new Date(stored.expires) > now ? stored : undefined
}

const hashOf = (secret: string, salt: string) =>
  createHmac('sha256', Buffer.from(salt, 'hex')).update(secret).digest()
