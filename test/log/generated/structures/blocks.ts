import { putOtherTables, putResults, putTitle } from '../parts/extras.js'
import { putFields } from '../parts/fields.js'
import { putTable } from '../parts/table.js'
import { putZeroFlow, zeroFlowSheet } from '../parts/zero-flow.js'
import type { Random } from '../random.js'
import type { Recipe } from '../recipe.js'
import { Sheet } from '../write/sheet.js'
import type { KnownTest, Layer } from './structure.js'

/** A form above, below it a block for each direction: side by side or one under the other. */
export const blocks: Layer = (tests, recipe, random) => {
  const { tests: several, zeroFlow } = recipe
  const sheets: Sheet[] = []
  for (const [index, test] of tests.entries()) {
    const apart = several === 'houses on sheets'
    if (index === 0 || apart) sheets.push(new Sheet(apart ? `House ${index + 1}` : 'Test'))
    const sheet = sheets.at(-1) as Sheet
    const row = index === 0 || apart ? 1 : sheet.size.rows + 4
    if (several === 'retest' && index > 0) putAgain(sheet, row, test, recipe, random)
    else putForm(sheet, row, test, recipe, random)
    if (zeroFlow === 'other sheet') sheets.push(zeroFlowSheet(test.written, recipe))
  }
  return sheets
}

function putForm(sheet: Sheet, row: number, test: KnownTest, recipe: Recipe, random: Random): void {
  let at = putTitle(sheet, row, recipe)
  at = putFields(sheet, at, 1, test.written, recipe) + 1
  if (recipe.tests === 'retest') sheet.put(at++, 1, `${recipe.words.test} 1`)
  at = putBlocks(sheet, at, test, recipe, random)
  at = putResults(sheet, at + 1, test.truth, recipe)
  putOtherTables(sheet, at, test.written, recipe)
}

/** The same house a second time: only another day and new readings. */
function putAgain(sheet: Sheet, row: number, test: KnownTest, recipe: Recipe, random: Random): void {
  sheet.put(row, 1, `${recipe.words.retest} 2`)
  putBlocks(sheet, row + 1, test, recipe, random)
}

export function putBlocks(
  sheet: Sheet,
  row: number,
  { written }: KnownTest,
  recipe: Recipe,
  random: Random,
): number {
  const { words, structure, dirt, table, zeroFlow } = recipe
  const width = table.length + (zeroFlow === 'columns' ? 2 : 0)
  const gap = dirt.includes('wide gap') ? 6 : 1
  let [top, left, bottom] = [row, 1, row]
  for (const run of written.runs) {
    if (dirt.includes('merged headings')) sheet.wide(top, left, width, words[run.direction])
    else sheet.put(top, left, words[run.direction])
    let at = putZeroFlow(sheet, top + 1, left, run, recipe)
    if (at > top + 1) at++
    at = putTable(sheet, at, left, run, recipe, random)
    bottom = Math.max(bottom, at)
    const beside = Math.max(
      width,
      zeroFlow === 'two cells' ? 3 : zeroFlow === 'lines' ? 1 + run.before.length : 2,
    )
    if (structure === 'beside') left += beside + gap + (recipe.tableUnits === 'beside' ? 1 : 0)
    else top = at + (dirt.includes('wide gap') ? 8 : 1)
  }
  return bottom
}
