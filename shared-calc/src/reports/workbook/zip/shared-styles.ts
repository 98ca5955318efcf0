import ExcelJS, { type Style, type Workbook } from 'exceljs'
import { forEachCell } from '../new-workbook.js'

const PROPERTIES = ['numFmt', 'font', 'alignment', 'border', 'fill', 'protection'] as const

/**
 * Lets cells of one look share one style object. exceljs writes a style out as XML once for each object to find out whether it has
 * it already, which took a quarter of the time of a workbook. Done last: to change a cell's look afterwards would change others.
 */
export function shareStyles(workbook: Workbook): void {
  const dates = new Looks()
  const others = new Looks()
  const known = new WeakMap<object, number>()
  const numbers = new Map<string, number>()
  const numberOf = (part: object | string | undefined): number => {
    if (part === undefined) return 0
    const had = typeof part === 'object' ? known.get(part) : undefined
    if (had !== undefined) return had
    const text = JSON.stringify(part)
    const number = numbers.get(text) ?? numbers.size + 1
    numbers.set(text, number)
    if (typeof part === 'object') known.set(part, number)
    return number
  }
  forEachCell(workbook, (cell) => {
    // Without a number format of its own, a date gets one that other values do not get.
    const isDate = cell.type === ExcelJS.ValueType.Date || cell.effectiveType === ExcelJS.ValueType.Date
    let looks = isDate ? dates : others
    for (const property of PROPERTIES) looks = looks.with(numberOf(cell.style[property]))
    if (looks.style) cell.style = looks.style
    else looks.style = cell.style
  })
}

/** Looks that are alike in the properties so far, by the number of the next. */
class Looks {
  style: Partial<Style> | undefined
  private readonly following: (Looks | undefined)[] = []

  with(number: number): Looks {
    const had = this.following[number]
    if (had) return had
    const looks = new Looks()
    this.following[number] = looks
    return looks
  }
}
