import { recipe } from '../recipe.js'
import { PRESSURE } from '../units.js'

/** The same jobs as firms of several countries write them down. */
export const languages = [
  recipe('english form, side by side'),
  recipe('english form, one below the other', {
    structure: 'below',
    fieldUnits: 'beside',
    tableUnits: 'square',
  }),
  recipe('english short forms, side by side', { words: 'short', tableUnits: 'square', fieldUnits: 'beside' }),
  recipe('english short forms, sheets', { words: 'short', structure: 'sheets', fieldUnits: 'beside' }),
  recipe('english own terms, below', {
    words: 'house',
    structure: 'below',
    tableUnits: 'comma',
    fieldUnits: 'comma',
  }),
  recipe('english own terms, one table', {
    words: 'house',
    structure: 'one table',
    table: ['number', 'remark', 'pressure', 'flow'],
  }),
  recipe('german protocol, below', {
    words: 'protocol',
    structure: 'below',
    tableUnits: 'square',
    fieldUnits: 'square',
  }),
  recipe('german protocol, unit row', {
    words: 'protocol',
    tableUnits: 'row',
    fieldUnits: 'beside',
    dirt: ['merged headings'],
  }),
  recipe('german short, sheets', {
    words: 'kurz',
    structure: 'sheets',
    tableUnits: 'slash',
    fieldUnits: 'beside',
  }),
  recipe('german short, across', {
    words: 'kurz',
    structure: 'across',
    tableUnits: 'beside',
    fieldUnits: 'beside',
  }),
  recipe('german decimals as text', {
    words: 'protocol',
    dirt: ['numbers as text'],
    date: 'text',
    fieldUnits: 'square',
  }),
  recipe('french form, below', { words: 'french', structure: 'below', tableUnits: 'brackets' }),
  recipe('french, across', { words: 'french', structure: 'across', tableUnits: 'square' }),
  recipe('french, lists of zero flow', { words: 'french', zeroFlow: 'columns' }),
  recipe('dutch form, side by side', {
    words: 'dutch',
    fieldUnits: 'beside',
    tableUnits: 'square',
    date: 'text',
  }),
  recipe('dutch, sheets', { words: 'dutch', structure: 'sheets', tableUnits: 'brackets' }),
  recipe('polish form, below', {
    words: 'polish',
    structure: 'below',
    tableUnits: 'square',
    fieldUnits: 'square',
  }),
  recipe('polish, pairs', { words: 'polish', structure: 'pairs', tableUnits: 'brackets' }),
  recipe('spanish form, side by side', { words: 'spanish', tableUnits: 'brackets' }),
  recipe('spanish, one row a reading', { words: 'spanish', structure: 'reading rows' }),
  recipe('italian form, below', {
    words: 'italian',
    structure: 'below',
    fieldUnits: 'beside',
    tableUnits: 'square',
  }),
  recipe('italian, unit row', { words: 'italian', tableUnits: 'row', fieldUnits: 'beside' }),
  recipe('danish form, side by side', { words: 'danish', tableUnits: 'square', fieldUnits: 'square' }),
  recipe('danish, below, whole pascals', {
    words: 'danish',
    structure: 'below',
    units: { pressure: PRESSURE.wholePa },
    dirt: ['openings below'],
  }),
]
