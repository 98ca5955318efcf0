import ExcelJS, { type Style, type Workbook } from 'exceljs'

const PROPERTIES = ['numFmt', 'font', 'alignment', 'border', 'fill', 'protection'] as const

/**
 * Lets cells of one look share one style object. exceljs writes a style out as XML once for each object to find out whether it has
 * it already, which took a quarter of the time of a workbook. Done last: to change a cell's look afterwards would change others.
 */
export function shareStyles(workbook: Workbook): void {
  const styles = new Map<string, Partial<Style>>()
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
  for (const sheet of workbook.worksheets)
    for (let at = 1; at <= sheet.rowCount; at += 1) {
      const row = sheet.findRow(at)
      for (let column = 1; row && column <= row.cellCount; column += 1) {
        const cell = row.findCell(column)
        if (!cell) continue
        // Without a number format of its own, a date gets one that other values do not get.
        const kind =
          cell.type === ExcelJS.ValueType.Date || cell.effectiveType === ExcelJS.ValueType.Date ? 'date' : ''
        const key = kind + PROPERTIES.map((property) => numberOf(cell.style[property])).join(' ')
        const shared = styles.get(key)
        if (shared) cell.style = shared
        else styles.set(key, cell.style)
      }
    }
}
