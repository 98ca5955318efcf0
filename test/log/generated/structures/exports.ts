import { fieldLines } from '../parts/fields.js'
import { figure, labelled } from '../parts/say.js'
import { Sheet } from '../write/sheet.js'
import type { Layer } from './structure.js'

/** What a gauge writes when its memory is read out: keys with values, then a section for each direction. */
export const gaugeText: Layer = ([test], recipe) => {
  if (!test) return []
  const { words, units, dirt, tableUnits } = recipe
  const sheet = new Sheet('Export')
  let at = 1
  const junk = dirt.includes('junk lines')
  if (junk) {
    sheet.line(at++, 1, ['#EXPORT', 'fw 3.02'])
    sheet.line(at++, 1, ['Serial', 'G-0417'])
    sheet.line(at++, 1, ['***'])
  }
  for (const { label, unit, value } of fieldLines(test.written, recipe)) {
    const place = recipe.fieldUnits
    const [written] = unit && typeof value === 'number' ? figure(value, unit, place, recipe) : [value]
    sheet.line(at++, 1, [
      unit ? labelled(label, unit.symbol, place) : label,
      written,
      place === 'beside' ? unit?.symbol : undefined,
    ])
  }
  for (const run of test.written.runs) {
    at++
    if (junk) sheet.put(at++, 1, '----------')
    sheet.put(at++, 1, words[run.direction])
    sheet.line(at++, 1, [`${words.zeroFlow} ${words.before}`, run.before[0], units.pressure.symbol])
    sheet.line(at, 1, [
      words.number,
      labelled(words.pressure, units.pressure.symbol, tableUnits),
      labelled(words.flow, units.flow.symbol, tableUnits),
      'Time',
    ])
    if (tableUnits === 'row') sheet.line(++at, 2, [units.pressure.symbol, units.flow.symbol, 'hh:mm:ss'])
    at++
    for (const [index, { pressure, flow }] of run.readings.entries())
      sheet.line(at++, 1, [index + 1, pressure, flow, `10:${20 + index}:05`])
    sheet.line(at++, 1, [`${words.zeroFlow} ${words.after}`, run.after[0], units.pressure.symbol])
  }
  return [sheet]
}
