import type { Recipe } from '../recipe.js'
import type { TestTruth } from '../truth/of-test.js'
import { logged } from '../units.js'
import { Sheet } from '../write/sheet.js'
import type { WrittenTest } from '../written.js'

/** What stands above a form. Returns the next free row. */
export function putTitle(sheet: Sheet, row: number, { dirt, words }: Recipe): number {
  let at = row
  if (dirt.includes('letterhead')) {
    sheet.put(at++, 1, 'LARCH & FINCH BUILDING PHYSICS')
    sheet.put(at++, 1, 'Unit 4, The Maltings, Ottersfold · 01632 960 123 · Reg. No. 0000417')
    at++
  }
  sheet.put(at++, 1, dirt.includes('n50 in the title') ? `${words.title} - n50, q50 @ 50 Pa` : words.title)
  return at + 1
}

/** The results a log keeps of its own, right or (as after a typing error) wrong. Returns the next free row. */
export function putResults(sheet: Sheet, row: number, truth: TestTruth, { dirt, units }: Recipe): number {
  const wrong = dirt.includes('wrong results')
  if (!wrong && !dirt.includes('results')) return row
  sheet.put(row, 1, 'Results')
  sheet.line(row + 1, 1, ['n50 (1/h)', Number((truth.n50_1_h * (wrong ? 1.13 : 1)).toFixed(2))])
  sheet.line(row + 2, 1, [
    `q50 (${units.flow.symbol})`,
    logged(truth.q50_m3_h * (wrong ? 1.13 : 1), units.flow),
  ])
  const mean = truth.runs.reduce((sum, { exponent }) => sum + exponent, 0) / truth.runs.length
  sheet.line(row + 3, 1, ['Exponent n', Number(mean.toFixed(3))])
  sheet.line(row + 4, 1, ['r²', 0.999])
  return row + 6
}

/** Tables that have nothing to do with the readings, on the same sheet. */
export function putOtherTables(sheet: Sheet, row: number, test: WrittenTest, recipe: Recipe): number {
  const { dirt } = recipe
  let at = row + 1
  if (dirt.includes('leaks below')) {
    sheet.put(at++, 1, 'Leaks found')
    sheet.line(at++, 1, ['No.', 'Place', 'Area (cm²)', 'Air speed (m/s)'])
    for (const [index, [place, size, speed]] of (
      [
        ['loft hatch', 12, 2.1],
        ['sockets, north wall', 4, 1.4],
        ['sill, bedroom 2', 7, 1.8],
        ['soil pipe', 9, 2.6],
      ] as const
    ).entries())
      sheet.line(at++, 1, [index + 1, place, size, speed])
    at++
  }
  if (dirt.includes('openings below')) {
    sheet.put(at++, 1, 'Preparation')
    sheet.line(at++, 1, ['Opening', 'State', 'Checked'])
    for (const [opening, state] of [
      ['kitchen extract', 'sealed'],
      ['trickle vents', 'closed'],
      ['drain traps', 'filled'],
    ] as const)
      sheet.line(at++, 1, [opening, state, 'MT'])
    at++
  }
  if (dirt.includes('rooms beside')) putRooms(sheet, 3, 14, test, recipe)
  return at
}

/** Rooms whose volumes add up to the house's. */
export function putRooms(
  sheet: Sheet,
  row: number,
  column: number,
  { fields }: WrittenTest,
  { units }: Recipe,
) {
  const unit = units.volume.symbol
  sheet.line(row, column, ['Room', 'Floor area', 'Clear height', `Volume (${unit})`])
  const rooms = ['Kitchen', 'Living room', 'Hall', 'Bedroom 1', 'Bedroom 2', 'Bath']
  let left = fields.volume
  for (const [index, room] of rooms.entries()) {
    const volume =
      index === rooms.length - 1
        ? Number(left.toFixed(2))
        : Number((fields.volume * (0.1 + 0.03 * index)).toFixed(2))
    left -= volume
    sheet.line(row + 1 + index, column, [room, Number((volume / 2.5).toFixed(2)), 2.5, volume])
  }
  sheet.line(row + 1 + rooms.length, column, ['Total', undefined, undefined, fields.volume])
}

/** A first sheet with nothing to compute from. */
export function titlePage(test: WrittenTest, { words }: Recipe): Sheet {
  const sheet = new Sheet('Cover')
  sheet.put(3, 2, 'LARCH & FINCH BUILDING PHYSICS')
  sheet.wide(6, 2, 5, words.title)
  sheet.line(9, 2, ['Contents', 'Sheet'])
  sheet.line(10, 2, ['1  Readings', 2])
  sheet.line(11, 2, ['2  Notes', 3])
  sheet.line(14, 2, ['Revision', 'C'])
  sheet.line(15, 2, ['Job ref.', `LF-${test.date.year}-088`])
  return sheet
}
