import ExcelJS from 'exceljs'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { toSheet } from '../../../shared-calc/src/engine/index.js'
import { parseExpression } from '../../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { chapters } from '../../../shared-calc/src/formulas/list.js'
import { type FormulaCell, readCells } from '../../support/formula-cells'
import { evaluatedChapter, nothingCancels } from './support/chapter-inputs'
import { ourValue } from './support/evaluate-expression'
import { columnExpression, type Numbers, numbers, scalarExpression } from './support/random-expressions'
import { tame } from './support/tame'
import { writeBlock } from './support/write-block'

const CASES = 400
// SEED brings other numbers; the message of a failure names the one it had.
const seed = Number(process.env.SEED ?? 20_261_126)
const columnLetters = ['D', 'E'] as const

// One workbook for all: LibreOffice takes seconds to start. Every formula stores our own value as its result.
let cells: FormulaCell[]
const cellsOf = (sheet: string) => cells.filter((cell) => cell.sheet === sheet)
const expectConfirmed = (own: readonly FormulaCell[]) => {
  for (const { formula, cached, recalculated } of own) {
    // LibreOffice takes a sum for 0 where its terms cancel but for their last digits.
    if (Number(recalculated) === 0 && Math.abs(Number(cached)) < 1e-14) continue
    const apart = Math.abs(Number(cached) - Number(recalculated))
    const allowed = 1e-9 * Math.max(Math.abs(Number(cached)), Math.abs(Number(recalculated)))
    expect(
      apart <= allowed,
      `=${formula} is ${recalculated} to LibreOffice, ${cached} to us (seed ${seed})`,
    ).toBe(true)
  }
}

/** Writes an expression with its numbers: scalars in A to C, columns in D and E below each other, formulas in G. */
function writeCase(sheet: ExcelJS.Worksheet, expression: string, values: Numbers): void {
  const top = sheet.rowCount + 2
  sheet.getRow(top).values = [values.a, values.b, values.c]
  values.u.forEach((u, i) => {
    sheet.getCell(`D${top + i}`).value = u
    sheet.getCell(`E${top + i}`).value = values.v[i] ?? Number.NaN
  })
  const last = top + values.u.length - 1
  const column = (symbol: string) => columnLetters[['u', 'v'].indexOf(symbol)]
  const results = [ourValue(expression, values)].flat()
  results.forEach((result, i) => {
    const formula = toSheet(parseExpression(expression), {
      cell: (symbol) => {
        const letter = column(symbol)
        return letter ? `${letter}${top + i}` : `${symbol.toUpperCase()}${top}`
      },
      range: (symbol) => {
        const letter = column(symbol)
        return letter && `${letter}${top}:${letter}${last}`
      },
    })
    sheet.getCell(`G${top + i}`).value = { formula, result }
  })
}

beforeAll(async () => {
  const workbook = new ExcelJS.Workbook()
  for (const [name, expression] of [
    ['scalars', scalarExpression],
    ['columns', columnExpression],
  ] as const) {
    const sheet = workbook.addWorksheet(name)
    const usable = fc.tuple(expression, numbers).filter(([text, values]) => tame(text, values))
    for (const [text, values] of fc.sample(usable, { numRuns: CASES, seed })) writeCase(sheet, text, values)
  }
  const fixed = workbook.addWorksheet('fixed')
  for (const expression of FIXED) writeCase(fixed, expression, { a: -2, b: 3, c: 0.5, u: [1, -2], v: [3, 4] })
  chapters.forEach(({ chapter }, i) => {
    const sheet = workbook.addWorksheet(`chapter ${i + 1}`)
    // A division by zero is an error to spreadsheets, an infinite number here.
    const usable = evaluatedChapter(chapter).filter((block) => block.isFinite() && nothingCancels(block))
    for (const block of fc.sample(usable, { numRuns: 8, seed })) writeBlock(sheet, block)
  })
  cells = await readCells(new Uint8Array(await workbook.xlsx.writeBuffer()))
})

// What spreadsheets read differently from mathematics, or could.
const FIXED = [
  '-a^2',
  '-b^2',
  '(-a)^3',
  '2^3^2',
  '(2^3)^2',
  'b^-a',
  'b^-a^2',
  'a^b',
  'a - -b',
  'a - (b - c)',
  'a/b/c',
  'a/(b/c)',
  '-(a + b)^2*c',
  '1e-7*a',
  '1.5e9*b',
  'round(2.5, 0) + round(0 - 2.5, 0)',
  'round(1.005, 2)',
  'round(a*c, 0)',
  'max(a, b, c) - min(a, b, c)',
  'sum(u .^ 2)',
  'sum(-u .* v)',
  'sum(abs(u) ./ v)',
  'sum(u)',
  '-u .^ 2',
  'positive_mean(u) + negative_mean(u)*10',
  'positive_mean(v) + negative_mean(v)',
  'student_t(c/10, b)',
  'student_t(0.01, b + 4)',
]

describe('the spreadsheet form, recalculated by LibreOffice', () => {
  it('is our value for random expressions with one value', () => {
    expect(cellsOf('scalars').length).toBe(CASES)
    expectConfirmed(cellsOf('scalars'))
  })

  it('is our value for random expressions with one value a row', () => {
    expect(cellsOf('columns').length).toBeGreaterThan(2 * CASES)
    expectConfirmed(cellsOf('columns'))
  })

  it('is our value where spreadsheets and mathematics part ways', () => {
    expect(cellsOf('fixed').length).toBeGreaterThanOrEqual(FIXED.length)
    expectConfirmed(cellsOf('fixed'))
  })

  it.each(chapters.map(({ chapter }, i) => [chapter.title, i] as const))(
    'is our value in the chapter “%s”',
    (_, i) => {
      const own = cellsOf(`chapter ${i + 1}`)
      expect(own.length).toBeGreaterThanOrEqual(8 * (chapters[i]?.chapter.steps.length ?? 1))
      expectConfirmed(own)
    },
  )
})
