import { errors, type JWTPayload, jwtVerify } from 'jose'
import { type Caller, ROLES } from './caller.js'
import { issuerKeys } from './issuer-keys.js'

export interface OidcOptions {
  readonly issuer: string
  readonly audience: string
  /** Address of the issuer's keys; else its configuration is asked (OpenID Connect Discovery 1.0, 4). */
  readonly jwks?: string | undefined
}

/** Scope that allows changing the firm's library. */
export const LIBRARY_SCOPE = 'draughtbook.library'

/** Asymmetric algorithms only: with a shared secret, whoever can check a token could also make one. */
const ALGORITHMS = ['RS256', 'PS256', 'ES256', 'EdDSA']

/**
 * Checks access tokens of an OpenID Connect issuer: signature by its published keys, issuer, audience, times.
 * The result resolves to undefined for a token that is not good, and rejects with IssuerUnreachable.
 */
export function oidcCheck({
  issuer,
  audience,
  jwks,
}: OidcOptions): (token: string) => Promise<Caller | undefined> {
  const keys = issuerKeys(issuer, jwks)
  return async (token) => {
    try {
      const { payload } = await jwtVerify(token, keys, {
        issuer,
        audience,
        algorithms: ALGORITHMS,
        requiredClaims: ['exp', 'sub'],
        clockTolerance: 30,
      })
      return callerOf(payload, issuer)
    } catch (error) {
      if (error instanceof errors.JOSEError) return undefined
      throw error
    }
  }
}

/** The subject, not a name or mail address: the audit line needs to tell people apart, not to say who they are. */
function callerOf({ sub = '', scope }: JWTPayload, issuer: string): Caller {
  const scopes = typeof scope === 'string' ? scope.split(' ') : []
  return {
    name: `${new URL(issuer).host}: ${sub}`,
    key: `oidc ${sub}`,
    roles: scopes.includes(LIBRARY_SCOPE) ? ROLES : ['evaluate', 'archive'],
  }
}
