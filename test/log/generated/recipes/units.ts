import { recipe } from '../recipe.js'
import { BAROMETER, CUSTOMARY, FLOW, PRESSURE, TEMPERATURE } from '../units.js'

/** Units of other trades and countries, and every place a log may say them in. */
export const units = [
  recipe('american, heading says the unit alone', {
    words: 'american',
    units: CUSTOMARY,
    tableUnits: 'alone',
    flowSymbol: 'CFM',
  }),
  recipe('american, below, brackets', {
    words: 'american',
    units: CUSTOMARY,
    structure: 'below',
    flowSymbol: 'cfm',
  }),
  recipe('american, inches of water', {
    words: 'american',
    units: { ...CUSTOMARY, pressure: PRESSURE.inWC },
    tableUnits: 'brackets',
  }),
  recipe('american, sheets, unit row', {
    words: 'american',
    units: CUSTOMARY,
    structure: 'sheets',
    tableUnits: 'row',
    fieldUnits: 'beside',
    flowSymbol: 'CFM',
  }),
  recipe('american, one table by sign', {
    words: 'american',
    units: CUSTOMARY,
    structure: 'one table',
    date: 'text',
  }),
  recipe('metric with cfm flows', { units: { flow: FLOW.cfm }, structure: 'below' }),
  recipe('litres a second in a unit row', { units: { flow: FLOW.ls }, tableUnits: 'row', flowSymbol: 'L/s' }),
  recipe('litres a second in the title of the table', { units: { flow: FLOW.ls }, tableUnits: 'title' }),
  recipe('litres a second by number format', {
    units: { flow: FLOW.ls },
    tableUnits: 'format',
    structure: 'below',
  }),
  recipe('litres a second, dutch words', { words: 'dutch', units: { flow: FLOW.ls }, flowSymbol: 'dm³/s' }),
  recipe('cubic metres a second', { units: { flow: FLOW.m3s }, structure: 'below', fieldUnits: 'beside' }),
  recipe('cubic metres a minute', { units: { flow: FLOW.m3min }, tableUnits: 'square' }),
  recipe('hectopascals', { units: { pressure: PRESSURE.hPa }, structure: 'below' }),
  recipe('millimetres of water', { units: { pressure: PRESSURE.mmWC }, tableUnits: 'brackets' }),
  recipe('kelvin and millimetres of mercury', {
    units: { temperature: TEMPERATURE.K, barometer: BAROMETER.mmHg },
    fieldUnits: 'square',
  }),
  recipe('kilopascals beside', { units: { barometer: BAROMETER.kPa }, fieldUnits: 'beside' }),
  recipe('pascals of the barometer', { units: { barometer: BAROMETER.Pa }, structure: 'below' }),
  recipe('units stuck to every figure', { fieldUnits: 'stuck', tableUnits: 'stuck', structure: 'below' }),
  recipe('units stuck, german commas', { words: 'protocol', fieldUnits: 'stuck', tableUnits: 'stuck' }),
  recipe('units by number format', { fieldUnits: 'format', tableUnits: 'format' }),
  recipe('two flows in two units', {
    table: ['number', 'pressure', 'flow', 'flowOther'],
    otherFlow: FLOW.ls,
    structure: 'below',
  }),
  recipe('two flows, the smaller unit first', {
    table: ['number', 'pressure', 'flowOther', 'flow'],
    otherFlow: FLOW.cfm,
  }),
  recipe('m3/h typed plainly', { flowSymbol: 'm3/h', tableUnits: 'square' }),
  recipe('m3h-1', { flowSymbol: 'm³·h⁻¹', structure: 'below', tableUnits: 'square' }),
  recipe('CMH', { flowSymbol: 'CMH', tableUnits: 'alone', words: 'house' }),
]
