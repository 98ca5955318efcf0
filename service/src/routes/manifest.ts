import { type Request, Router } from 'express'
import { HttpFault } from '../http/http-fault.js'
import { serve } from '../http/route.js'
import { manifestFor, PANE, paneIsBuilt } from '../running/pane-folder.js'
import type { Settings } from '../settings/settings.js'

/** GET /manifest.xml: the add-in's manifest for the address at which users reach this service; an administrator enters its link. */
export function manifestRoute(settings: Settings): Router {
  const { pane: folder = PANE } = settings
  const router = Router()
  serve(router, '/manifest.xml', {
    get: async (request, response) => {
      if (!paneIsBuilt(folder))
        throw new HttpFault(404, 'The pane is not built', {
          detail: 'run `npm run build`, then restart the service',
        })
      const manifest = await manifestFor(folder, addressOf(request, settings))
      response.type('application/xml').set('cache-control', 'no-cache').send(manifest)
    },
  })
  return router
}

/** Name and port only: what a caller writes there goes into the manifest. */
const HOST = /^([A-Za-z0-9.-]+|\[[0-9A-Fa-f:.]+\])(:\d{1,5})?$/

function addressOf(request: Request, { publicUrl }: Settings): string {
  const { host = '' } = request.headers
  if (publicUrl === undefined && !HOST.test(host))
    throw new HttpFault(400, 'The host name in the request is not valid')
  const address = publicUrl ?? `${request.protocol}://${host}`
  if (!address.startsWith('https://'))
    throw new HttpFault(404, 'Excel opens add-ins over https only', {
      detail:
        'For one computer run `draughtbook excel`. For others start the service with --tls-certificate and --tls-key, or behind a proxy with --public-url.',
    })
  return address
}
