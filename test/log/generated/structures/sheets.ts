import { putResults, putTitle } from '../parts/extras.js'
import { putFields } from '../parts/fields.js'
import { putTable } from '../parts/table.js'
import { putZeroFlow, zeroFlowSheet } from '../parts/zero-flow.js'
import { Sheet } from '../write/sheet.js'
import type { Layer } from './structure.js'

/** A sheet with the job, then one for each direction; temperatures stand where they were read. */
export const sheetPerDirection: Layer = ([test], recipe, random) => {
  if (!test) return []
  const { words } = recipe
  const job = new Sheet('Job')
  let at = putTitle(job, 1, recipe)
  at = putFields(job, at, 1, test.written, recipe, [
    'name',
    'address',
    'date',
    'tester',
    'volume',
    'gross',
    'envelope',
    'floor',
  ])
  putResults(job, at + 1, test.truth, recipe)
  const sheets = [job]
  for (const run of test.written.runs) {
    const sheet = new Sheet(words[run.direction].slice(0, 28))
    sheet.put(1, 1, words[run.direction])
    let row = putFields(sheet, 3, 1, test.written, recipe, ['indoor', 'outdoor', 'barometer'])
    row = putZeroFlow(sheet, row + 1, 1, run, recipe)
    putTable(sheet, row + 1, 1, run, recipe, random)
    sheets.push(sheet)
  }
  if (recipe.zeroFlow === 'other sheet') sheets.push(zeroFlowSheet(test.written, recipe))
  return sheets
}
