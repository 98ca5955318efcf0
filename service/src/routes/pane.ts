import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type RequestHandler, type Response, Router } from 'express'
import expressStaticGzip from 'express-static-gzip'
import { HttpFault } from '../http/http-fault.js'
import { PANE, paneIsBuilt } from '../running/pane-folder.js'

export interface PaneOptions {
  /** Folder of the built pane; the add-in's own build unless another is named. */
  readonly folder?: string | undefined
}

/** Excel on the web shows the pane in a frame of one of these. */
const OFFICE_FRAMES = [
  'https://*.officeapps.live.com',
  'https://*.office.com',
  'https://*.office365.com',
  'https://*.sharepoint.com',
  'https://*.cloud.microsoft',
]
const OFFICE_JS = 'https://appsforoffice.microsoft.com'

/**
 * GET /: the plain page; GET /pane.html: the same pane for Excel; and their files. The policies are as strict as the
 * pane can meet: the plain page may call its own service and nothing else. A folder that is not there serves nothing.
 */
export function pane({ folder = PANE }: PaneOptions = {}): Router {
  const router = Router()
  if (!paneIsBuilt(folder)) return router
  const scripts = scriptSources(folder)
  router.use(
    refuseUnreadable,
    // Sends an asset as the build has compressed it, where the browser takes that.
    expressStaticGzip(folder, {
      index: false,
      enableBrotli: true,
      orderPreference: ['br', 'gz'],
      serveStatic: {
        index: 'index.html',
        dotfiles: 'ignore',
        redirect: false,
        setHeaders: (response, path) => {
          const inExcel = path.endsWith('pane.html')
          response.setHeader('content-security-policy', policy(inExcel, inExcel ? scripts : "'self'"))
          if (inExcel) response.removeHeader('x-frame-options')
          caching(response as Response, path)
        },
      },
    }),
  )
  return router
}

/** An address that is not percent-encoded UTF-8 is refused as every error is; the package would answer it in plain text. */
const refuseUnreadable: RequestHandler = (request, _response, next) => {
  try {
    decodeURIComponent(request.path)
  } catch {
    throw new HttpFault(400, 'The address cannot be read', { detail: 'write % in an address as %25' })
  }
  next()
}

/** The pane is built with Microsoft's address or with a copy of office.js beside it; the policy follows the build. */
function scriptSources(folder: string): string {
  const page = join(folder, 'pane.html')
  const fromMicrosoft = existsSync(page) && readFileSync(page, 'utf8').includes(OFFICE_JS)
  return fromMicrosoft ? `'self' ${OFFICE_JS}` : "'self'"
}

function policy(inExcel: boolean, scripts: string): string {
  return [
    "default-src 'none'",
    `script-src ${scripts}`,
    "style-src 'self'",
    "img-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "object-src 'none'",
    `frame-ancestors ${inExcel ? `'self' ${OFFICE_FRAMES.join(' ')}` : "'none'"}`,
  ].join('; ')
}

/** Files under assets carry a digest of their content in their names; all others are asked for again. */
function caching(response: Response, path: string): void {
  const lasting = /[\\/]assets[\\/]/.test(path)
  response.setHeader('cache-control', lasting ? 'public, max-age=31536000, immutable' : 'no-cache')
}
