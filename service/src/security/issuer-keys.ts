import { createLocalJWKSet, errors, type JSONWebKeySet, type JWTVerifyGetKey } from 'jose'
import { z } from 'zod'

/** Whether the identity provider, not the token, is the trouble. */
export class IssuerUnreachable extends Error {}

/** Pause after a failed request to the issuer: many callers must not become many requests. */
const REST_MS = 5000
/** How often keys are fetched again, in the background; known keys stay in use meanwhile. */
const FRESH_MS = 10 * 60_000
/** A token with an unknown key may mean that the issuer has a new one: the issuer is asked at most this often. */
const UNKNOWN_KEY_MS = 30_000
/** How long keys stay in use while their issuer does not answer: it may have revoked one. */
const OLDEST_MS = 24 * 3600_000

const KeySet = z.looseObject({ keys: z.array(z.looseObject({ kty: z.string() })).max(1000) })
const Configuration = z.object({ issuer: z.string(), jwks_uri: z.url() })

interface Known {
  readonly find: JWTVerifyGetKey
  readonly since: number
}

/**
 * The published keys of an issuer. While an issuer is down, callers with known keys still get in; a caller with a
 * made-up token affects nobody else: only fetching keys is paused.
 * @param jwks - address of the keys; else the issuer's configuration is asked (OpenID Connect Discovery 1.0, 4)
 * @returns finds a token's key; rejects with an error of jose for an unknown one, with IssuerUnreachable where it
 * cannot be known
 */
export function issuerKeys(issuer: string, jwks?: string): JWTVerifyGetKey {
  let known: Known | undefined
  let asked: Promise<Known> | undefined
  let failed = Number.NEGATIVE_INFINITY

  const ask = (): Promise<Known> => {
    asked ??= fetchKeys(issuer, jwks)
      .then(
        (keys) => {
          known = { find: createLocalJWKSet(keys), since: performance.now() }
          return known
        },
        (error: unknown) => {
          failed = performance.now()
          throw new IssuerUnreachable('the identity provider does not answer', { cause: error })
        },
      )
      .finally(() => {
        asked = undefined
      })
    return asked
  }
  const mayAsk = (): boolean => performance.now() - failed > REST_MS

  return async (header, token) => {
    const age_ms = known ? performance.now() - known.since : Number.POSITIVE_INFINITY
    if (!known || age_ms > OLDEST_MS) {
      if (!mayAsk()) throw new IssuerUnreachable('the identity provider did not answer')
      return (await ask()).find(header, token)
    }
    if (age_ms > FRESH_MS && mayAsk()) ask().catch(() => undefined)
    try {
      return await known.find(header, token)
    } catch (error) {
      if (!(error instanceof errors.JWKSNoMatchingKey) || age_ms < UNKNOWN_KEY_MS || !mayAsk()) throw error
      return (await ask()).find(header, token)
    }
  }
}

async function fetchKeys(issuer: string, jwks?: string): Promise<JSONWebKeySet> {
  return KeySet.parse(await fetchJson(jwks ?? (await discover(issuer)))) as JSONWebKeySet
}

async function discover(issuer: string): Promise<string> {
  const address = `${issuer.replace(/\/$/, '')}/.well-known/openid-configuration`
  const configuration = Configuration.parse(await fetchJson(address))
  if (configuration.issuer !== issuer)
    throw new Error(`${address} names another issuer: ${configuration.issuer}`)
  return configuration.jwks_uri
}

async function fetchJson(address: string): Promise<unknown> {
  const response = await fetch(address, { signal: AbortSignal.timeout(5000), redirect: 'error' })
  if (!response.ok) throw new Error(`${address} answers ${response.status}`)
  return response.json()
}
