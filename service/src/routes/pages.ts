import { CALCULATION_VERSION, once } from '@draughtbook/shared-calc'
import { type RequestHandler, Router } from 'express'
import { openApi } from '../api/openapi.js'
import { serve } from '../http/route.js'
import { apiPage } from '../pages/api-page.js'
import { escaped, page, style } from '../pages/html.js'
import { storedPage } from '../pages/stored.js'
import { overview } from '../running/overview.js'
import type { Settings } from '../settings/settings.js'

const description = once(() => JSON.stringify(openApi()))
const api = once(apiPage)
const kept = once(storedPage)

/** What makes the pages, so that no request waits for them. */
export const makePages: readonly (() => void)[] = [description, api, kept]

/** GET /openapi.json, /api, /stored and their style: the same for everybody, made when first asked for. */
export function documentPages(): Router {
  const router = Router()
  serve(router, '/openapi.json', {
    get: (_request, response) => {
      response.type('json').send(description())
    },
  })
  serve(router, '/api', { get: [pagePolicy, (_request, response) => void response.send(api())] })
  serve(router, '/stored', { get: [pagePolicy, (_request, response) => void response.send(kept())] })
  serve(router, '/pages.css', { get: (_request, response) => void response.type('css').send(style) })
  return router
}

/** GET /status: what is on and off. Only for those who may use the service. */
export function statusRoute(settings: Settings): Router {
  const router = Router()
  serve(router, '/status', {
    get: [pagePolicy, (_request, response) => void response.send(statusPage(settings))],
  })
  return router
}

/** Pages without script: our own style sheet, nothing else. */
const pagePolicy: RequestHandler = (_request, response, next) => {
  response.set(
    'content-security-policy',
    "default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  )
  next()
}

/** What is on and what is off. */
function statusPage(settings: Settings): string {
  const rows = overview(settings).map(
    ({ name, on, detail }) =>
      `<tr><th scope="row">${escaped(name)}</th><td class="${on ? 'on' : 'quiet'}">${on ? 'on' : 'off'}</td><td>${escaped(detail)}</td></tr>`,
  )
  return page(
    'Draughtbook service',
    `<p>Calculation version ${escaped(CALCULATION_VERSION)}. <a href="/">Pane</a> · <a href="/api">API</a> · <a href="/stored">What is stored</a></p>
<div class="scroll"><table><caption class="quiet">What is on and what is off</caption>${rows.join('\n')}</table></div>`,
  )
}
