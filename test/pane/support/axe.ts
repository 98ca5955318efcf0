import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'

const AXE = fileURLToPath(import.meta.resolve('axe-core/axe.min.js'))

/** The rules of axe-core that look at colours, of those that run unless told otherwise. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block']

interface Axe {
  run: (
    on: Document | { include: Element[] },
    options: object,
  ) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>
}

/** What the page keeps for the tests: the elements whose colours are to be looked at, and what was looked at before. */
interface Kept {
  axe: Axe
  newLooks: Element[]
  knownLooks?: Set<string>
}

interface Asked {
  only?: readonly string[]
  without?: readonly string[]
  within?: 'the page' | 'new looks'
}

/** What breaks a rule of axe-core, also those beyond WCAG, on the page as it stands; `only` some of its rules, or `without` some. */
export async function violations(
  page: Page,
  { only, without = [], within = 'the page' }: Asked = {},
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
    async ([where, chosen]) => {
      const { axe, newLooks } = window as unknown as Kept
      return (await axe.run(where === 'the page' ? document : { include: newLooks }, chosen)).violations
    },
    [within, options] as const,
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
    const kept = window as unknown as Kept
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
      const place = layers.some(isPlaced) ? `${left} ${top}` : ''
      return [color, fontSize, fontWeight, textShadow, place, ...layers.map(layer)].join('\n')
    }
    const holdsText = (one: Element): boolean =>
      one.matches('input, select, textarea') ||
      [...one.childNodes].some(({ nodeType, nodeValue }) => nodeType === 3 && nodeValue?.trim())
    kept.newLooks = [...document.body.querySelectorAll('*')].filter((one) => {
      if (!holdsText(one) || !one.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
        return false
      const look = lookOf(one)
      const isNew = !known.has(look)
      known.add(look)
      return isNew
    })
    return kept.newLooks.length
  })
  return count === 0 ? [] : violations(page, { only: OF_COLOUR, within: 'new looks' })
}
