import type { Workbook } from 'exceljs'
import { heldText } from '../../contract/record/text-field.js'
import { once } from '../../engine/once.js'
import { addressOf, withSheet } from '../../log/grid/address.js'
import type { Grid } from '../../log/grid/grid.js'
import { addChartsTo } from '../../reports/workbook/chart/add-charts.js'
import type { ChartDescription } from '../../reports/workbook/chart/description.js'
import { fileOfLink } from '../../reports/workbook/file-link.js'
import { digestParts, type IssuedParts, savedAgain } from '../../reports/workbook/issued/issued-parts.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import { packReport } from '../../versions/several.js'
import { RECALCULATED_ZERO } from '../agreement.js'
import { cellLabel } from '../cell-label.js'
import { compareCell, compareSheets } from '../compare-sheets.js'
import { expectedCell, issuedContents } from '../expected-cell.js'
import { compareLooks } from '../look/compare-looks.js'
import { savedBy } from '../look/package.js'
import { strictParts } from '../look/strict-parts.js'
import { readLook, type WorkbookLook } from '../look/workbook-look.js'
import type { Difference } from '../report.js'
import type { MadeOfTests, PartOf } from './made-of-tests.js'

export interface ComparedWorkbook {
  readonly cells: number
  /** The program that saved it as a whole; absent where none did. */
  readonly savedAgain?: string
  readonly differences: readonly Difference[]
}

/** A file that is compared with one workbook after another: what is worked out from its parts is worked out once. */
export interface ComparedParts {
  /** Throws LogError, as the others do. */
  readonly parts: () => Parts
  readonly digests: () => IssuedParts
  readonly look: () => WorkbookLook
}

export function comparedParts(read: () => Parts): ComparedParts {
  const parts = once(read)
  return {
    parts,
    digests: once(() => digestParts(parts())),
    look: once(() => readLook(parts())),
  }
}

export interface WholeOptions {
  /** Sheets whose links lead to files: programs write the folders of those as they like. */
  readonly linked: readonly string[]
  /** Charts of the workbook made again, not yet in it. */
  readonly charts?: readonly ChartDescription[]
  /** What was found before; it is not listed twice. */
  readonly first?: readonly Difference[]
  /** Makes the parts of the workbook; left out: as the current version does. */
  readonly pack?: (workbook: Workbook) => Promise<Parts>
}

/** Every cell and everything visible of a workbook against the same one made again. */
export async function compareWhole(
  made: Workbook,
  grid: Grid,
  file: ComparedParts,
  { linked, charts = [], first = [], pack = packReport }: WholeOptions,
): Promise<ComparedWorkbook> {
  const madeParts = await pack(made)
  addChartsTo(madeParts, charts)
  const parts = file.parts()
  const [issued, now] = [digestParts(madeParts), file.digests()]
  const again = savedAgain(issued, now)
  const cells = compareSheets(grid, made.worksheets, new Map(), again ? RECALCULATED_ZERO : undefined)
  const looks = compareLooks(readLook(madeParts), file.look(), issuedContents(made), again)
  const found = [
    ...cells.differences,
    ...looks.filter(
      (one) => !(again && linked.some((name) => one.label === `sheet ${name}: links`) && sameFiles(one)),
    ),
  ]
  const further = notKnown(found, first)
  const others = again ? [] : strictParts(madeParts, parts, issued, now, [...first, ...further])
  return {
    cells: cells.cells,
    ...(again && { savedAgain: savedBy(parts) }),
    differences: [...first, ...further, ...others],
  }
}

const notKnown = (found: readonly Difference[], first: readonly Difference[]): Difference[] => {
  const known = new Set(first.map(({ cell }) => cell))
  return found.filter(({ cell }) => cell === undefined || !known.has(cell))
}

/**
 * How many differences `compareWhole` is certain to find: those of the cells, without those that another program's saving may explain.
 * A workbook need not be packed for it, which takes by far the most of a comparison.
 */
export function fewestDifferences(made: Workbook, grid: Grid, first: readonly Difference[]): number {
  const cells = compareSheets(grid, made.worksheets, new Map(), RECALCULATED_ZERO)
  return [...first, ...notKnown(cells.differences, first)].filter(isCertain).length
}

/** Texts that the file format cannot hold are written otherwise. */
const isCertain = ({ rounding, expected }: Difference): boolean =>
  !rounding && !(typeof expected === 'string' && heldText(expected) !== expected)

/** Whether links lead to files of the same names: the folders before them are written as each program likes. */
const sameFiles = ({ recorded, expected }: Difference): boolean => filesOf(recorded) === filesOf(expected)

const filesOf = (links: Difference['recorded']): string =>
  String(links)
    .split('; ')
    .map((link) => {
      const [cell = '', target = ''] = link.split(' → ')
      return `${cell} → ${(fileOfLink(target) ?? target).split(/[\\/]/).at(-1) ?? ''}`
    })
    .join('; ')

/** The cells of rows that are copied from tests, wherever the rows stand in the workbook made of those tests alone. */
export function compareCopied(
  made: Workbook,
  grid: Grid,
  { sheet: name, first, columns }: MadeOfTests['copied'],
  parts: readonly PartOf[],
): ComparedWorkbook {
  const [written, sheet] = [made.getWorksheet(name), grid.sheet(name)]
  if (!written || !sheet) return { cells: 0, differences: [] }
  const differences = parts.flatMap(({ row = 0 }, i) =>
    Array.from({ length: columns }, (_, column) => {
      const cell = written.findCell(first + i, column + 1)
      return compareCell(
        sheet.at(row - 1, column),
        cell && expectedCell(cell),
        withSheet(name, addressOf(row - 1, column)),
        undefined,
        () => cellLabel(written, first + i - 1, column),
      )
    }).flat(),
  )
  return { cells: parts.length * columns, differences }
}
