import { recipe } from '../recipe.js'
import { FLOW } from '../units.js'

/** More of the shapes that readers find hard: the same thing in other words, places and units. */
export const variants = [
  recipe('rooms beside, blocks below', { dirt: ['rooms beside'], structure: 'below', words: 'house' }),
  recipe('rooms to the right', { dirt: ['rooms beside'], words: 'short', fieldUnits: 'beside' }),
  recipe('rooms beside, german', { dirt: ['rooms beside'], words: 'protocol' }),
  recipe('leaks and openings side by side', { dirt: ['leaks below', 'openings below'] }),
  recipe('leaks and openings, blocks below', {
    dirt: ['leaks below', 'openings below'],
    structure: 'below',
    tableUnits: 'square',
  }),
  recipe('preparation list under two blocks', {
    dirt: ['openings below'],
    structure: 'below',
    words: 'short',
  }),
  recipe('openings under the tables', { dirt: ['openings below', 'results'], words: 'house' }),
  recipe('english pairs', { structure: 'pairs' }),
  recipe('pairs, litres a second', { structure: 'pairs', units: { flow: FLOW.ls }, tableUnits: 'row' }),
  recipe('spanish pairs of columns', { structure: 'pairs', words: 'spanish' }),
  recipe('danish pairs', { structure: 'pairs', words: 'danish', tableUnits: 'square' }),
  recipe('german pairs', { structure: 'pairs', words: 'protocol', tableUnits: 'row' }),
  recipe('spanish across', { structure: 'across', words: 'spanish' }),
  recipe('italian across', {
    structure: 'across',
    words: 'italian',
    tableUnits: 'beside',
    fieldUnits: 'beside',
  }),
  recipe('danish across', { structure: 'across', words: 'danish' }),
  recipe('american across', { structure: 'across', words: 'american', units: { flow: FLOW.cfm } }),
  recipe('spanish rows', { structure: 'test rows', words: 'spanish' }),
  recipe('polish one row a direction', {
    structure: 'test rows',
    words: 'polish',
    tests: 'houses',
    mayAsk: ['which test'],
  }),
  recipe('french gauge export', { structure: 'gauge text', file: 'tab', words: 'french' }),
  recipe('italian export', {
    structure: 'gauge text',
    file: 'semicolon',
    words: 'italian',
    fieldUnits: 'beside',
  }),
  recipe('one table in polish', { structure: 'one table', words: 'polish' }),
  recipe('spanish one table', {
    structure: 'one table',
    words: 'spanish',
    table: ['number', 'remark', 'pressure', 'flow'],
  }),
  recipe('one table in spanish, by sign', { structure: 'one table', words: 'spanish' }),
  recipe('zero flow of both directions in one list, spanish', {
    structure: 'one table',
    words: 'spanish',
    table: ['number', 'remark', 'pressure', 'flow'],
  }),
  recipe('spanish one table with a column of directions', {
    structure: 'one table',
    words: 'spanish',
    tableUnits: 'square',
    table: ['number', 'remark', 'pressure', 'flow'],
  }),
  recipe('spanish sheets', { structure: 'sheets', words: 'spanish' }),
  recipe('one table in italian', {
    structure: 'one table',
    words: 'italian',
    table: ['number', 'remark', 'pressure', 'flow'],
  }),
  recipe('danish one table', { structure: 'one table', words: 'danish', tableUnits: 'square' }),
  recipe('french one table', {
    structure: 'one table',
    words: 'french',
    table: ['number', 'remark', 'pressure', 'flow'],
  }),
  recipe('flow unit with a power of minus one', { flowSymbol: 'm³ h⁻¹', tableUnits: 'square' }),
  recipe('m³ per hour by exponent', { flowSymbol: 'm³·h⁻¹', tableUnits: 'brackets', words: 'french' }),
  recipe('readings of two houses in rows', {
    structure: 'reading rows',
    tests: 'houses',
    words: 'house',
    mayAsk: ['which test'],
  }),
  recipe('two jobs in one list', {
    structure: 'reading rows',
    tests: 'houses',
    tableUnits: 'square',
    words: 'short',
    mayAsk: ['which test'],
  }),
]
