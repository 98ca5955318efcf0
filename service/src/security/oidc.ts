import { createRemoteJWKSet, errors, type JWTPayload, jwtVerify } from 'jose'
import { z } from 'zod'
import type { Caller } from './caller.js'

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

/** After a failed try the issuer is left alone for so long: many callers must not become many questions to it. */
const REST_MS = 5000

/** Whether the identity provider, not the token, is the trouble. */
export class IssuerUnreachable extends Error {}

/**
 * Checks access tokens of an OpenID Connect issuer: signature by its published keys, issuer, audience, times.
 * The result resolves to undefined for a token that is not good, and rejects with IssuerUnreachable.
 */
export function oidcCheck({
  issuer,
  audience,
  jwks,
}: OidcOptions): (token: string) => Promise<Caller | undefined> {
  let keys: ReturnType<typeof createRemoteJWKSet> | undefined
  let failed = Number.NEGATIVE_INFINITY
  return async (token) => {
    if (performance.now() - failed < REST_MS)
      throw new IssuerUnreachable('the identity provider did not answer')
    try {
      keys ??= createRemoteJWKSet(new URL(jwks ?? (await discover(issuer))), { timeoutDuration: 5000 })
      const { payload } = await jwtVerify(token, keys, {
        issuer,
        audience,
        algorithms: ALGORITHMS,
        requiredClaims: ['exp', 'sub'],
        clockTolerance: 30,
      })
      return callerOf(payload, issuer)
    } catch (error) {
      if (isBadToken(error)) return undefined
      failed = performance.now()
      throw new IssuerUnreachable('the identity provider does not answer', { cause: error })
    }
  }
}

const isBadToken = (error: unknown) =>
  error instanceof errors.JOSEError &&
  !(error instanceof errors.JWKSTimeout) &&
  !(error instanceof errors.JWKSInvalid) &&
  error.code !== 'ERR_JOSE_GENERIC'

/** The subject, not a name or mail address: the audit line needs to tell people apart, not to say who they are. */
function callerOf({ sub = '', scope }: JWTPayload, issuer: string): Caller {
  const scopes = typeof scope === 'string' ? scope.split(' ') : []
  return {
    name: `${new URL(issuer).host}: ${sub}`,
    key: `oidc ${sub}`,
    library: scopes.includes(LIBRARY_SCOPE),
  }
}

const Configuration = z.object({ issuer: z.string(), jwks_uri: z.url() })

async function discover(issuer: string): Promise<string> {
  const address = `${issuer.replace(/\/$/, '')}/.well-known/openid-configuration`
  const response = await fetch(address, { signal: AbortSignal.timeout(5000), redirect: 'error' })
  const configuration = Configuration.parse(await response.json())
  if (configuration.issuer !== issuer)
    throw new Error(`${address} belongs to another issuer: ${configuration.issuer}`)
  return configuration.jwks_uri
}
