import type { Grid } from '../../log/grid/grid.js'
import { fileOfLink } from '../../reports/workbook/file-link.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import { testNamed } from '../named-test.js'
import type { RerunTest } from '../report.js'
import { linksOfCells } from '../several/links-of-cells.js'
import { textAt } from '../several/sheet-content.js'
import { columnOf, FILES_HEAD, FILES_SHEET } from '../workbook/files-sheet.js'

/**
 * The tests of the rows of a re-run report, by the names that it gives their files, with what it says of their signatures, and the
 * files that are not given.
 */
export function filesNamed(
  grid: Grid,
  parts: Parts,
  given: readonly RerunTest[],
): {
  readonly tests: readonly RerunTest[]
  readonly signatures: readonly string[]
  readonly missing: readonly string[]
} {
  const sheet = grid.sheet(FILES_SHEET)
  const links = linksOfCells(parts, FILES_SHEET)
  const [fileColumn, plotColumn, dateColumn] = [columnOf('File'), columnOf('Plot'), columnOf('Date')]
  const signatureColumn = columnOf('Signature')
  const signatures: string[] = []
  const tests: RerunTest[] = []
  const missing: string[] = []
  for (let row = FILES_HEAD + 1; row <= (sheet?.rows ?? 0); row += 1) {
    const shown = textAt(sheet, row, fileColumn)
    if (shown === '') continue
    const part = / \(([^()]+)\)$/.exec(shown)?.[1]
    const file = fileOfLink(links.get(`${row}|${fileColumn}`) ?? '') || shown
    const named = testNamed(
      {
        file: part === undefined ? file : `${file} (${part})`,
        plot: textAt(sheet, row, plotColumn),
        date: textAt(sheet, row, dateColumn),
      },
      given,
    )
    if (named === undefined) missing.push(file)
    else {
      tests.push({ ...named, file })
      signatures.push(textAt(sheet, row, signatureColumn))
    }
  }
  return { tests, signatures, missing }
}
