import { putOtherTables, putResults, putTitle } from '../parts/extras.js'
import { putFields } from '../parts/fields.js'
import { labelled } from '../parts/say.js'
import { putZeroFlow } from '../parts/zero-flow.js'
import { Sheet } from '../write/sheet.js'
import type { Layer } from './structure.js'

/** Readings across: a row of pressures, below it a row of flows, for each direction. */
export const across: Layer = ([test], recipe) => {
  if (!test) return []
  const { words, units } = recipe
  const sheet = new Sheet('Test')
  let at = putFields(sheet, putTitle(sheet, 1, recipe), 1, test.written, recipe) + 1
  const beside = recipe.tableUnits === 'beside'
  const first = beside ? 3 : 2
  for (const run of test.written.runs) {
    sheet.put(at++, 1, words[run.direction])
    at = putZeroFlow(sheet, at, 1, run, recipe)
    sheet.line(at, 1, [words.reading])
    sheet.line(
      at++,
      first,
      run.readings.map((_, index) => index + 1),
    )
    for (const [label, unit, values] of [
      [words.pressure, units.pressure, run.readings.map(({ pressure }) => pressure)],
      [words.flow, units.flow, run.readings.map(({ flow }) => flow)],
    ] as const) {
      sheet.put(at, 1, beside ? label : labelled(label, unit.symbol, recipe.tableUnits))
      if (beside) sheet.put(at, 2, unit.symbol)
      sheet.line(at++, first, values)
    }
    at++
  }
  at = putResults(sheet, at, test.truth, recipe)
  putOtherTables(sheet, at, test.written, recipe)
  return [sheet]
}

/** One table for both directions, told apart by a column or by the sign alone. */
export const oneTable: Layer = ([test], recipe) => {
  if (!test) return []
  const { words, units, table, zeroFlow } = recipe
  const sheet = new Sheet('Test')
  let at = putFields(sheet, putTitle(sheet, 1, recipe), 1, test.written, recipe) + 1
  // A column of remarks stands for one that names the direction.
  const named = table.includes('remark')
  for (const run of test.written.runs) {
    if (zeroFlow !== 'labels') continue
    for (const [when, values] of [
      [words.before, run.before],
      [words.after, run.after],
    ] as const)
      sheet.line(at++, 1, [
        labelled(
          `${words.zeroFlow} ${words[run.direction]} ${when}`,
          units.pressure.symbol,
          recipe.fieldUnits,
        ),
        values[0],
        recipe.fieldUnits === 'beside' ? units.pressure.symbol : undefined,
      ])
  }
  at++
  const column = (text: string, symbol: string) => labelled(text, symbol, recipe.tableUnits)
  sheet.line(at++, 1, [
    words.number,
    ...(named ? [words.direction] : []),
    column(words.pressure, units.pressure.symbol),
    column(words.flow, units.flow.symbol),
  ])
  let count = 1
  for (const run of test.written.runs)
    for (const { pressure, flow } of run.readings)
      sheet.line(at++, 1, [count++, ...(named ? [words[run.direction]] : []), pressure, flow])
  putResults(sheet, at + 1, test.truth, recipe)
  return [sheet]
}

/** One table with a pair of columns for each direction, the direction as a heading over both. */
export const pairs: Layer = ([test], recipe) => {
  if (!test) return []
  const { words, units } = recipe
  const sheet = new Sheet('Test')
  const at = putFields(sheet, putTitle(sheet, 1, recipe), 1, test.written, recipe) + 1
  const longest = Math.max(...test.written.runs.map(({ readings }) => readings.length))
  sheet.put(at + 1, 1, words.number)
  const unitRow = recipe.tableUnits === 'row'
  const first = at + (unitRow ? 3 : 2)
  for (let index = 0; index < longest; index++) sheet.put(first + 1 + index, 1, index + 1)
  sheet.put(first, 1, `${words.zeroFlow} ${words.before}`)
  sheet.put(first + longest + 1, 1, `${words.zeroFlow} ${words.after}`)
  for (const [index, run] of test.written.runs.entries()) {
    const left = 2 + 2 * index
    sheet.wide(at, left, 2, words[run.direction])
    for (const [offset, text, unit] of [
      [0, words.pressure, units.pressure],
      [1, words.flow, units.flow],
    ] as const) {
      sheet.put(at + 1, left + offset, labelled(text, unit.symbol, recipe.tableUnits))
      if (unitRow) sheet.put(at + 2, left + offset, unit.symbol)
    }
    sheet.put(first, left, run.before[0])
    for (const [down, { pressure, flow }] of run.readings.entries())
      sheet.line(first + 1 + down, left, [pressure, flow])
    sheet.put(first + longest + 1, left, run.after[0])
  }
  putResults(sheet, first + longest + 3, test.truth, recipe)
  return [sheet]
}
