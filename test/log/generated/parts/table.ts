import type { Random } from '../random.js'
import type { Recipe } from '../recipe.js'
import type { Look, Sheet, Value } from '../write/sheet.js'
import type { WrittenRunOfLog } from '../written.js'
import { type ColumnPlan, columnPlans } from './columns.js'
import { figure, labelled } from './say.js'

/** A table of one run's readings with everything that people leave in it. Returns the next free row. */
export function putTable(
  sheet: Sheet,
  row: number,
  column: number,
  run: WrittenRunOfLog,
  recipe: Recipe,
  random: Random,
): number {
  const lists = recipe.zeroFlow === 'columns'
  const plans = columnPlans(run, recipe)
  const left = lists ? column + 2 : column
  const first = putHeadings(sheet, row, left, plans, recipe)
  let at = first
  if (lists) putLists(sheet, row, at, column, run, recipe)
  const line = (values: readonly (Value | undefined)[], look: Look = {}) => {
    for (const [index, value] of values.entries()) sheet.put(at, left + index, value, look)
    at++
  }
  const named = (cells: Partial<Record<string, Value>>) => plans.map((plan) => cells[plan.column])
  if (recipe.zeroFlow === 'in the table') line(zeroLine(recipe, run.before, recipe.words.before, plans))
  const { dirt, words } = recipe
  // The second note asks for the reading to be repeated: it stands only where no flow does.
  const harmless = words.notes.filter((_, index) => index !== 1)
  const odd = random.whole(2, run.readings.length - 2)
  for (const [index, reading] of run.readings.entries()) {
    if (dirt.includes('blank rows') && (index === 3 || index === 6)) at++
    if (dirt.includes('repeat note instead of a flow') && index === odd)
      line(named({ number: index + 1, pressure: reading.pressure, flow: words.notes[1] ?? '' }))
    if (dirt.includes('struck-out reading') && index === odd)
      line(named({ number: index + 1, pressure: reading.pressure, flow: Math.round(reading.flow * 1.21) }), {
        struck: true,
      })
    if (dirt.includes('greyed reading not used') && index === odd)
      line(
        named({
          number: index + 1,
          pressure: reading.pressure,
          flow: Math.round(reading.flow * 0.84),
          remark: 'not used',
        }),
        { grey: true },
      )
    if (dirt.includes('greyed reading') && index === odd)
      line(named({ number: index + 1, pressure: reading.pressure, flow: Math.round(reading.flow * 1.19) }), {
        grey: true,
      })
    for (const [across, plan] of plans.entries()) {
      const value = plan.value(reading, index)
      if (value === undefined) continue
      const place = recipe.tableUnits
      const [written, look] =
        typeof value === 'number' && plan.unit ? figure(value, plan.unit, place, recipe) : [value, {}]
      const noted = dirt.includes('note after a flow') && index === odd && plan.column === 'flow'
      sheet.put(at, left + across, noted ? `${written} (${words.notes[0]})` : written, look)
    }
    if (dirt.includes('notes') && index % 3 === 1)
      line(named({ remark: harmless[index % harmless.length] ?? '' }))
    else at++
  }
  if (recipe.zeroFlow === 'in the table') line(zeroLine(recipe, run.after, recipe.words.after, plans))
  const bottom = putSummaryRows(sheet, at, left, run, plans, recipe)
  // Lists may be longer than the readings beside them.
  return lists ? Math.max(bottom, first + Math.max(run.before.length, run.after.length)) : bottom
}

function putHeadings(
  sheet: Sheet,
  row: number,
  left: number,
  plans: readonly ColumnPlan[],
  recipe: Recipe,
): number {
  const { tableUnits: place, flowSymbol, units } = recipe
  const symbol = ({ unit }: ColumnPlan) =>
    unit === units.flow && flowSymbol !== undefined ? flowSymbol : (unit?.symbol ?? '')
  let at = row
  if (place === 'title') sheet.put(at++, left, `${units.pressure.symbol}, ${flowSymbol ?? units.flow.symbol}`)
  for (const [index, plan] of plans.entries()) {
    const alone = place === 'alone' && plan.column === 'flow'
    sheet.put(
      at,
      left + index,
      alone ? symbol(plan) : plan.unit ? labelled(plan.heading, symbol(plan), place) : plan.heading,
    )
    if (place === 'row' || place === 'beside') sheet.put(at + 1, left + index, symbol(plan))
  }
  return at + (place === 'row' || place === 'beside' ? 2 : 1)
}

function putLists(
  sheet: Sheet,
  row: number,
  first: number,
  column: number,
  run: WrittenRunOfLog,
  recipe: Recipe,
) {
  const { words, units, tableUnits } = recipe
  const heading = tableUnits === 'title' ? row + 1 : row
  for (const [across, [when, values]] of (
    [
      [words.before, run.before],
      [words.after, run.after],
    ] as const
  ).entries()) {
    const text = `${words.zeroFlow} ${when}`
    sheet.put(heading, column + across, labelled(text, units.pressure.symbol, tableUnits))
    if (tableUnits === 'row' || tableUnits === 'beside')
      sheet.put(heading + 1, column + across, units.pressure.symbol)
    for (const [down, value] of values.entries()) sheet.put(first + down, column + across, value)
  }
}

/** A row of the table that holds a zero-flow pressure, marked in the column of numbers or remarks. */
function zeroLine(
  { words }: Recipe,
  values: readonly number[],
  when: string,
  plans: readonly ColumnPlan[],
): (Value | undefined)[] {
  const marked = plans.some(({ column }) => column === 'number') ? 'number' : 'remark'
  return plans.map(({ column }) => {
    if (column === marked) return `${words.zeroFlow} ${when}`
    if (column === 'pressure') return values[0]
    return column === 'flow' ? 0 : undefined
  })
}

function putSummaryRows(
  sheet: Sheet,
  row: number,
  left: number,
  run: WrittenRunOfLog,
  plans: readonly ColumnPlan[],
  { dirt, words, units }: Recipe,
): number {
  let at = row
  const kinds: [boolean, string, string, (values: number[]) => number][] = [
    [dirt.includes('average row'), words.average, 'AVERAGE', (v) => v.reduce((a, b) => a + b, 0) / v.length],
    [dirt.includes('highest row'), words.highest, 'MAX', (v) => Math.max(...v)],
    [dirt.includes('total row'), 'Total', 'SUM', (v) => v.reduce((a, b) => a + b, 0)],
  ]
  for (const [wanted, label, name, summarise] of kinds) {
    if (!wanted) continue
    for (const [index, plan] of plans.entries()) {
      if (index === 0) sheet.put(at, left, label)
      else if (plan.unit) {
        const values = run.readings.map((reading, count) => Number(plan.value(reading, count)))
        const digits = plan.unit === units.flow ? units.flow.digits : plan.unit.digits
        const block = `${letters(left + index)}${row - run.readings.length}:${letters(left + index)}${row - 1}`
        sheet.put(at, left + index, Number(summarise(values).toFixed(digits)), {
          ...(dirt.includes('formulas') && { formula: `ROUND(${name}(${block}),${digits})` }),
        })
      }
    }
    at++
  }
  return at
}

/** A column's letters, up to ZZ. */
function letters(column: number): string {
  const last = String.fromCharCode(65 + ((column - 1) % 26))
  return column > 26 ? String.fromCharCode(64 + Math.floor((column - 1) / 26)) + last : last
}
