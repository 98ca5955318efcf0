import { CALCULATION_VERSION } from '@draughtbook/shared-calc'
import { overview } from '../running/overview.js'
import type { Settings } from '../settings/settings.js'
import { escaped, page } from './html.js'

/** What is on and what is off. */
export function statusPage(settings: Settings): string {
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
