import { expect, it } from 'vitest'
import { wrappedLines } from '../../shared-calc/src/reports/workbook/wrapped-lines'

// Wrapped by hand, as LibreOffice divides such texts in the PDF of a register: at blanks and after hyphens; too long a word within it.
it.each([
  ['', 10, 1],
  ['one line', 10, 1],
  // "10-merged-" | "headings-" | "unit-row"
  ['10-merged-headings-unit-row', 10, 3],
  // "30 November" | "2026"
  ['30 November 2026', 14, 2],
  ['first\nsecond line here', 12, 3],
  ['abcdefghijklmnopqrstuvwxyz', 10, 3],
])('%j in lines of %i characters takes %i', (text, width, lines) => {
  expect(wrappedLines(text, width)).toBe(lines)
})
