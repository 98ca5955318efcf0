import { fieldLines } from '../parts/fields.js'
import { labelled } from '../parts/say.js'
import type { Recipe } from '../recipe.js'
import { Sheet, type Value } from '../write/sheet.js'
import type { KnownTest, Layer } from './structure.js'

/** A list with one row for each direction of each test: what was measured runs across, p1 q1 p2 q2 and so on. */
export const testRows: Layer = (tests, recipe) => {
  const { words, units, dirt } = recipe
  const sheet = new Sheet('Log')
  const most = Math.max(
    ...tests.flatMap(({ written }) => written.runs.map(({ readings }) => readings.length)),
  )
  const unitOf = (text: string, symbol: string) => labelled(text, symbol, recipe.tableUnits)
  const fields = fieldLines(tests[0]?.written as KnownTest['written'], recipe)
  const headings: string[] = [
    `${words.test} ${words.number}`,
    ...fields.map(({ label, unit }) => (unit ? unitOf(label, unit.symbol) : label)),
    words.direction,
    unitOf(`${words.zeroFlow} ${words.before}`, units.pressure.symbol),
    unitOf(`${words.zeroFlow} ${words.after}`, units.pressure.symbol),
    ...Array.from({ length: most }, (_, index) => [
      unitOf(`P${index + 1}`, units.pressure.symbol),
      unitOf(`Q${index + 1}`, units.flow.symbol),
    ]).flat(),
    ...(dirt.includes('results') ? ['n50 (1/h)'] : []),
  ]
  sheet.line(1, 1, headings)
  let at = 2
  for (const [index, { written, truth }] of tests.entries())
    for (const run of written.runs) {
      const values: (Value | undefined)[] = [
        `A-${31 + index}`,
        ...fieldLines(written, recipe).map(({ value }) => value),
        words[run.direction],
        run.before[0],
        run.after[0],
        ...Array.from({ length: most }, (_, count) => {
          const reading = run.readings[count]
          return [reading?.pressure, reading?.flow]
        }).flat(),
        ...(dirt.includes('results') ? [Number(truth.n50_1_h.toFixed(2))] : []),
      ]
      sheet.line(at++, 1, values)
    }
  return [sheet]
}

/** A list with one row for each reading, told apart by columns of test, direction and kind; the job on a sheet beside. */
export const readingRows: Layer = (tests, recipe) => {
  const { words, units, tests: several } = recipe
  const sheet = new Sheet('Readings')
  const column = (text: string, symbol: string) => labelled(text, symbol, recipe.tableUnits)
  const withTest = tests.length > 1
  sheet.line(1, 1, [
    ...(withTest ? [words.test] : []),
    words.direction,
    words.role,
    column(words.pressure, units.pressure.symbol),
    column(words.flow, units.flow.symbol),
    words.remark,
  ])
  let at = 2
  for (const [index, { written }] of tests.entries()) {
    const name = withTest ? [written.name] : []
    for (const run of written.runs) {
      const put = (role: string, pressure: number, flow: number | undefined) => {
        sheet.line(at, 1, [...name, words[run.direction], role, pressure, flow])
        if (several === 'houses, others filtered out' && index > 0) sheet.hiddenRows.add(at)
        at++
      }
      for (const value of run.before) put(`${words.zeroFlow} ${words.before}`, value, undefined)
      for (const { pressure, flow } of run.readings) put(words.reading, pressure, flow)
      for (const value of run.after) put(`${words.zeroFlow} ${words.after}`, value, undefined)
    }
  }
  return [jobSheet(tests, recipe), sheet]
}

/** The single values of all tests: a form for one, a column each for several. */
function jobSheet(tests: readonly KnownTest[], recipe: Recipe): Sheet {
  const sheet = new Sheet('Jobs')
  for (const [index, { written }] of tests.entries()) {
    if (recipe.tests === 'houses, others filtered out' && index > 0) break
    for (const [down, { label, unit, value }] of fieldLines(written, recipe).entries()) {
      if (index === 0) sheet.put(down + 1, 1, unit ? labelled(label, unit.symbol, recipe.fieldUnits) : label)
      sheet.put(down + 1, 2 + index, value)
      if (recipe.fieldUnits === 'beside' && unit && tests.length === 1) sheet.put(down + 1, 3, unit.symbol)
    }
  }
  return sheet
}
