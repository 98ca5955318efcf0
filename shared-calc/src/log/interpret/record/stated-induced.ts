import type { FoundRun } from '../tables/runs.js'
import { type Label, readLabel, says } from '../words/label.js'

const ABOVE = 14
const BELOW = 6

/** Words that turn a statement round, or ask for what has not been done yet. */
const NOT_DONE = new Set(
  'not no without must should to be nicht ohne muss noch kein keine non pas sans doit niet geen zonder moet ikke ikkje inte ej uten uden utan nie bez senza sin sem deve debe'.split(
    ' ',
  ),
)

/** A run whose log says in a sentence near its table that zero flow is taken off: "Pressures corrected for zero flow". */
export function withStatedInduced(run: FoundRun): FoundRun {
  const { block } = run
  const { pressure } = block
  if (pressure.role !== 'pressure' || run.row !== undefined || says(pressure.label, 'asShown')) return run
  if (block.segment.columns.some(({ role }) => role === 'induced')) return run
  const said = sentenceNear(run)
  return said ? { ...run, block: { ...block, pressure: { ...pressure, role: 'induced', label: said } } } : run
}

function sentenceNear({ view, top, bottom, left, right }: FoundRun): Label | undefined {
  for (let row = Math.max(0, top - ABOVE); row <= Math.min(view.rows, bottom + BELOW); row++)
    for (let column = Math.max(0, left - 1); column <= right + 1; column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 120 || view.number(row, column + 1) !== undefined) continue
      const label = readLabel(text)
      if (label.tokens.length < 4 || !says(label, 'pressure') || !says(label, 'zero')) continue
      if (!says(label, 'corrected') && !says(label, 'induced')) continue
      if (!label.tokens.some((token) => NOT_DONE.has(token))) return label
    }
  return undefined
}
