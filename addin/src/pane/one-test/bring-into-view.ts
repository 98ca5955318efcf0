import { placeOf } from './step.js'

const ENTRY = 'input, select, textarea, button'

/** Unfolds what hides the field, or else the part of the step that asks for it, and puts the cursor there. */
export function bringIntoView(room: HTMLElement, path: string): void {
  const panel = room.querySelector<HTMLElement>('[data-panel]:not([hidden])')
  const found =
    panel?.querySelector<HTMLElement>(`[data-path="${CSS.escape(path)}"]`) ??
    panel?.querySelector<HTMLElement>(`[data-section="${placeOf(path)?.section ?? path}"]`)
  if (!found) return
  for (let at: Element | null = found; at && at !== panel; at = at.parentElement)
    if (at instanceof HTMLDetailsElement) at.open = true
  found.scrollIntoView({ block: 'start' })
  const entry = [...found.querySelectorAll<HTMLElement>(ENTRY)].find((one) => !one.closest('summary'))
  entry?.focus({ preventScroll: true })
}
