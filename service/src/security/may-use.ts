import type { RequestHandler } from 'express'
import { HttpFault } from '../http/http-fault.js'
import type { Caller } from './caller.js'
import type { Role } from './roles.js'

const MAY: Readonly<Record<Role, string>> = {
  evaluate: 'evaluating tests',
  archive: 'working on archives',
  library: 'changing the library',
}

/** Lets callers pass whose access has the role. 403 for others. */
export const mayUse =
  (role: Role): RequestHandler =>
  (_request, response, next) => {
    const { roles } = response.locals.caller as Caller
    if (!roles.includes(role)) throw new HttpFault(403, `This access does not allow ${MAY[role]}`)
    next()
  }
