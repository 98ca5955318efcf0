import type { RequestHandler } from 'express'
import { z } from 'zod'
import { HttpFault } from '../http/http-fault.js'

/** What an access is for. Everybody known may read methods, targets and the library. */
export const ROLES = ['evaluate', 'archive', 'library'] as const
export const Role = z.enum(ROLES)
export type Role = z.infer<typeof Role>

/** Who makes a request. */
export interface Caller {
  /** Name for the audit line: a token's, an identity's, or "this machine". */
  readonly name: string
  /** Key for rate limits. */
  readonly key: string
  readonly roles: readonly Role[]
}

export const thisMachine: Caller = { name: 'this machine', key: 'this machine', roles: ROLES }

const MAY: Readonly<Record<Role, string>> = {
  evaluate: 'evaluating tests',
  archive: 'registers and re-runs',
  library: 'changing the library',
}

/** Lets callers pass whose access has the role. 403 for others. */
export const mayUse =
  (role: Role): RequestHandler =>
  (_request, response, next) => {
    const { roles } = response.locals.caller as Caller
    if (!roles.includes(role))
      throw new HttpFault(403, `Your access does not include ${MAY[role]}`, {
        detail: `use a token with the role ${role}`,
      })
    next()
  }
