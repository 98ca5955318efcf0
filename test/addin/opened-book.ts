import type { OpenedBook } from '../../addin/src/host/cell-sheet.js'
import { parseAddress, parseBlock } from '../../shared-calc/src/log/grid/address.js'
import type { Cell } from '../../shared-calc/src/log/grid/grid.js'

type Given = string | number | boolean | { value: string | number | boolean; format?: string; text?: string }

/** A workbook as the page's worker would hand it over, from plain cells by address. */
export function openedBook(
  fileName: string,
  sheets: Record<string, Record<string, Given>>,
  names: Record<string, [sheet: string, block: string]> = {},
): OpenedBook {
  return {
    fileName,
    kind: 'workbook',
    date1904: false,
    findings: [],
    names: Object.entries(names).map(([name, [sheet, address]]) => ({
      name,
      sheet,
      block: required(parseBlock(address)),
    })),
    sheets: Object.entries(sheets).map(([name, cells]) => ({
      name,
      hidden: false,
      hiddenRows: [],
      hiddenColumns: [],
      merges: [],
      cells: Object.entries(cells).map(([address, given]) => {
        const { row, column } = required(parseAddress(address))
        return [row, column, cellOf(given)] as [number, number, Cell]
      }),
    })),
  }
}

function cellOf(given: Given): Cell {
  const { value, format } = typeof given === 'object' ? given : { value: given, format: undefined }
  const kind =
    typeof value === 'number'
      ? 'number'
      : typeof value === 'boolean'
        ? 'boolean'
        : value.startsWith('#')
          ? 'error'
          : 'text'
  return { kind, value, ...(format === undefined ? {} : { format }) }
}

function required<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('the test names no address')
  return value
}
