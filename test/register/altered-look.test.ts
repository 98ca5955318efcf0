import { readLines } from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { beforeAll, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { asSavedByAnother } from '../rerun/support/hidden-changes'
import { PackageText } from '../rerun/support/package'
import { landmarks } from '../rerun/support/tamper/landmarks'

let whole: Uint8Array
beforeAll(async () => {
  whole = await writeSummaryWorkbook(inventedRecord(4))
})
const altered = (book: PackageText) => readLines(book.bytes, 'a.xlsx').lines[0]?.altered

it.each([
  [
    'a text made white',
    'cell styles, sheet Summary',
    (b: PackageText) => {
      const white = b.addTo('fonts', '<font><sz val="9"/><color rgb="FFFFFFFF"/><name val="Calibri"/></font>')
      return b.restyle('Summary', landmarks(b).figure.address, (xf) =>
        xf.replace(/fontId="\d+"/, `fontId="${white}"`),
      )
    },
  ],
  [
    'a text that sheet Check does not compare',
    'cell texts',
    (b: PackageText) => b.edit('xl/sharedStrings.xml', 'Airtightness test', 'Airtightness certificate'),
  ],
  [
    'an axis of the chart',
    'the chart',
    (b: PackageText) => b.edit('xl/charts/chart1.xml', /<c:max val="[^"]*"/, '<c:max val="9999"'),
  ],
  [
    'the stored verdict',
    'sheet Summary',
    (b: PackageText) => b.edit(landmarks(b).summary, '<v>MEETS</v>', '<v>MEETS.</v>'),
  ],
] as const)('a register marks a summary as altered by %s', (_, parts, change) => {
  const book = new PackageText(whole)
  change(book)
  expect(altered(book)).toBe(`the file was changed after issue (${parts})`)
})

it('does not mark one that was only scrolled, or that another program has saved as a whole', () => {
  expect(altered(new PackageText(whole))).toBeUndefined()
  const scrolled = new PackageText(whole)
  scrolled.edit(landmarks(scrolled).summary, '<sheetView ', '<sheetView topLeftCell="A20" ')
  expect(altered(scrolled)).toBeUndefined()
  expect(altered(asSavedByAnother(new PackageText(whole)))).toBeUndefined()
})
