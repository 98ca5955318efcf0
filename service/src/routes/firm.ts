import { type Response, Router } from 'express'
import { HttpFault } from '../http/http-fault.js'
import { serve } from '../http/route.js'
import { firmsHead } from '../library/firms-head.js'
import type { Caller } from '../security/caller.js'

/** GET /v1/firm: the firm's name and logo, which the pane puts at the head of the summary, and what this access has of a library. */
export function firmRoute(library: string | undefined): Router {
  const router = Router()
  serve(router, '/firm', {
    get: async (_request, response) => {
      const firm = library === undefined ? undefined : await firmsHead(library).catch(unusable)
      response.set('cache-control', 'no-cache').json({
        ...(library !== undefined && { library: true, ...mayChange(response) }),
        ...(firm?.name !== undefined && { name: firm.name }),
        ...(firm?.logo && { logo: Buffer.from(firm.logo).toString('base64') }),
      })
    },
  })
  return router
}

function mayChange({ locals }: Response): { changesLibrary?: true } {
  const { roles } = locals.caller as Caller
  return roles.includes('library') ? { changesLibrary: true } : {}
}

function unusable(error: unknown): never {
  throw new HttpFault(503, 'The firm’s name or logo cannot be read', {
    kind: 'library-storage',
    detail: error instanceof Error ? error.message : String(error),
  })
}
