import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import { type HiddenChange, unseen } from './unseen'

const drawing = 'xl/drawings/drawing1.xml'
const workbook = 'xl/workbook.xml'

/** Print, what may be typed, links, calculation, record and properties. */
export function hiddenInSettings(book: PackageText): HiddenChange[] {
  const { summary, figure } = landmarks(book)
  return [
    // Print.
    {
      name: 'page numbers begin elsewhere',
      change: (b) => b.edit(summary, '<pageSetup ', '<pageSetup useFirstPageNumber="1" firstPageNumber="7" '),
    },
    {
      name: 'printed on several sheets of paper',
      change: (b) => b.edit(summary, 'fitToHeight="1"', 'fitToHeight="0" copies="2"'),
    },
    {
      name: 'print titles',
      change: (b) =>
        b.edit(
          workbook,
          /(<definedName name="_xlnm.Print_Titles"[^>]*>)[^<]*/,
          (_, open = '') => `${open}Working!$1:$60`,
        ),
    },
    // What may be typed, links, calculation.
    {
      name: 'a message that shows when a cell is chosen',
      change: (b) =>
        b.edit(
          summary,
          '<printOptions',
          '<dataValidations count="1"><dataValidation showInputMessage="1" sqref="A12" promptTitle="Result" prompt="withdrawn"/></dataValidations><printOptions',
        ),
    },
    {
      name: 'ranges anybody may change',
      change: (b) =>
        b.edit(
          b.sheet('Record'),
          '<printOptions',
          '<protectedRanges><protectedRange name="r" sqref="A1:B9"/></protectedRanges><printOptions',
        ),
    },
    {
      ...unseen,
      name: 'calculated in rounds',
      change: (b) => b.edit(workbook, '<calcPr ', '<calcPr iterate="1" '),
    },
    {
      ...unseen,
      name: 'not calculated when opened',
      change: (b) =>
        b.edit(workbook, '<calcPr ', '<calcPr calcCompleted="0" forceFullCalc="0" calcOnSave="0" '),
    },
    {
      name: 'another name for a formula',
      change: (b) =>
        b.edit(
          workbook,
          '</definedNames>',
          '<definedName name="LEFT_" hidden="1">Working!$C$9</definedName></definedNames>',
        ),
    },
    {
      name: 'a name of one sheet over that of the workbook',
      change: (b) =>
        b.edit(
          workbook,
          '</definedNames>',
          '<definedName name="air_change_rate_50" localSheetId="0">0.31</definedName></definedNames>',
        ),
    },
    {
      ...unseen,
      name: 'an order of calculation',
      change: (b) => {
        b.set(
          'xl/calcChain.xml',
          '<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="A12" i="1"/></calcChain>',
        )
        return b.edit(
          'xl/_rels/workbook.xml.rels',
          '</Relationships>',
          '<Relationship Id="rId97" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/calcChain" Target="calcChain.xml"/></Relationships>',
        )
      },
    },
    {
      name: 'data of its own',
      change: (b) => {
        b.set('customXml/item1.xml', '<data>n50 0.31</data>')
        return b.edit(
          'xl/_rels/workbook.xml.rels',
          '</Relationships>',
          '<Relationship Id="rId96" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../customXml/item1.xml"/></Relationships>',
        )
      },
    },
    {
      name: 'a sheet given another part',
      change: (b) => {
        b.set('xl/worksheets/other.xml', b.text(summary).replace(/<v>0\.\d+<\/v>/, '<v>0.31</v>'))
        return b.edit('xl/_rels/workbook.xml.rels', summary.replace('xl/', ''), 'worksheets/other.xml')
      },
    },
    {
      name: 'another workbook part',
      change: (b) => {
        b.set(
          'xl/book2.xml',
          b.text(workbook).replace('name="Report" state="visible"', 'name="Report" state="hidden"'),
        )
        b.set('xl/_rels/book2.xml.rels', b.text('xl/_rels/workbook.xml.rels'))
        return b.edit('_rels/.rels', 'xl/workbook.xml', 'xl/book2.xml')
      },
    },
    {
      name: 'the same row twice',
      change: (b) =>
        b.edit(
          summary,
          '</sheetData>',
          `<row r="${figure.row}"><c r="${figure.address}"><v>0.31</v></c></row></sheetData>`,
        ),
    },
    {
      name: 'the same cell twice',
      change: (b) =>
        b.edit(
          summary,
          new RegExp(`(<c r="${figure.address}"[^>]*>.*?</c>)`),
          (_, cell = '') => `${cell}<c r="${figure.address}"><v>0.31</v></c>`,
        ),
    },
    // Record.
    {
      name: 'rows of sheet Record in another order',
      change: (b) =>
        b.edit(
          b.sheet('Record'),
          /(<row r="(\d+)"[^>]*>(?:(?!<\/row>).)*issued part.*?<\/row>)(<row r="\d+"[^>]*>.*?<\/row>)/s,
          (_, one = '', _n = '', two = '') => two + one,
        ),
    },
    {
      name: 'two digests of parts swapped',
      change: (b) =>
        b.edit(
          b.sheet('Record'),
          /<t>([0-9a-f]{64}) (xl\/styles\.xml)<(.*?)<t>([0-9a-f]{64}) /s,
          (_, a = '', path = '', between = '', z = '') => `<t>${z} ${path}<${between}<t>${a} `,
        ),
    },
    {
      name: 'a digest of a part that is not there',
      change: (b) =>
        b.edit(
          b.sheet('Record'),
          /<t>[0-9a-f]{64} (xl\/theme\/theme1\.xml)</,
          () => `<t>${'0'.repeat(64)} xl/theme/theme2.xml<`,
        ),
    },
    {
      name: 'rows of digests with a look of their own',
      change: (b) =>
        b.edit(
          b.sheet('Record'),
          /(<c r="B\d+" )s="\d+"( t="inlineStr"><is><t>[0-9a-f]{64} )/,
          (_, a = '', z = '') => `${a}s="1"${z}`,
        ),
    },
    // Properties.
    {
      name: 'subject',
      change: (b) => b.edit('docProps/core.xml', /<dc:subject>[^<]*/, '<dc:subject>APPROVED'),
    },
    {
      name: 'keywords and state',
      change: (b) =>
        b.edit(
          'docProps/core.xml',
          '</cp:coreProperties>',
          '<cp:contentStatus>Final</cp:contentStatus></cp:coreProperties>',
        ),
    },
    {
      ...unseen,
      name: 'program',
      change: (b) => b.edit('docProps/app.xml', /<Application>[^<]*/, '<Application>Another program'),
    },
    {
      ...unseen,
      name: 'alternative text of the chart',
      change: (b) => b.edit(drawing, /descr="[^"]*"/, 'descr="another chart"'),
    },
  ]
}
