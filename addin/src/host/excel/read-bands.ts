import { type Cell, isDateFormat } from '@draughtbook/shared-calc/log'
import { type Area, areaAddress, cellAddress, joinReference } from '../address.js'
import type { OpenedSheet } from '../cell-sheet.js'
import type { ShownDate } from './date-system.js'

/** Rows of a sheet to read, and the sheet that takes their cells. */
export interface SheetBand {
  into: OpenedSheet
  area: Area
}

type ValueType = Excel.Range['valueTypes'][number][number]

/**
 * Reads bands of any sheets in one trip: values, formats, formulas, errors, what is hidden or struck through.
 * Resolves to the dates among them as Excel shows them.
 */
export async function readBands(
  context: Excel.RequestContext,
  wanted: readonly SheetBand[],
): Promise<ShownDate[]> {
  const loaded = wanted.map(({ into, area }) => {
    const range = context.workbook.worksheets.getItem(into.name).getRange(areaAddress(area))
    range.load('values,numberFormat,formulas,valueTypes,text')
    return {
      into,
      area,
      range,
      fonts: range.getCellProperties({ format: { font: { strikethrough: true } } }),
      rows: range.getRowProperties({ rowHidden: true }),
      columns: range.getColumnProperties({ columnHidden: true }),
    }
  })
  await context.sync()
  const dates: ShownDate[] = []
  for (const { into, area, range, fonts, rows, columns } of loaded) {
    range.values.forEach((row, y) => {
      row.forEach((value: unknown, x: number) => {
        const format = String(range.numberFormat[y]?.[x] ?? 'General')
        const cell = cellOf(value, range.valueTypes[y]?.[x], format, range.formulas[y]?.[x])
        if (!cell) return
        if (typeof value === 'number' && isDateFormat(cell.format))
          dates.push({
            serial: value,
            shown: String(range.text[y]?.[x] ?? ''),
            cell: joinReference(into.name, cellAddress(area.top + y, area.left + x)),
          })
        const struck = fonts.value[y]?.[x]?.format?.font?.strikethrough
        into.cells.push([area.top - 1 + y, area.left - 1 + x, struck ? { ...cell, struck: 'whole' } : cell])
      })
    })
    rows.value.forEach((row, y) => {
      if (row.rowHidden) into.hiddenRows.push(area.top - 1 + y)
    })
    columns.value.forEach((column, x) => {
      if (column.columnHidden) into.hiddenColumns.push(area.left - 1 + x)
    })
  }
  return dates
}

function cellOf(
  value: unknown,
  type: ValueType | undefined,
  format: string,
  formula: unknown,
): Cell | undefined {
  const kind =
    type === 'Error'
      ? 'error'
      : typeof value === 'number'
        ? 'number'
        : typeof value === 'boolean'
          ? 'boolean'
          : 'text'
  const hasFormula = typeof formula === 'string' && formula.startsWith('=')
  if (value === '' && !hasFormula) return undefined
  return {
    kind,
    value: value as Cell['value'],
    ...(format === 'General' ? {} : { format }),
    ...(hasFormula ? { formula: formula.slice(1) } : {}),
  }
}
