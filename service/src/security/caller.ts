import { ROLES, type Role } from './roles.js'

/** Who makes a request. */
export interface Caller {
  /** Name for the audit line: a token's, an identity's, or "this machine". */
  readonly name: string
  /** Key for rate limits. */
  readonly key: string
  readonly roles: readonly Role[]
}

export const thisMachine: Caller = { name: 'this machine', key: 'this machine', roles: ROLES }
