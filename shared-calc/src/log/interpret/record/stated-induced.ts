import type { View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import { directionIn, type Label, readLabel, says } from '../words/label.js'
import { saysNo } from '../words/yes-or-no.js'

const ABOVE = 14
const BELOW = 6

/** Words that turn a statement round, or ask for what has not been done yet. */
const NOT_DONE = new Set(
  'not no without must should to be if when yet nicht ohne muss noch kein keine non pas sans doit niet geen zonder moet ikke ikkje inte ej uten uden utan nie bez senza sin sem deve debe'.split(
    ' ',
  ),
)

/** A run whose log says near its table that zero flow is taken off: "Pressures corrected for zero flow", "Baseline (subtracted)". */
export function withStatedInduced(
  run: FoundRun,
  runs: readonly FoundRun[],
  forms: readonly View[],
): FoundRun {
  const { block } = run
  const { pressure } = block
  if (pressure.role !== 'pressure' || run.row !== undefined || says(pressure.label, 'asShown')) return run
  if (block.segment.columns.some(({ role }) => role === 'induced')) return run
  const said = sentenceNear(run) ?? sentenceOverAll(run, runs) ?? sentenceOfForm(run, forms)
  return said ? { ...run, block: { ...block, pressure: { ...pressure, role: 'induced', label: said } } } : run
}

/** "Baseline (already subtracted) | −1.4", or a sentence: "The pressures are corrected for zero flow". */
const saysTakenOff = (label: Label, hasValue: boolean): boolean =>
  says(label, 'subtracted') ||
  (!hasValue &&
    label.tokens.length >= 4 &&
    says(label, 'pressure') &&
    (says(label, 'corrected') || says(label, 'induced')))

/** "Corrected for zero flow?", with "no" in the cell beside it or behind the question mark; or a question nobody answered. */
function answeredNo(view: View, row: number, column: number): boolean {
  const [, behind] = (view.text(row, column) ?? '').split(/[?:]/)
  const answer = behind?.trim() || (view.text(row, column + 1) ?? view.text(row, column + 2))
  return answer === undefined
    ? behind !== undefined && view.text(row, column)?.includes('?') === true
    : saysNo(answer)
}

const sentenceNear = ({ view, top, bottom, right }: FoundRun): Label | undefined =>
  saidIn(view, Math.max(0, top - ABOVE), Math.min(view.rows, bottom + BELOW), right)?.label

/** What a sentence over the first run of a sheet says without a value goes for all its runs, but those of a direction it does not name. */
function sentenceOverAll(run: FoundRun, runs: readonly FoundRun[]): Label | undefined {
  const first = Math.min(...runs.filter(({ view }) => view.name === run.view.name).map(({ top }) => top))
  const said = saidIn(run.view, Math.max(0, first - ABOVE), first, run.right)
  const direction = directionIn(said?.label)
  return said?.hasValue || (direction && direction !== run.direction) ? undefined : said?.label
}

/** On a sheet that holds the form and no readings. */
function sentenceOfForm(run: FoundRun, forms: readonly View[]): Label | undefined {
  for (const view of forms) {
    const said =
      view.name === run.view.name
        ? undefined
        : saidIn(view, 0, Math.min(view.rows, FORM_ROWS) - 1, FORM_COLUMNS)
    const direction = directionIn(said?.label)
    if (said && !said.hasValue && (!direction || direction === run.direction)) return said.label
  }
  return undefined
}
const FORM_ROWS = 60
const FORM_COLUMNS = 12

function saidIn(
  view: View,
  from: number,
  to: number,
  right: number,
): { label: Label; hasValue: boolean } | undefined {
  for (let row = from; row <= to; row++)
    for (let column = 0; column <= right + 1; column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 120) continue
      const label = readLabel(text)
      const hasValue = view.number(row, column + 1) !== undefined
      if (!says(label, 'zero') || !saysTakenOff(label, hasValue)) continue
      if (label.tokens.some((token) => NOT_DONE.has(token)) || answeredNo(view, row, column)) continue
      return { label, hasValue }
    }
  return undefined
}
