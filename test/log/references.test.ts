import { describe, expect, it } from 'vitest'
import type { Cell, Sheet } from '../../shared-calc/src/log/grid/grid'
import { withReferences } from '../../shared-calc/src/log/grid/references'
import { dep, FORM, HEADINGS, HOUSE, pres, read, titleOf, zeroRows } from './odd/house'
import { book, type Rows } from './support/book'

// Truth: what stands in the cells that are referred to.
const READINGS: Rows = [dep, pres].flatMap(
  (run): Rows => [titleOf(run), ...zeroRows(run), HEADINGS, ...run.readings, [null]],
)

/** A cover with the values, and a sheet of readings whose form only refers to them; no results are stored. */
const withForm = (formula: (row: number) => string) =>
  book(
    {
      Cover: FORM.map(([, value]) => [null, value ?? null]),
      Test: [...FORM.map(([label]) => [label as string, null]), [null], ...READINGS],
    },
    (workbook) => {
      const test = workbook.getWorksheet('Test')
      FORM.forEach((_, index) => {
        const cell = test?.getCell(index + 1, 2)
        if (cell) cell.value = { formula: formula(index + 1), date1904: false }
      })
    },
  )

describe('formulas that only refer to another cell, without stored results', () => {
  it.each([(row: number) => `Cover!B${row}`, (row: number) => `'Cover'!$B$${row}`])(
    'show what stands there, and say so',
    async (formula) => {
      const { asked, record, said } = read(await withForm(formula))
      expect(asked).toEqual([])
      expect(record?.building.volume_m3).toBe(HOUSE.volume_m3)
      expect(record?.building.name).toBe('Pear Tree Barn')
      expect(record?.test.date).toBe('2026-04-22')
      expect(record?.conditions.outdoorTemperature_C).toBe(HOUSE.outdoor_C)
      expect(said.join('\n')).toMatch(/only refers to .*Cover.*B3.*, and the file does not hold its result/)
    },
  )

  it('are followed no further than to a calculation, and not in a circle', async () => {
    for (const formula of [() => 'SUM(Cover!B1:B6)', (row: number) => `Test!B${row}`])
      expect(read(await withForm(formula)).asked).toContain('building.volume_m3')
  })

  it('are looked for in a sheet with fields that only it may read, as one of the page', () => {
    class Own implements Sheet {
      readonly name = 'Test'
      readonly hidden = false
      readonly rows = 2
      readonly columns = 1
      readonly #cells: Cell[] = [
        { kind: 'number', value: 412.6 },
        { kind: 'unstored', value: '', formula: 'A1' },
      ]
      readonly #hiddenRow = 1
      at(row: number) {
        return this.#cells[row]
      }
      isRowHidden(row: number) {
        return row === this.#hiddenRow
      }
      isColumnHidden() {
        return this.#hiddenRow < 0
      }
      mergeAt() {
        return undefined
      }
    }
    const own = new Own()
    const grid = {
      kind: 'workbook',
      fileName: 'log.xlsx',
      sheetNames: ['Test'],
      sheet: () => own,
      names: [],
      date1904: false,
      findings: [],
    } as const
    const sheet = withReferences(grid).sheet('Test')
    expect(sheet?.at(1, 0)?.value).toBe(412.6)
    expect([0, 1].map((row) => sheet?.isRowHidden(row))).toEqual([false, true])
    expect(sheet?.isColumnHidden(0)).toBe(false)
  })
})
