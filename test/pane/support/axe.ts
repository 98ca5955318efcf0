import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'

const AXE = fileURLToPath(import.meta.resolve('axe-core/axe.min.js'))

/** The rules of axe-core that look at colours, of those that run unless told otherwise. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block']

interface Axe {
  run: (on: Document, options: object) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>
  configure: (spec: object) => void
}

interface Asked {
  only?: readonly string[]
  without?: readonly string[]
  /** The elements whose contrast is looked at. */
  contrastOf?: string
}

/** What breaks a rule of axe-core, also those beyond WCAG, on the page as it stands; `only` some of its rules, or `without` some. */
export async function violations(
  page: Page,
  { only, without = [], contrastOf = '*' }: Asked = {},
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
    async ([selector, chosen]) => {
      const { axe } = window as unknown as { axe: Axe }
      axe.configure({ rules: [{ id: 'color-contrast', selector }] })
      return (await axe.run(document, chosen)).violations
    },
    [contrastOf, options] as const,
  )
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`)
}

/** The same without the rules that look at colours. */
export const violationsBesidesColours = (page: Page): Promise<string[]> =>
  violations(page, { without: OF_COLOUR })

/**
 * What breaks a rule about colours, of the texts that look like none on this page before. Contrast follows from the colours of a text,
 * its size and weight, and what lies behind it: a text that has these and its classes in common with one looked at before passes
 * or fails with it. Where a text is placed by itself, something else may lie behind it: then its place counts too.
 */
export async function violationsOfNewColours(page: Page): Promise<string[]> {
  const count = await page.evaluate(() => {
    const kept = window as unknown as { knownLooks?: Set<string> }
    kept.knownLooks ??= new Set()
    const known = kept.knownLooks
    const layer = (one: Element): string => {
      const { backgroundColor, backgroundImage, opacity } = getComputedStyle(one)
      return `${one.tagName}.${one.getAttribute('class')} ${backgroundColor} ${backgroundImage} ${opacity}`
    }
    const isPlaced = (one: Element): boolean => /absolute|fixed|sticky/.test(getComputedStyle(one).position)
    const lookOf = (one: Element): string => {
      const layers: Element[] = []
      for (let at: Element | null = one; at; at = at.parentElement) layers.push(at)
      const { color, fontSize, fontWeight, textShadow } = getComputedStyle(one)
      const { left, top } = one.getBoundingClientRect()
      // The cells of a sheet are placed too, each beside the next.
      const place = layers.some(isPlaced) && !one.closest('[role=grid]') ? `${left} ${top}` : ''
      return [color, fontSize, fontWeight, textShadow, place, ...layers.map(layer)].join('\n')
    }
    const holdsText = (one: Element): boolean =>
      one.matches('input, select, textarea') ||
      [...one.childNodes].some(({ nodeType, nodeValue }) => nodeType === 3 && nodeValue?.trim())
    const newLooks = [...document.body.querySelectorAll('*')].filter((one) => {
      if (!holdsText(one) || !one.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
        return false
      const look = lookOf(one)
      const isNew = !known.has(look)
      known.add(look)
      return isNew
    })
    for (const one of newLooks) one.setAttribute('data-new-look', '')
    return newLooks.length
  })
  if (count === 0) return []
  const found = await violations(page, { only: OF_COLOUR, contrastOf: '[data-new-look]' })
  await page.evaluate(() => {
    for (const one of document.querySelectorAll('[data-new-look]')) one.removeAttribute('data-new-look')
  })
  return found
}
