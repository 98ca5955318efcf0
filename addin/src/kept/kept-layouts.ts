import { LAYOUT_FORMAT, type LayoutInput } from '@draughtbook/shared-calc/log'

const KEY = 'draughtbook.layouts'
/** Makes of log one tester meets; the oldest go first. */
const MOST = 100

/** What was answered about logs on this device, as layouts, the newest first; none where the browser keeps nothing. */
export function keptLayouts(): LayoutInput[] {
  try {
    const kept: unknown = JSON.parse(globalThis.localStorage.getItem(KEY) ?? '[]')
    return Array.isArray(kept) ? kept.filter(isLayout) : []
  } catch {
    // No storage, none allowed, or not ours: then nothing was kept.
    return []
  }
}

/** Keeps a layout in front of the others. One for the same labels is replaced. Resolves to whether the browser keeps it. */
export function keepLayout(layout: LayoutInput): boolean {
  const labels = labelsOf(layout)
  const others = keptLayouts().filter((other) => labelsOf(other) !== labels)
  try {
    globalThis.localStorage.setItem(KEY, JSON.stringify([layout, ...others].slice(0, MOST)))
    return true
  } catch {
    return false
  }
}

/** Forgets the layouts of a name. */
export function forgetLayout(name: string): void {
  try {
    const others = keptLayouts().filter((layout) => layout.name !== name)
    globalThis.localStorage.setItem(KEY, JSON.stringify(others))
  } catch {
    // As above: nothing was kept.
  }
}

/** What the layouts of one make of log have in common. */
export const labelsOf = ({ fingerprint }: LayoutInput): string =>
  JSON.stringify(fingerprint?.labels?.toSorted() ?? [])

const isLayout = (value: unknown): value is LayoutInput =>
  typeof value === 'object' && value !== null && (value as { format?: unknown }).format === LAYOUT_FORMAT
