import type { Request, RequestHandler } from 'express'
import { HttpFault } from '../http/http-fault.js'
import { isOpen, type Settings } from '../settings/settings.js'
import { type Caller, thisMachine } from './caller.js'
import { IssuerUnreachable } from './issuer-keys.js'
import { oidcCheck } from './oidc.js'
import { Refusals } from './rate-limit.js'
import { provenBy } from './tokens/token.js'
import { rolesOf } from './tokens/token-file.js'
import { TokenStore } from './tokens/token-store.js'
import { TokenUse } from './tokens/token-use.js'

/** Finds out who calls, and puts it in `response.locals.caller`. 401 for nobody we know. */
export function authenticate(settings: Settings): RequestHandler {
  if (isOpen(settings))
    return (_request, response, next) => {
      response.locals.caller = thisMachine
      next()
    }
  const refusals = new Refusals()
  const checks = [tokenCheck(settings), identityCheck(settings)].filter((check) => check !== undefined)
  return async (request, response, next) => {
    const presented = bearerOf(request)
    if (presented === undefined) {
      await refusals.check(request, response)
      throw unknownCaller('The request has no access token')
    }
    for (const check of checks) {
      const caller = await check(presented).catch(unavailable)
      if (!caller) continue
      response.locals.caller = caller
      return next()
    }
    await refusals.check(request, response)
    throw unknownCaller('The access token is unknown, expired or revoked', 'invalid_token')
  }
}

type Check = (token: string) => Promise<Caller | undefined>

function tokenCheck({ tokens }: Settings): Check | undefined {
  if (tokens === undefined) return undefined
  const store = new TokenStore(tokens)
  const use = new TokenUse(tokens)
  return async (presented) => {
    const stored = provenBy(presented, await store.current())
    if (!stored) return undefined
    use.note(stored.id)
    return { name: stored.name, key: `token ${stored.id}`, roles: rolesOf(stored) }
  }
}

function identityCheck({ oidcIssuer, oidcAudience, oidcJwks }: Settings): Check | undefined {
  if (oidcIssuer === undefined || oidcAudience === undefined) return undefined
  const check = oidcCheck({ issuer: oidcIssuer, audience: oidcAudience, jwks: oidcJwks })
  // Our own tokens have no dot; a JWT has two. Asking the issuer about ours would only cost time.
  return async (presented) => (presented.includes('.') ? check(presented) : undefined)
}

/** Source: RFC 6750, 2.1. */
function bearerOf(request: Request): string | undefined {
  const { authorization } = request.headers
  return /^Bearer ([A-Za-z0-9._~+/-]{1,4096}=*)$/i.exec(authorization ?? '')?.[1]
}

/** Source: RFC 6750, 3. */
function unknownCaller(title: string, error?: string): HttpFault {
  const challenge = error ? `Bearer realm="draughtbook", error="${error}"` : 'Bearer realm="draughtbook"'
  return new HttpFault(401, title, {
    kind: 'unknown-caller',
    detail:
      'send the header Authorization: Bearer TOKEN, with a token from `draughtbook token add` or from the firm’s sign-in',
    headers: { 'www-authenticate': challenge },
  })
}

/** When access cannot be checked, nobody gets in. */
function unavailable(error: unknown): never {
  const detail =
    error instanceof IssuerUnreachable ? 'the identity provider does not answer' : 'the tokens cannot be read'
  throw new HttpFault(503, 'Access cannot be checked at the moment', {
    kind: 'busy',
    detail,
    headers: { 'retry-after': '10' },
  })
}
