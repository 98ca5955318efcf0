import type { Request } from 'express'
import { HttpFault } from './http-fault.js'

/** A version as a strong entity tag. Source: RFC 9110, 8.8.3. */
export const etagOf = (version: string): string => `"${version}"`

/**
 * What a change expects to find: `If-Match: "…"` a version, `If-None-Match: *` nothing. Throws 428 when neither is
 * given: without it, one person's change could silently undo another's. Source: RFC 9110, 13.1; RFC 6585, 3.
 */
export function expectedVersion(request: Request): string | undefined {
  const match = request.get('if-match')
  const noneMatch = request.get('if-none-match')
  if (match === undefined && noneMatch === '*') return undefined
  const [, version] = /^"([0-9a-f]{16})"$/.exec(match ?? '') ?? []
  if (version !== undefined && noneMatch === undefined) return version
  throw new HttpFault(428, 'A change must name the version it is based on', {
    kind: 'precondition',
    detail: 'send If-Match with the ETag of the version you changed, or If-None-Match: * for a new entry',
  })
}

/** Whether the caller has this version already. */
export const hasVersion = (request: Request, version: string): boolean =>
  (request.get('if-none-match') ?? '')
    .split(',')
    .map((tag) => tag.trim().replace(/^W\//, ''))
    .includes(etagOf(version))
