import { recipe } from '../recipe.js'
import { CUSTOMARY, FLOW } from '../units.js'

/** Logs that leave something open which nobody can know: to be asked, never guessed. */
export const openQuestions = [
  recipe('flow unit nowhere', { tableUnits: 'nowhere', mustAsk: ['flow unit'], mayAsk: ['pressure unit'] }),
  recipe('flow unit nowhere, litres meant', {
    tableUnits: 'nowhere',
    units: { flow: FLOW.ls },
    structure: 'below',
    mustAsk: ['flow unit'],
    mayAsk: ['pressure unit'],
  }),
  recipe('no unit anywhere', {
    fieldUnits: 'nowhere',
    tableUnits: 'nowhere',
    structure: 'below',
    mustAsk: ['flow unit', 'volume unit'],
    mayAsk: ['pressure unit', 'barometer unit', 'temperatures'],
  }),
  recipe('volume unit nowhere, american', {
    words: 'american',
    units: CUSTOMARY,
    fieldUnits: 'nowhere',
    tableUnits: 'brackets',
    mustAsk: ['volume unit'],
    mayAsk: ['temperatures', 'barometer unit'],
  }),
  recipe('volume missing', { missing: ['volume'], mustAsk: ['volume'] }),
  recipe('temperatures missing', {
    missing: ['temperatures'],
    structure: 'below',
    mustAsk: ['temperatures'],
  }),
  recipe('volume and temperatures missing, german', {
    words: 'protocol',
    missing: ['volume', 'temperatures'],
    mustAsk: ['volume', 'temperatures'],
  }),
  recipe('which of two numbers is the month', { date: 'day or month first', mustAsk: ['date'] }),
]
