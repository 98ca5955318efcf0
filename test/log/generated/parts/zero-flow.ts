import type { Recipe } from '../recipe.js'
import { Sheet } from '../write/sheet.js'
import type { WrittenRunOfLog, WrittenTest } from '../written.js'
import { figure, labelled } from './say.js'

/** Zero-flow pressures above a table, where this log has them there. Returns the next free row. */
export function putZeroFlow(
  sheet: Sheet,
  row: number,
  column: number,
  run: WrittenRunOfLog,
  recipe: Recipe,
): number {
  const { words, units, zeroFlow } = recipe
  // In a table's own place for units (a row, a title) a single value would stay without one.
  const place = ['row', 'title', 'alone'].includes(recipe.tableUnits) ? recipe.fieldUnits : recipe.tableUnits
  const unit = { ...units.pressure, digits: 2 }
  const cells = (values: readonly number[]) => values.map((value) => figure(value, unit, place, recipe))
  if (zeroFlow === 'labels' || zeroFlow === 'lines') {
    for (const [index, [when, values]] of (
      [
        [words.before, run.before],
        [words.after, run.after],
      ] as const
    ).entries()) {
      sheet.put(row + index, column, labelled(`${words.zeroFlow} ${when}`, unit.symbol, place))
      for (const [across, [value, look]] of cells(values).entries())
        sheet.put(row + index, column + 1 + across, value, look)
      if (place === 'beside') sheet.put(row + index, column + 1 + values.length, unit.symbol)
    }
    return row + 2
  }
  if (zeroFlow === 'two cells') {
    sheet.line(row, column, [words.zeroFlow, words.before, words.after])
    sheet.put(row + 1, column, unit.symbol)
    for (const [across, [value, look]] of cells([run.before[0] ?? 0, run.after[0] ?? 0]).entries())
      sheet.put(row + 1, column + 1 + across, value, look)
    return row + 2
  }
  return row
}

/** The sheet that holds all zero-flow values, one column for each list. */
export function zeroFlowSheet(test: WrittenTest, { words, units }: Recipe): Sheet {
  const sheet = new Sheet(words.zeroFlow.slice(0, 28))
  sheet.put(1, 1, words.zeroFlow)
  let column = 1
  for (const { direction, before, after } of test.runs) {
    sheet.put(3, column, words[direction])
    for (const [when, values] of [
      [words.before, before],
      [words.after, after],
    ] as const) {
      sheet.put(4, column, `${words.zeroFlow} ${when} (${units.pressure.symbol})`)
      for (const [index, value] of values.entries()) sheet.put(5 + index, column, value)
      column++
    }
    column++
  }
  return sheet
}
