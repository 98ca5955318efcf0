import { describe, expect, it } from 'vitest'
import { moveFormula } from '../../shared-calc/src/log/grid/xlsx/shared-formula'

// What a formula becomes when its cell is filled down and to the right, as every spreadsheet program does it
// (ECMA-376 part 1, 18.17.2.3 for references, 18.3.1.40 for formulas that are shared). Worked out by hand.
describe('a formula that is stored once for several cells', () => {
  it.each([
    ['A1+B2', 1, 0, 'A2+B3'],
    ['A1+B2', 0, 2, 'C1+D2'],
    ['$A1+B$2+$C$3', 5, 1, '$A6+C$2+$C$3'],
    ['SUM(A1:B10)/AA9', 1, 1, 'SUM(B2:C11)/AB10'],
    ['LOG10(A1)+ATAN2(B1,C1)', 2, 0, 'LOG10(A3)+ATAN2(B3,C3)'],
    ['Working!B4*Readings!$C$7', 3, 0, 'Working!B7*Readings!$C$7'],
    ["'Sheet A1'!A1", 1, 0, "'Sheet A1'!A2"],
    ["'It''s B2'!B2", 1, 0, "'It''s B2'!B3"],
    ['IF(A1>0,"A1 ""B2"" C3",A2)', 1, 0, 'IF(A2>0,"A1 ""B2"" C3",A3)'],
    ['margin_to_target*A1+n50_1+x.A1', 1, 0, 'margin_to_target*A2+n50_1+x.A1'],
    ['1.5E3+A1*2E-7', 1, 0, '1.5E3+A2*2E-7'],
    ['Z1', 0, 1, 'AA1'],
    ['B3', -2, -1, 'A1'],
    ['A1', -1, 0, '#REF!'],
    ['XFD1', 0, 1, '#REF!'],
  ])('moves %s by %i rows and %i columns to %s', (formula, rows, columns, moved) => {
    expect(moveFormula(formula, rows, columns)).toBe(moved)
  })
})
