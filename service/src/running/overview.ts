import { isOpen, type Settings } from '../settings/settings.js'
import { paneIsBuilt } from './pane-folder.js'

export interface Feature {
  readonly name: string
  readonly on: boolean
  readonly detail: string
}

/** What is on and what is off, for the start of the log and the status page. */
export function overview(settings: Settings): Feature[] {
  const { tokens, oidcIssuer, tlsCertificate, behindProxy, origins, library, rate, pane } = settings
  const off = (detail: string) => ({ on: false, detail })
  const on = (detail: string) => ({ on: true, detail })
  const features: [string, { on: boolean; detail: string }][] = [
    [
      'open access',
      isOpen(settings) ? on('everyone on this machine, no one else') : off('callers must sign in'),
    ],
    [
      'access tokens',
      tokens === undefined ? off('--tokens FILE switches them on') : on('from the token file'),
    ],
    ['OpenID Connect', oidcIssuer === undefined ? off('--oidc-issuer switches it on') : on(oidcIssuer)],
    [
      'TLS',
      tlsCertificate !== undefined
        ? on('by the service')
        : behindProxy
          ? on('by the proxy in front')
          : off('plain http, on this machine only'),
    ],
    ['other origins', origins.length > 0 ? on(origins.join(', ')) : off('only the service’s own pages')],
    [
      'library',
      library === undefined
        ? off('--library FOLDER switches it on')
        : on('devices, gauges, layouts, targets'),
    ],
    [
      'pane',
      paneIsBuilt(pane)
        ? on('at /')
        : off(
            pane === undefined ? 'not built: npm run build' : `no pane in ${pane}: --pane names its folder`,
          ),
    ],
    [
      'rate limit',
      rate === 0 || isOpen(settings)
        ? off('no limit per caller')
        : on(`${rate} requests per minute and caller`),
    ],
    [
      'workers',
      on(`${settings.workers}, at most ${settings.queue} tasks waiting, ${settings.timeout_s} s each`),
    ],
  ]
  return features.map(([name, state]) => ({ name, ...state }))
}

/** The overview as lines of text. */
export const overviewText = (settings: Settings): string[] =>
  overview(settings).map(({ name, on, detail }) => `${on ? 'on ' : 'off'}  ${name.padEnd(15)} ${detail}`)
