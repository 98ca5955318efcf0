import { readLabel, says } from '../words/label.js'
import type { ZeroEntry } from './entry.js'

/**
 * "Zero-flow pressure 1" and "… 2", as standards number those before and after the readings: the first is taken as before and the second
 * as after. Where the numbers go on, they are samples, and say nothing of when.
 */
export function withNumbers(entries: readonly ZeroEntry[]): ZeroEntry[] {
  const numbers = new Map<string, Set<string>>()
  for (const entry of entries) {
    const own = numberedLabel(entry)
    if (own) numbers.set(own.key, (numbers.get(own.key) ?? new Set()).add(own.number))
  }
  return entries.map((entry) => {
    const own = entry.which === undefined || entry.inOrder ? numberedLabel(entry) : undefined
    const all = own && numbers.get(own.key)
    if (!own || all?.size !== 2 || !(all.has('1') && all.has('2'))) return entry
    return { ...entry, which: own.number === '1' ? 'before' : 'after', inOrder: true }
  })
}

/** The words of a label and the number they end with; several labels of one sheet may share both. */
function numberedLabel({ label, view }: ZeroEntry): { key: string; number: string } | undefined {
  const tokens = readLabel(label).tokens.filter(
    (token) => !/^pa(?:scals?)?$/.test(token) && !says(readLabel(token), 'mean'),
  )
  const number = tokens.pop() ?? ''
  return /^\d$/.test(number) && tokens.length > 0
    ? { key: [view.name, ...tokens].join(' '), number }
    : undefined
}
