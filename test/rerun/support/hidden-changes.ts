import type { PackageText } from './package'
import { hiddenInCells } from './tamper/hidden-in-cells'
import { hiddenInSettings } from './tamper/hidden-in-settings'
import { sizesAndLabels } from './tamper/sizes-and-labels'
import { statedOtherwise } from './tamper/stated-otherwise'
import type { HiddenChange } from './tamper/unseen'

export type { HiddenChange }

/** Changes that show on the screen or on paper, each made where a file can hold it without it being noticed at once. */
export const hiddenChanges = (book: PackageText): HiddenChange[] => [
  ...hiddenInCells(book),
  ...hiddenInSettings(book),
  ...sizesAndLabels(book),
  ...statedOtherwise(book),
]

/** As if another program had saved the file: no sheet, style or workbook part begins as it was issued. */
export function asSavedByAnother(book: PackageText): PackageText {
  for (const path of Object.keys(book.parts))
    if (/^xl\/(worksheets\/[^/]+|styles|workbook|book2)\.xml$/.test(path))
      book.edit(
        path,
        /<(worksheet|styleSheet|workbook) /,
        (_, name = '') => `<${name} xmlns:saved="urn:saved" `,
      )
  return book
}
