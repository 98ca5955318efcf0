import { plainWord } from '../cells/fields.js'
import { parseAddress } from '../grid/address.js'
import type { Grid } from '../grid/grid.js'
import { refuse } from '../problem.js'
import { labelIndex } from './label-index.js'
import { matchesSheet } from './match.js'
import type { Layout } from './schema.js'

/** How many things of a layout's fingerprint a log has; 0 when it lacks one, or the layout has no fingerprint. */
export function fits(grid: Grid, { fingerprint }: Layout): number {
  const { sheets = [], cells = [], labels = [] } = fingerprint ?? {}
  const hasSheets = sheets.every((wanted) => grid.sheetNames.some((name) => matchesSheet(name, wanted)))
  if (!hasSheets) return 0
  const hasCells = cells.every(({ sheet, cell, text }) => {
    const place = parseAddress(cell)
    const found = place && firstSheet(grid, sheet)?.at(place.row, place.column)
    return found !== undefined && plainWord(String(found.value)) === plainWord(text)
  })
  if (!hasCells) return 0
  const found = labels.length > 0 ? labelsFound(grid, labels) : 0
  return found < MOST * labels.length ? 0 : sheets.length + cells.length + found
}

/** Share of the labels that must be there: one reworded heading does not make another make. */
const MOST = 0.85

function labelsFound(grid: Grid, labels: readonly string[]): number {
  const wanted = new Set(labels.map(plainWord))
  const found = new Set<string>()
  for (const name of grid.sheetNames) {
    const sheet = grid.sheet(name)
    if (!sheet || sheet.hidden) continue
    for (const { heading } of labelIndex(sheet)) if (wanted.has(heading.whole)) found.add(heading.whole)
  }
  return labels.filter((label) => found.has(plainWord(label))).length
}

/** A cell is looked for on the first sheet whose name fits, or the first of all. */
function firstSheet(grid: Grid, wanted: string | undefined) {
  const name = grid.sheetNames.find((one) => wanted === undefined || matchesSheet(one, wanted))
  return name === undefined ? undefined : grid.sheet(name)
}

/**
 * The layout that fits a log best by its fingerprint; undefined when none does.
 * @throws LogError `ambiguous` when several fit equally well: the user must say which
 */
export function chooseLayout(grid: Grid, layouts: readonly Layout[]): Layout | undefined {
  const fitting = layouts
    .map((layout) => ({ layout, score: fits(grid, layout) }))
    .filter(({ score }) => score > 0)
    .sort((one, other) => other.score - one.score)
  const [best, second] = fitting
  if (best && second && best.score === second.score)
    refuse(
      'ambiguous',
      `the layouts "${best.layout.name}" and "${second.layout.name}" fit this log equally well: say which with --layout`,
    )
  return best?.layout
}
