import type { Cell, CellValue, Workbook } from 'exceljs'
import { heldText } from '../../contract/record/text-field.js'
import { forEachCell } from './new-workbook.js'

/**
 * Makes every text of a workbook one that the file format can hold; a rule of the test names the fields concerned. An empty text is
 * not written: it would cut off a long one left of it.
 * @param isField - cells of fields of the record, where an empty text is what was logged
 */
export function holdTexts(workbook: Workbook, isField: (cell: Cell) => boolean = () => false): void {
  forEachCell(workbook, (cell) => {
    const held = cell.value === '' && !isField(cell) ? null : heldValue(cell)
    if (held !== undefined) cell.value = held
  })
  for (const key of ['creator', 'company', 'title', 'subject'] as const)
    if (workbook[key]) workbook[key] = heldText(workbook[key])
}

/** The value to put in a cell's place; undefined where it can stay. */
function heldValue(cell: Cell): CellValue | undefined {
  if (cell.isMerged && cell.master !== cell) return undefined
  const { value } = cell
  if (typeof value === 'string') {
    const held = heldText(value)
    return held === value ? undefined : held
  }
  if (value === null || typeof value !== 'object' || !('result' in value)) return undefined
  const { result } = value
  if (typeof result !== 'string') return undefined
  const held = heldText(result)
  return held === result ? undefined : ({ ...value, result: held } as CellValue)
}

/** `_x0041_` in a cell's text stands for a character (ECMA-376 part 1, ST_Xstring): where a text has it, its first sign is escaped. */
export const withStandIns = (path: string, text: string): string =>
  /^xl\/(sharedStrings|worksheets\/[^/]+)\.xml$/.test(path) && text.includes('_x')
    ? text.replace(/_(x[0-9A-Fa-f]{4}_)/g, '_x005F_$1')
    : text
