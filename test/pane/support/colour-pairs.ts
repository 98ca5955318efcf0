import type { Page } from 'playwright-core'
import { violations } from './axe.js'

/** The rules of axe-core that look at colours, of those that run unless told otherwise. */
export const OF_COLOUR = ['color-contrast', 'link-in-text-block']

/** Marks the elements that are to be looked at. */
const MARK = 'data-look-at'

/**
 * What breaks a rule of colours, of one element of each kind of text on show that is not in `known`. A kind is all that the contrast
 * of a text with its ground follows from: its colours and those it stands on, its size and weight, and how far it is let through;
 * not what else may cover it. Kinds that break no rule are known from then on.
 */
export async function newPaleTexts(page: Page, known: Set<string>): Promise<string[]> {
  const fresh = await page.evaluate(
    ({ mark, seen }) => {
      const before = new Set(seen)
      const kinds: string[] = []
      const grounds = new Map<Element, string>()
      /** What an element stands on, down to the first ground that lets nothing through. */
      const groundOf = (one: Element | null): string => {
        if (!one) return ''
        const found = grounds.get(one)
        if (found !== undefined) return found
        const { backgroundColor, backgroundImage, opacity, filter, mixBlendMode } = getComputedStyle(one)
        const own = [backgroundColor, backgroundImage, opacity, filter, mixBlendMode].join()
        const covers = backgroundColor.startsWith('rgb(') && opacity === '1'
        const whole = covers ? own : `${own} ${groundOf(one.parentElement)}`
        grounds.set(one, whole)
        return whole
      }
      const hasText = (one: Element): boolean =>
        one.matches('input, select, textarea') ||
        [...one.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.nodeValue?.trim())
      for (const one of document.body.querySelectorAll('*')) {
        if (!hasText(one) || !one.checkVisibility({ visibilityProperty: true })) continue
        const style = getComputedStyle(one)
        const around = one.tagName === 'A' && one.parentElement && getComputedStyle(one.parentElement).color
        const own = [
          style.color,
          style.fontSize,
          style.fontWeight,
          style.textShadow,
          style.textDecorationLine,
        ]
        const disabled = one.closest(':disabled, [aria-disabled=true]') !== null
        const kind = [one.tagName, ...own, around, disabled, groundOf(one)].join()
        if (before.has(kind)) continue
        before.add(kind)
        kinds.push(kind)
        one.setAttribute(mark, '')
      }
      return kinds
    },
    { mark: MARK, seen: [...known] },
  )
  if (fresh.length === 0) return []
  const found = await violations(page, { only: OF_COLOUR, within: `[${MARK}]` })
  await page.evaluate((mark) => {
    for (const one of document.querySelectorAll(`[${mark}]`)) one.removeAttribute(mark)
  }, MARK)
  if (found.length === 0) for (const kind of fresh) known.add(kind)
  return found
}
