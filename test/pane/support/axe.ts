import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'

const AXE = fileURLToPath(import.meta.resolve('axe-core/axe.min.js'))

interface Axe {
  run: (
    on: Document | { include: string[] },
    options: object,
  ) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>
}

/**
 * What breaks a rule of axe-core, also those beyond WCAG, on the page as it stands; `only` some of its rules, or `without` some; of the
 * whole page, or of what is `within` a selector.
 */
export async function violations(
  page: Page,
  {
    only,
    without = [],
    within,
  }: { only?: readonly string[]; without?: readonly string[]; within?: string } = {},
): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(await readFile(AXE, 'utf8'))
  const options = {
    ...(only && { runOnly: { type: 'rule', values: only } }),
    rules: Object.fromEntries(without.map((rule) => [rule, { enabled: false }])),
    // Nothing but violations is asked for: what keeps the rules need not be described, element by element.
    resultTypes: ['violations'],
    selectors: false,
    // Style sheets are not fetched once more: the one rule that reads them is experimental, and off.
    preload: { assets: ['media'] },
  }
  const found = await page.evaluate(
    async ([chosen, selector]) => {
      const { axe } = window as unknown as { axe: Axe }
      return (await axe.run(selector === undefined ? document : { include: [selector] }, chosen)).violations
    },
    [options, within] as const,
  )
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`)
}
