import type { Workbook } from 'exceljs'
import { addressOf, withSheet } from '../../log/grid/address.js'
import type { Grid } from '../../log/grid/grid.js'
import { expectedCell } from '../expected-cell.js'
import type { Difference } from '../report.js'
import type { ComparedWorkbook } from './compare-workbook.js'
import type { MadeOfTests, PartOf } from './made-of-tests.js'

/**
 * The figures that a report of an earlier calculation version copied from its tests. Its sheets were laid out otherwise, so each number
 * of a test's row must be one of those that the row made again of that test holds, in whatever column.
 */
export function compareEarlier(
  made: Workbook,
  grid: Grid,
  { sheet: name, first, columns }: MadeOfTests['copied'],
  parts: readonly PartOf[],
): ComparedWorkbook {
  const [written, sheet] = [made.getWorksheet(name), grid.sheet(name)]
  let cells = 0
  const differences = parts.flatMap(({ file, row = 0 }, i): Difference[] => {
    const known = Array.from({ length: columns }, (_, column) => {
      const cell = written?.findCell(first + i, column + 1)
      return cell && expectedCell(cell)?.value
    }).filter((value) => typeof value === 'number')
    return Array.from({ length: columns }, (_, column): Difference | undefined => {
      const recorded = sheet?.at(row - 1, column)?.value
      if (typeof recorded !== 'number') return undefined
      cells += 1
      if (known.some((value) => isSame(value, recorded))) return undefined
      return {
        kind: 'cell',
        label: `figure of ${file}`,
        cell: withSheet(name, addressOf(row - 1, column)),
        recorded,
        expected: 'no figure of this test',
        rounding: false,
      }
    }).filter((one) => one !== undefined)
  })
  return { cells, differences }
}

const isSame = (one: number, other: number): boolean =>
  Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
