import type { PackageText } from '../package'
import type { Marks, Tampering } from './landmarks'

/** Rows, columns, merges, sheets. */
export function sizes({ summary, verdict, figure }: Marks): Tampering[] {
  const row = (number: number, attributes: string) => (b: PackageText) =>
    b.edit(
      summary,
      new RegExp(`<row r="${number}"([^>]*)>`),
      (_, rest = '') =>
        `<row r="${number}"${rest.replace(/ (ht|customHeight|hidden)="[^"]*"/g, '')} ${attributes}>`,
    )
  const columns = (change: string) => (b: PackageText) =>
    b.edit(summary, /<col min="1" max="1"[^>]*\/>/, change)
  const merge = (ref: string) => (b: PackageText) =>
    b.edit(summary, /(<mergeCells[^>]*>)/, (_, open = '') => `${open}<mergeCell ref="${ref}"/>`)
  return [
    { name: 'row 1 point high', change: row(verdict.row, 'ht="1" customHeight="1"') },
    { name: 'row 6 points high', change: row(figure.row, 'ht="6" customHeight="1"') },
    { name: 'row hidden', change: row(figure.row, 'hidden="1"') },
    {
      name: 'row of 409 points pushes the rest off the page',
      change: row(figure.row, 'ht="409" customHeight="1"'),
    },
    { name: 'column 0.1 wide', change: columns('<col min="1" max="1" width="0.1" customWidth="1"/>') },
    { name: 'column 5 wide', change: columns('<col min="1" max="1" width="5" customWidth="1"/>') },
    {
      name: 'column hidden',
      change: columns('<col min="1" max="1" width="41" customWidth="1" hidden="1"/>'),
    },
    { name: 'column 250 wide', change: columns('<col min="1" max="1" width="250" customWidth="1"/>') },
    {
      name: 'rows hidden unless stated',
      change: (b) => b.edit(summary, '<sheetFormatPr ', '<sheetFormatPr zeroHeight="1" '),
    },
    { name: 'merge that hides a figure', change: (b) => merge(`A${figure.row + 8}:F${figure.row + 9}`)(b) },
    { name: 'a merge undone', change: (b) => b.edit(summary, /<mergeCell ref="[^"]*"\/>/, '') },
    { name: 'all merges undone', change: (b) => b.edit(summary, /<mergeCells.*?<\/mergeCells>/s, '') },
    ...['Readings', 'Working', 'Check', 'Record'].flatMap((name) =>
      ['hidden', 'veryHidden'].map((state) => ({
        name: `sheet ${name} ${state}`,
        change: (b: PackageText) =>
          b.edit(
            'xl/workbook.xml',
            new RegExp(`(name="${name}") state="visible"`),
            (_, before = '') => `${before} state="${state}"`,
          ),
      })),
    ),
    {
      name: 'order of the sheets',
      change: (b) =>
        b.edit(
          'xl/workbook.xml',
          /<sheets>(<sheet [^>]*\/>)(<sheet [^>]*\/>)/,
          (_, first = '', second = '') => `<sheets>${second}${first}`,
        ),
    },
    {
      name: 'a sheet renamed',
      change: (b) => b.edit('xl/workbook.xml', 'name="Check"', 'name="Check2"'),
    },
    {
      name: 'a sheet added',
      change: (b) => {
        b.set(
          'xl/worksheets/sheet9.xml',
          '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData></worksheet>',
        )
        b.edit(
          'xl/_rels/workbook.xml.rels',
          '</Relationships>',
          '<Relationship Id="rId99" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet9.xml"/></Relationships>',
        )
        return b.edit(
          'xl/workbook.xml',
          '</sheets>',
          '<sheet sheetId="9" name="Corrected summary" r:id="rId99"/></sheets>',
        )
      },
    },
    {
      name: 'a sheet removed',
      change: (b) => b.edit('xl/workbook.xml', /<sheet [^>]*name="Check"[^>]*\/>/, ''),
    },
  ]
}
