import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import type { HiddenChange } from './unseen'

const workbook = 'xl/workbook.xml'
const rels = 'xl/_rels/workbook.xml.rels'
const types = '[Content_Types].xml'
const R = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'

/** Views, pages, texts of cells, sheets and what may be typed. */
export function hiddenInViews(book: PackageText): HiddenChange[] {
  const { summary, figure } = landmarks(book)
  const other = (b: PackageText) => b.text(summary).replaceAll('<v>MEETS', '<v>MISSES')
  return [
    {
      name: 'two views of a sheet, the second with formulas',
      change: (b) =>
        b
          .edit(
            summary,
            /<sheetViews>(.*?)<\/sheetViews>/s,
            (_, v = '') => `<sheetViews>${v}<sheetView workbookViewId="1" showFormulas="1"/></sheetViews>`,
          )
          .edit(
            workbook,
            '<sheets>',
            '<bookViews><workbookView visibility="hidden"/><workbookView/></bookViews><sheets>',
          ),
    },
    {
      name: 'sheet zoomed to nothing',
      change: (b) => b.edit(summary, '<sheetView ', '<sheetView zoomScale="0" zoomScaleNormal="1" '),
    },
    {
      name: 'columns without stated width by base',
      change: (b) =>
        b.edit(b.sheet('Working'), '<sheetFormatPr ', '<sheetFormatPr baseColWidth="0" defaultColWidth="0" '),
    },
    {
      name: 'footer of a size that covers the page',
      change: (b) => b.edit(summary, '<oddFooter>&amp;L&amp;8', '<oddFooter>&amp;L&amp;200'),
    },
    {
      name: 'footer in white',
      change: (b) => b.edit(summary, '<oddFooter>&amp;L', '<oddFooter>&amp;L&amp;KFFFFFF'),
    },
    {
      name: 'several pages pressed onto one',
      change: (b) => b.edit(b.sheet('Working'), /fitToHeight="\d+"/, 'fitToHeight="1"'),
    },
    {
      name: 'page cut into many',
      change: (b) => b.edit(summary, 'fitToWidth="1" fitToHeight="1"', 'fitToWidth="9" fitToHeight="9"'),
    },
    {
      name: 'errors printed as blanks',
      unseen: true,
      change: (b) => b.edit(summary, '<pageSetup ', '<pageSetup errors="blank" '),
    },
    {
      name: 'spaces put before a text',
      change: (b) =>
        b.edit(
          'xl/sharedStrings.xml',
          /<t([^>]*)>Method: /,
          `<t xml:space="preserve">${' '.repeat(300)}Method: `,
        ),
    },
    {
      name: 'line breaks put before a text',
      change: (b) =>
        b.edit(
          'xl/sharedStrings.xml',
          /<t([^>]*)>Method: /,
          `<t xml:space="preserve">${'\n'.repeat(12)}Method: `,
        ),
    },
    {
      name: 'a letter that looks alike',
      change: (b) => b.edit('xl/sharedStrings.xml', 'Method: ', 'Mеthod: '),
    },
    {
      name: 'a sign of no width in a text',
      change: (b) => b.edit('xl/sharedStrings.xml', 'Method: ', 'Me\u200bthod: '),
    },
    {
      name: 'a sign that turns the text round',
      change: (b) => b.edit('xl/sharedStrings.xml', 'Method: ', '\u202eMethod: '),
    },
    {
      name: 'a sheet of the same name in other letters',
      change: (b) => {
        b.set('xl/worksheets/sheet9.xml', other(b))
        b.edit(
          rels,
          '</Relationships>',
          `<Relationship Id="rId99" Type="${R}/worksheet" Target="worksheets/sheet9.xml"/></Relationships>`,
        )
        return b.edit(workbook, '</sheets>', '<sheet sheetId="9" name="SUMMARY" r:id="rId99"/></sheets>')
      },
    },
    {
      name: 'a chart sheet',
      change: (b) => {
        b.set(
          'xl/chartsheets/sheet1.xml',
          '<chartsheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"/>',
        )
        b.edit(
          rels,
          '</Relationships>',
          `<Relationship Id="rId99" Type="${R}/chartsheet" Target="chartsheets/sheet1.xml"/></Relationships>`,
        )
        return b.edit(workbook, '<sheets>', '<sheets><sheet sheetId="9" name="Result" r:id="rId99"/>')
      },
    },
    {
      name: 'a sheet hidden so that only a program can show it',
      change: (b) => b.edit(workbook, /(name="Check" state=")visible/, (_, o = '') => `${o}veryHidden`),
    },
    {
      name: 'sheets protected by a password',
      unseen: true,
      change: (b) =>
        b.edit(
          workbook,
          '<sheets>',
          '<workbookProtection workbookPassword="CC1A" lockStructure="1"/><sheets>',
        ),
    },
    {
      name: 'figures of a sheet protected and formulas hidden',
      change: (b) =>
        b.edit(summary, '</sheetData>', '</sheetData><sheetProtection sheet="1" selectLockedCells="1"/>'),
    },
    {
      name: 'a message on a mistake when typing',
      change: (b) =>
        b.edit(
          summary,
          '<printOptions',
          `<dataValidations count="1"><dataValidation type="custom" errorStyle="information" showErrorMessage="1" errorTitle="Approved" error="Certified" sqref="A1"><formula1>FALSE</formula1></dataValidation></dataValidations><printOptions`,
        ),
    },
    {
      name: 'a tip on a link',
      change: (b) => {
        const id = b.relate(summary, 'hyperlink', 'https://example.invalid/', true)
        return b.edit(
          summary,
          '<printOptions',
          `<hyperlinks><hyperlink ref="A12" r:id="${id}" tooltip="MISSES"/></hyperlinks><printOptions`,
        )
      },
    },
    {
      name: 'marks of doubt switched off',
      unseen: true,
      change: (b) =>
        b.edit(
          summary,
          '<drawing ',
          `<ignoredErrors><ignoredError sqref="A1:F99" formula="1" unlockedFormula="1"/></ignoredErrors><drawing `,
        ),
    },
    {
      name: 'a stored trial of other inputs',
      unseen: true,
      change: (b) =>
        b.edit(
          summary,
          '</sheetData>',
          '</sheetData><scenarios><scenario name="s" count="1"><inputCells r="A1" val="1"/></scenario></scenarios>',
        ),
    },
    {
      name: 'a shared view with rows hidden',
      unseen: true,
      change: (b) =>
        b.edit(
          summary,
          '<printOptions',
          '<customSheetViews><customSheetView guid="{A0000000-0000-0000-0000-000000000001}" hiddenRows="1"/></customSheetViews><printOptions',
        ),
    },
    {
      name: 'a picture in place of a value',
      change: (b) => {
        b.set(
          'xl/richData/rdrichvalue.xml',
          '<rvData xmlns="http://schemas.microsoft.com/office/spreadsheetml/2017/richdata"/>',
        )
        b.edit(
          rels,
          '</Relationships>',
          '<Relationship Id="rId94" Type="http://schemas.microsoft.com/office/2017/06/relationships/rdRichValue" Target="richData/rdrichvalue.xml"/></Relationships>',
        )
        return b.edit(summary, new RegExp(`<c r="${figure.address}"`), `<c r="${figure.address}" vm="1"`)
      },
    },
    {
      name: 'colours of the tabs',
      unseen: true,
      change: (b) => b.edit(summary, '<sheetPr>', '<sheetPr><tabColor rgb="FF8B0000"/>'),
    },
    {
      name: 'a table with a style over figures',
      change: (b) => {
        b.set(
          'xl/tables/table1.xml',
          '<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="T" displayName="T" ref="A20:F25"/>',
        )
        const id = b.relate(summary, 'table', '../tables/table1.xml')
        return b.edit(
          summary,
          '</worksheet>',
          `<tableParts count="1"><tablePart r:id="${id}"/></tableParts></worksheet>`,
        )
      },
    },
    {
      name: 'a timeline slicer in an extension',
      unseen: true,
      change: (b) =>
        b.edit(
          summary,
          '</worksheet>',
          '<extLst><ext uri="{A8765BA9-456A-4DAB-B4F3-ACF838C121DE}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:slicerList/></ext></extLst></worksheet>',
        ),
    },
    {
      name: 'rules of conditions in an extension, with their own look',
      change: (b) =>
        b.edit(
          summary,
          '</worksheet>',
          `<extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main" xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:conditionalFormattings><x14:conditionalFormatting><x14:cfRule type="expression" priority="1" id="{A}"><xm:f>TRUE</xm:f><x14:dxf><font><color rgb="FFFFFFFF"/></font></x14:dxf></x14:cfRule><xm:sqref>A12</xm:sqref></x14:conditionalFormatting></x14:conditionalFormattings></ext></extLst></worksheet>`,
        ),
    },
    {
      name: 'parts listed as of another kind',
      change: (b) =>
        b.edit(
          types,
          /(PartName="\/xl\/worksheets\/sheet1.xml" ContentType=")[^"]*/,
          (_, o = '') => `${o}application/vnd.openxmlformats-officedocument.spreadsheetml.dialogsheet+xml`,
        ),
    },
    {
      name: 'opened as a program with macros',
      change: (b) => b.edit(types, 'spreadsheetml.sheet.main+xml', 'template.main+xml'),
    },
  ]
}
