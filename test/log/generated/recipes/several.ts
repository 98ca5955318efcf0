import { recipe } from '../recipe.js'
import { CUSTOMARY } from '../units.js'

/** Files that hold more than one test, and files that hide one. */
export const several = [
  recipe('two houses on one sheet', { tests: 'houses', structure: 'beside', mayAsk: ['which test'] }),
  recipe('two houses, blocks below', {
    tests: 'houses',
    structure: 'below',
    words: 'house',
    mayAsk: ['which test'],
  }),
  recipe('two houses on two sheets', { tests: 'houses on sheets', mayAsk: ['which test'] }),
  recipe('two houses on two sheets, german', {
    tests: 'houses on sheets',
    words: 'protocol',
    structure: 'below',
    mayAsk: ['which test'],
  }),
  recipe('test and retest', { tests: 'retest', mayAsk: ['which test'] }),
  recipe('test and retest, below', { tests: 'retest', structure: 'below', mayAsk: ['which test'] }),
  recipe('one row a direction', { structure: 'test rows', tests: 'houses', mayAsk: ['which test'] }),
  recipe('one row a direction, one house', { structure: 'test rows', dirt: ['results'] }),
  recipe('one row a direction, american', {
    structure: 'test rows',
    tests: 'houses',
    words: 'american',
    units: CUSTOMARY,
    tableUnits: 'comma',
    mayAsk: ['which test'],
  }),
  recipe('one row a direction, french', {
    structure: 'test rows',
    words: 'french',
    tests: 'houses',
    mayAsk: ['which test'],
  }),
  recipe('one row a reading', { structure: 'reading rows' }),
  recipe('one row a reading, two houses', {
    structure: 'reading rows',
    tests: 'houses',
    mayAsk: ['which test'],
  }),
  recipe('one row a reading, german', { structure: 'reading rows', words: 'protocol' }),
  recipe('filtered to one job', {
    structure: 'reading rows',
    tests: 'houses, others filtered out',
    mayAsk: ['which test'],
    mustSay: [/hid|filter/i],
  }),
  recipe('old job hidden', { dirt: ['old job hidden'], mayAsk: ['which test'], mustSay: [/hid/i] }),
  recipe('old job hidden, below', {
    dirt: ['old job hidden'],
    structure: 'below',
    mayAsk: ['which test'],
    mustSay: [/hid/i],
  }),
  recipe('depressurisation alone', { house: { directions: ['depressurisation'] } }),
  recipe('pressurisation alone', { house: { directions: ['pressurisation'] }, structure: 'below' }),
]
