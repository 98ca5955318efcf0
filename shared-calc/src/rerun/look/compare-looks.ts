import type { Difference } from '../report.js'
import type { IssuedContents } from './compare-cell-looks.js'
import { compareSheetLooks } from './compare-sheet-looks.js'
import { seen, settingDifferences } from './seen-difference.js'
import type { WorkbookLook } from './workbook-look.js'

/** Everything seen of a workbook, beside the contents of its cells, that is not as issued. Missing sheets are found with the cells. */
export function compareLooks(
  issued: WorkbookLook,
  now: WorkbookLook,
  contents: IssuedContents,
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
      return other ? compareSheetLooks(sheet, other, contents) : []
    }),
    ...settingDifferences('name', '', undefined, issued.names, now.names),
    ...settingDifferences('workbook', 'workbook: ', undefined, issued.settings, now.settings),
    ...settingDifferences('workbook', 'file property, ', undefined, issued.properties, now.properties),
  ]
}
