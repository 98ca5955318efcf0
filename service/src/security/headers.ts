import type { RequestHandler } from 'express'
import helmet from 'helmet'

/** Headers of every answer. The API is data only, so its policy allows nothing; pages set their own, wider one. */
export function safeHeaders(fromElsewhere: boolean): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: { defaultSrc: ["'none'"], frameAncestors: ["'none'"], baseUri: ["'none'"] },
    },
    // Behind TLS it keeps browsers there. For localhost it would bind every other program of this machine, whatever its port.
    strictTransportSecurity: fromElsewhere && { maxAge: 31_536_000 },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    referrerPolicy: { policy: 'no-referrer' },
  })
}
