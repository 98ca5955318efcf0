import {
  type Cell,
  type Grid,
  openLog,
  parseLayout,
  readGrid,
  type Sheet,
} from '@draughtbook/shared-calc/log'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { parseBlock } from '../../shared-calc/src/log/grid/address'
import { madeUpLogs } from './logs/index'

interface Opened {
  grid: Grid
  layout: ReturnType<typeof parseLayout>
  used: { sheet: string; row: number; column: number }[]
  outcome: string
}

const opened: Opened[] = []

beforeAll(async () => {
  for (const { write, fileName, layout: given } of madeUpLogs) {
    const layout = parseLayout(given)
    const grid = openLog(await write(), fileName, layout.decimal)
    const read = readGrid(grid, { layout })
    const used = read.tests.flatMap(({ cells }) => Object.values(cells).flatMap(placesOf))
    opened.push({ grid, layout, used, outcome: outcomeOf(read) })
  }
})

/** Everything a user gets to see: records, findings, problems. */
const outcomeOf = ({ tests, problems }: ReturnType<typeof readGrid>) =>
  JSON.stringify([tests.map(({ record, findings }) => [record, findings]), problems])

function placesOf(address: string): { sheet: string; row: number; column: number }[] {
  const cut = address.lastIndexOf('!')
  const sheet = address.slice(0, cut).replace(/^'|'$/g, '').replaceAll("''", "'")
  const block = parseBlock(address.slice(cut + 1))
  if (!block) return []
  const places = []
  for (let row = block.top; row <= block.bottom; row++)
    for (let column = block.left; column <= block.right; column++) places.push({ sheet, row, column })
  return places
}

/** The same log with one cell changed. */
function changed(
  grid: Grid,
  place: { sheet: string; row: number; column: number },
  cell: Cell | undefined,
): Grid {
  const cover = (sheet: Sheet): Sheet => ({
    name: sheet.name,
    hidden: sheet.hidden,
    rows: sheet.rows,
    columns: sheet.columns,
    at: (row, column) => (row === place.row && column === place.column ? cell : sheet.at(row, column)),
    isRowHidden: (row) => sheet.isRowHidden(row),
    isColumnHidden: (column) => sheet.isColumnHidden(column),
    mergeAt: (row, column) => sheet.mergeAt(row, column),
  })
  const covered = grid.sheet(place.sheet)
  const sheet = covered && cover(covered)
  return {
    ...grid,
    sheet: (name) => (name.toLowerCase() === place.sheet.toLowerCase() ? sheet : grid.sheet(name)),
  }
}

/** What may become of a cell: another number, other text, nothing, an error, a line through it. */
const changes: Record<string, (cell: Cell) => Cell | undefined> = {
  'another number': (cell) => ({
    kind: 'number',
    value: cell.kind === 'number' ? Number(cell.value) + 1.37 : 37.21,
  }),
  'a slightly other number': (cell) => ({
    ...cell,
    kind: 'number',
    value: (Number(cell.value) || 5) * 1.0001 + 1e-6,
  }),
  'other text': (cell) => ({ kind: 'text', value: `${String(cell.value)}x` }),
  'a number as text': () => ({ kind: 'text', value: '41,5' }),
  nothing: () => undefined,
  'an error': () => ({ kind: 'error', value: '#N/A' }),
  'a line through it': (cell) => ({ ...cell, struck: 'whole' }),
}

describe('no cell is changed silently', () => {
  it('any change of any used cell shows in the record, in a finding or in an error', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: madeUpLogs.length - 1 }),
        fc.nat(),
        fc.constantFrom(...Object.keys(changes)),
        (index, pick, change) => {
          const { grid, layout, used, outcome } = opened[index] as Opened
          const place = used[pick % used.length]
          const cell = place && grid.sheet(place.sheet)?.at(place.row, place.column)
          if (!place || !cell) return
          const after = changes[change]?.(cell)
          const read = readGrid(changed(grid, place, after), { layout })
          expect(
            outcomeOf(read),
            `${madeUpLogs[index]?.name} ${place.sheet}!R${place.row + 1}C${place.column + 1}: ${change}`,
          ).not.toBe(outcome)
        },
      ),
      { numRuns: 600, seed: 4 },
    )
  })

  it('has used cells to change in every log', () => {
    for (const { used } of opened) expect(used.length).toBeGreaterThan(10)
  })
})
