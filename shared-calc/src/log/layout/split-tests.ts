import { plainWord } from '../cells/fields.js'
import { eachCell, type Grid, type Sheet } from '../grid/grid.js'
import { LIMITS } from '../limits.js'
import { refuse } from '../problem.js'
import { allLabels } from './locate.js'
import { matchesSheet } from './match.js'
import type { Layout } from './schema.js'
import type { Scope } from './scope.js'

/** The parts of a log that hold one test each. @throws LogError `not-found` when there is none */
export function splitTests(grid: Grid, layout: Layout): Scope[] {
  const { tests } = layout
  const scopes =
    tests.each === 'sheet' ? bySheet(grid, tests.sheets) : onSheet(grid, layout, sheetFor(grid, layout))
  if (scopes.length === 0) refuse('not-found', 'the log has no test where the layout expects one')
  if (scopes.length > LIMITS.tests)
    refuse('too-large', `the log holds ${scopes.length} tests; at most ${LIMITS.tests} are read at once`)
  return scopes
}

function onSheet(grid: Grid, { tests }: Layout, sheet: Sheet): Scope[] {
  const whole = wholeSheet(grid, sheet)
  switch (tests.each) {
    case 'row': {
      const headerRow = tests.headerRow - 1
      return filledRows(sheet, headerRow).map((row) => ({
        ...whole,
        top: row,
        bottom: row,
        headerRow,
        rows: [row],
      }))
    }
    case 'group':
      return byGroup(whole, tests.headerRow - 1, tests.by)
    case 'block': {
      const starts = allLabels(sheet, tests.label, 0, sheet.rows - 1)
      return starts.map(({ row }, index) => ({
        ...whole,
        top: row,
        bottom: (starts[index + 1]?.row ?? sheet.rows) - 1,
        shift: row - (starts[0]?.row ?? 0),
      }))
    }
    default:
      return [whole]
  }
}

function sheetFor(grid: Grid, { tests }: Layout): Sheet {
  const wanted = 'sheet' in tests ? tests.sheet : undefined
  const name = wanted ?? grid.sheetNames[0] ?? ''
  const sheet = grid.sheet(name)
  if (!sheet) refuse('not-found', `the log has no sheet called ${name}`)
  return sheet
}

function wholeSheet(grid: Grid, sheet: Sheet): Scope {
  return { grid, sheet, top: 0, bottom: sheet.rows - 1, shift: 0 }
}

function bySheet(grid: Grid, pattern: string): Scope[] {
  return grid.sheetNames
    .filter((name) => matchesSheet(name, pattern))
    .flatMap((name) => {
      const sheet = grid.sheet(name)
      return sheet ? [wholeSheet(grid, sheet)] : []
    })
}

function filledRows(sheet: Sheet, headerRow: number): number[] {
  const rows = new Set<number>()
  for (const [row] of eachCell(sheet)) if (row > headerRow) rows.add(row)
  return [...rows].sort((a, b) => a - b)
}

/** Rows with the same entry belong together; a blank entry belongs to the test above. */
function byGroup(whole: Scope, headerRow: number, by: string): Scope[] {
  const { sheet } = whole
  const [column, second] = allLabels(sheet, by, headerRow, headerRow).map((found) => found.column)
  if (column === undefined)
    refuse('not-found', `no heading of row ${headerRow + 1} of sheet ${sheet.name} reads "${by}"`)
  if (second !== undefined)
    refuse('ambiguous', `row ${headerRow + 1} of sheet ${sheet.name} has "${by}" twice`)
  const groups = new Map<string, number[]>()
  let current = ''
  for (const row of filledRows(sheet, headerRow)) {
    const cell = sheet.at(row, column) ?? mergedCell(sheet, row, column)
    if (cell) current = plainWord(String(cell.value))
    const rows = groups.get(current) ?? []
    groups.set(current, [...rows, row])
  }
  return [...groups.values()].map((rows) => ({
    ...whole,
    top: rows[0] ?? 0,
    bottom: rows.at(-1) ?? 0,
    headerRow,
    rows,
  }))
}

function mergedCell(sheet: Sheet, row: number, column: number) {
  const merged = sheet.mergeAt(row, column)
  return merged && sheet.at(merged.top, merged.left)
}
