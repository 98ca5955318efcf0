import ExcelJS from 'exceljs'
import { beforeAll, describe, expect, it } from 'vitest'
import { compareCached, type FormulaCell } from '../support/formula-cells'

/** A workbook with the given stored results: [formula, result that the file claims]. */
async function workbookWith(cells: readonly [string, number | string | boolean][]): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  const sheet = workbook.addWorksheet('Claims')
  sheet.getCell('A1').value = 7
  cells.forEach(([formula, result], index) => {
    sheet.getCell(index + 1, 2).value = { formula, result: result as number }
  })
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

// The true results are school arithmetic: 7 squared, 22/7, and so on.
const TRUE: [string, number | string | boolean][] = [
  ['A1*A1', 49],
  ['22/A1', 22 / 7],
  ['A1-A1', 0],
  ['"q = "&A1', 'q = 7'],
  ['A1>6', true],
  ['SUMPRODUCT(A1:A1,A1:A1)/1E6', 4.9e-5],
]
const POISONED: [string, number | string | boolean][] = [
  ['A1*A1', 50],
  ['22/A1', (22 / 7) * (1 + 1e-8)],
  ['A1-A1', 1e-15],
  ['"q = "&A1', 'q = 8'],
  ['A1>6', false],
  ['1/(A1-7)', 3],
]

describe('comparison of stored with recalculated results', () => {
  let disagreements: FormulaCell[]
  beforeAll(async () => {
    disagreements = await compareCached(await workbookWith([...TRUE, ...POISONED]))
  })

  it('confirms right results, and finds every one of the deliberately wrong ones', () => {
    const expected = POISONED.map((_, index) => `B${TRUE.length + index + 1}`)
    expect(disagreements.map(({ address }) => address)).toEqual(expected)
  })

  it('names sheet, cell, formula, the stored and the recalculated result', () => {
    expect(disagreements[0]).toEqual({
      sheet: 'Claims',
      address: 'B7',
      formula: 'A1*A1',
      cached: 50,
      recalculated: 49,
    })
    expect(disagreements.at(-1)?.recalculated).toBe('#DIV/0!')
  })

  it('refuses a workbook in which there is nothing to compare', async () => {
    await expect(compareCached(await workbookWith([]))).rejects.toThrow('no formula cells')
  })

  it('fails, not passes, for bytes that are no workbook', async () => {
    await expect(compareCached(new TextEncoder().encode('not a workbook'))).rejects.toThrow()
  })
})
