import { recipe } from '../recipe.js'

/** The shapes zero-flow pressures come in, and pressures that are already without them. */
export const zeroFlows = [
  recipe('before and after as headings of two cells', { zeroFlow: 'two cells', structure: 'below' }),
  recipe('before and after as headings, side by side', { zeroFlow: 'two cells', dirt: ['merged headings'] }),
  recipe('ten values across', { zeroFlow: 'lines', structure: 'below' }),
  recipe('ten values across, side by side', { zeroFlow: 'lines' }),
  recipe('thirty values in columns', { zeroFlow: 'columns', house: { zeroFlowValues: 30 } }),
  recipe('ten values in columns, below', { zeroFlow: 'columns', structure: 'below' }),
  recipe('zero flow as rows of the table', { zeroFlow: 'in the table', structure: 'below' }),
  recipe('zero flow as rows, side by side', { zeroFlow: 'in the table', words: 'short' }),
  recipe('zero flow on another sheet', { zeroFlow: 'other sheet' }),
  recipe('zero flow on another sheet, german', {
    zeroFlow: 'other sheet',
    words: 'protocol',
    structure: 'below',
  }),
  recipe('rows with thirty zero values', {
    structure: 'reading rows',
    house: { zeroFlowValues: 30 },
  }),
  recipe('corrected pressure and flow beside', {
    table: ['number', 'pressure', 'flow', 'induced', 'corrected'],
  }),
  recipe('corrected flow beside', { table: ['number', 'pressure', 'flow', 'corrected'], structure: 'below' }),
  recipe('induced pressures only', {
    table: ['number', 'induced', 'flow'],
    induced: true,
    mayAsk: ['which pressure', 'zero flow'],
  }),
  recipe('depressurisation without minus', { noMinus: true, mayAsk: ['sign'] }),
  recipe('depressurisation without minus, german', {
    words: 'protocol',
    structure: 'below',
    noMinus: true,
    mayAsk: ['sign'],
  }),
  recipe('without minus, sheets', { structure: 'sheets', noMinus: true, mayAsk: ['sign'] }),
]
