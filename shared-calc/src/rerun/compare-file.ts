import { strFromU8 } from 'fflate'
import { addressOf, withSheet } from '../log/grid/address.js'
import type { Grid } from '../log/grid/grid.js'
import { sheetParts } from '../reports/workbook/chart/package-parts.js'
import { ISSUED_PART } from '../reports/workbook/issued/add-issued-rows.js'
import { issuedRowsText } from '../reports/workbook/issued/canonical-part.js'
import { holdsIssuedRows } from '../reports/workbook/issued/issue.js'
import { digestParts, type IssuedParts, savedAgain } from '../reports/workbook/issued/issued-parts.js'
import type { Places } from '../reports/workbook/places.js'
import type { ReadSummary } from '../reports/workbook/read-summary.js'
import { RECORD } from '../reports/workbook/record-sheet.js'
import type { Parts } from '../reports/workbook/zip/parts.js'
import { RECALCULATED_ZERO } from './agreement.js'
import { compareSheets, type InputCells } from './compare-sheets.js'
import { issuedContents } from './expected-cell.js'
import type { IssuedFile } from './issued-file.js'
import { compareLooks } from './look/compare-looks.js'
import { strictParts } from './look/strict-parts.js'
import { readLook } from './look/workbook-look.js'
import type { Difference } from './report.js'

/** How an archived file compares with the file as issued. */
export interface ComparedFile {
  /** Every part is as issued, but for where the view is scrolled to and last digits of numbers that were worked out. */
  readonly asIssued: boolean
  /** Another program has saved it as a whole. */
  readonly savedAgain: boolean
  readonly cells: number
  readonly differences: readonly Difference[]
}

/** Compares the archived parts, and what their cells hold, with the file as issued. Throws LogError where a part is damaged. */
export function compareFile(
  issued: IssuedFile,
  grid: Grid,
  parts: Parts,
  { issuedParts, signature }: Pick<ReadSummary, 'issuedParts' | 'signature'>,
): ComparedFile {
  const digests = digestParts(parts)
  const again = savedAgain(issued.digests, digests)
  if (sameParts(issued.digests, digests) && sameRecordRows(issued, grid, parts))
    return { asIssued: true, savedAgain: false, cells: countCells(parts), differences: [] }
  const zero = again ? RECALCULATED_ZERO : undefined
  const cells = compareSheets(grid, issued.workbook.worksheets, inputCells(issued.places), zero)
  const looks = compareLooks(issued.look(), readLook(parts), issuedContents(issued.workbook), again)
  // Another engine may have worked numbers out to other last digits: its parts are others, and so is the list of their digests. Where
  // the file agrees with its own list, the list says nothing more.
  const agrees =
    issuedParts !== undefined &&
    sameParts(issuedParts, digests) &&
    holdsIssuedRows(parts, issuedParts, signature)
  const found = [...cells.differences.filter((one) => !(agrees && isDigestRow(one))), ...looks]
  const others = again ? [] : strictParts(issued.parts, parts, issued.digests, digests, found)
  const differences = [...found, ...others]
  const asIssued = agrees && !again && differences.every(({ rounding }) => rounding)
  return { asIssued, savedAgain: again, cells: cells.cells, differences }
}

const isDigestRow = ({ cell, label }: Difference): boolean =>
  cell?.startsWith(`${RECORD}!`) === true && label.startsWith(ISSUED_PART)

/** Whether two lists of parts are the same. */
export const sameParts = (one: IssuedParts, other: IssuedParts): boolean =>
  one.size === other.size && [...one].every(([path, digest]) => other.get(path) === digest)

/** The digests' own rows are left out of the digests, so they are compared for themselves. */
function sameRecordRows({ workbook, parts: issued }: IssuedFile, grid: Grid, now: Parts): boolean {
  const sheet = workbook.getWorksheet(RECORD)
  const rows = (parts: Parts) => {
    const bytes = parts.get(sheetParts(parts).get(RECORD) ?? '')
    return bytes && issuedRowsText(strFromU8(bytes))
  }
  return (
    sheet !== undefined &&
    rows(issued) === rows(now) &&
    compareSheets(grid, [sheet], new Map()).differences.length === 0
  )
}

/** Cells that hold something, by their stored values: parts that are as issued need no reading. */
export function countCells(parts: Parts): number {
  let count = 0
  for (const [path, bytes] of parts) {
    if (!/^xl\/worksheets\/[^/]+\.xml$/.test(path)) continue
    // `<v` and `<is` begin a cell's content.
    for (let at = 0; at < bytes.length - 2; at += 1)
      if (
        bytes[at] === 0x3c &&
        ((bytes[at + 1] === 0x76 && bytes[at + 2] === 0x3e) ||
          (bytes[at + 1] === 0x69 && bytes[at + 2] === 0x73 && bytes[at + 3] === 0x3e))
      )
        count += 1
  }
  return count
}

/** Cells that hold a field of the record as it was logged. */
function inputCells(places: Places): InputCells {
  return new Map(
    [...places.fields].map(([path, { sheet, row, column }]) => [
      withSheet(sheet, addressOf(row - 1, column - 1)),
      path,
    ]),
  )
}
