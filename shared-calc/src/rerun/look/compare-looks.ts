import type { Difference } from '../report.js'
import type { IssuedContents } from './compare-cell-looks.js'
import { compareSheetLooks } from './compare-sheet-looks.js'
import { seen, settingDifferences } from './seen-difference.js'
import type { SheetLook } from './sheet-look.js'
import type { WorkbookLook } from './workbook-look.js'

/**
 * Everything seen of a workbook, beside the contents of its cells, that is not as issued. Missing sheets are found with the cells.
 * @param again - whether another program has saved it as a whole
 */
export function compareLooks(
  issued: WorkbookLook,
  now: WorkbookLook,
  contents: IssuedContents,
  again: boolean,
): Difference[] {
  const found = new Map(now.sheets.map((sheet) => [sheet.name, sheet]))
  const order = (look: WorkbookLook, other: WorkbookLook) =>
    look.sheets
      .map(({ name }) => name)
      .filter((name) => other.sheets.some((one) => one.name === name))
      .join(', ')
  const [a, b] = [order(issued, now), order(now, issued)]
  return [
    ...now.sheets
      .filter(({ name }) => !issued.sheets.some((sheet) => sheet.name === name))
      .map(({ name }) => seen('sheet', `sheet ${name} was added`, name, null, name)),
    ...(a === b ? [] : [seen('sheet', 'order of the sheets', undefined, a, b)]),
    ...issued.sheets.flatMap((sheet) => {
      const other = found.get(sheet.name)
      return other ? compareSheetLooks(sheet, other, contents, again) : []
    }),
    ...gridLines(issued, found),
    ...settingDifferences('name', '', undefined, issued.names, now.names),
    ...settingDifferences('workbook', 'workbook: ', undefined, issued.settings, now.settings),
    ...settingDifferences('workbook', 'file property, ', undefined, issued.properties, now.properties),
  ]
}

/** Lines between the cells. Some programs show those of every sheet when they save a file. */
function gridLines(issued: WorkbookLook, found: ReadonlyMap<string, SheetLook>): Difference[] {
  const pairs = issued.sheets.flatMap((sheet) => {
    const now = found.get(sheet.name)
    return now ? [{ name: sheet.name, issued: sheet.gridLines, now: now.gridLines }] : []
  })
  if (pairs.every(({ now }) => now)) return []
  return pairs
    .filter((one) => one.issued !== one.now)
    .map(({ name, ...one }) =>
      seen('sheet', `sheet ${name}: lines between the cells`, name, yes(one.issued), yes(one.now)),
    )
}

const yes = (shown: boolean): string => (shown ? 'shown' : 'not shown')
