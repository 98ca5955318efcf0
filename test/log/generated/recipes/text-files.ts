import { recipe } from '../recipe.js'
import { FLOW } from '../units.js'

/** Exports of gauges and loggers, and sheets saved as text. */
export const textFiles = [
  recipe('gauge text, semicolons', {
    structure: 'gauge text',
    file: 'semicolon',
    fieldUnits: 'beside',
    dirt: ['junk lines'],
  }),
  recipe('gauge text, german semicolons', {
    structure: 'gauge text',
    file: 'semicolon',
    words: 'protocol',
    fieldUnits: 'beside',
    tableUnits: 'square',
    dirt: ['junk lines'],
  }),
  recipe('gauge text, tabs', {
    structure: 'gauge text',
    file: 'tab',
    tableUnits: 'row',
    fieldUnits: 'brackets',
  }),
  recipe('gauge text, commas', {
    structure: 'gauge text',
    file: 'comma',
    words: 'house',
    fieldUnits: 'beside',
  }),
  recipe('gauge text, french', {
    structure: 'gauge text',
    file: 'semicolon',
    words: 'french',
    tableUnits: 'brackets',
  }),
  recipe('gauge text, litres', {
    structure: 'gauge text',
    file: 'comma',
    units: { flow: FLOW.ls },
    tableUnits: 'square',
  }),
  recipe('sheet saved as commas', { structure: 'below', file: 'comma' }),
  recipe('sheet saved as semicolons, german', { structure: 'beside', file: 'semicolon', words: 'protocol' }),
  recipe('sheet saved as tabs, polish', { structure: 'below', file: 'tab', words: 'polish' }),
  recipe('series with the house above', {
    structure: 'series',
    file: 'semicolon',
    words: 'house',
    house: { directions: ['depressurisation'] },
    dirt: ['junk lines'],
  }),
  recipe('series on a sheet, house first', {
    structure: 'series',
    tableUnits: 'row',
    house: { directions: ['depressurisation'] },
  }),
  recipe('series alone', {
    structure: 'series',
    file: 'comma',
    house: { directions: ['depressurisation'] },
    missing: ['volume', 'temperatures', 'barometer', 'name', 'date'],
    mustAsk: ['volume', 'temperatures'],
    mayAsk: ['date'],
  }),
]
