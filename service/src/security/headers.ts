import type { RequestHandler } from 'express'
import helmet from 'helmet'

/** Headers of every answer. The API is data only, so its policy allows nothing; pages set their own, wider one. */
export function safeHeaders(https: boolean): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: { defaultSrc: ["'none'"], frameAncestors: ["'none'"], baseUri: ["'none'"] },
    },
    // Over plain http on this machine the header means nothing; behind TLS it keeps browsers there.
    strictTransportSecurity: https && { maxAge: 31_536_000 },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    referrerPolicy: { policy: 'no-referrer' },
  })
}
