import { strToU8 } from 'fflate'
import type { PackageText } from './package'

const R = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const MS = 'http://schemas.microsoft.com/office'

/**
 * A workbook as the usual office program writes it when somebody has looked at it, changed the zoom and saved it; after [MS-XLSX] and
 * from memory of such files. Nothing of it is seen: versions, ids of revisions, extensions, settings of a printer, the order of
 * calculation, a label of confidentiality and what a document library adds.
 */
export function asOfficeSaves(book: PackageText): PackageText {
  const relate = (path: string, kind: string, target: string, type = `${R}/${kind}`) => {
    const id = `rId${500 + path.length + target.length}`
    book.edit(
      path,
      '</Relationships>',
      `<Relationship Id="${id}" Type="${type}" Target="${target}"/></Relationships>`,
    )
    return id
  }
  for (const path of Object.keys(book.parts))
    if (/^xl\/worksheets\/sheet\d+\.xml$/.test(path)) saveSheet(book, path)
  book.edit(
    'xl/workbook.xml',
    'mc:Ignorable="x15" xmlns:x15="http://schemas.microsoft.com/office/spreadsheetml/2010/11/main"',
    `mc:Ignorable="x15 xr xr6 xr10 xr2" xmlns:x15="${MS}/spreadsheetml/2010/11/main" xmlns:xr="${MS}/spreadsheetml/2014/revision" xmlns:xr6="${MS}/spreadsheetml/2016/revision6" xmlns:xr10="${MS}/spreadsheetml/2016/revision10" xmlns:xr2="${MS}/spreadsheetml/2015/revision2"`,
  )
  book.edit(
    'xl/workbook.xml',
    /<workbookPr ([^>]*)\/>/,
    (_, rest = '') =>
      `<workbookPr ${rest}/><mc:AlternateContent xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"><mc:Choice Requires="x15"><x15ac:absPath url="C:\\tests\\" xmlns:x15ac="${MS}/spreadsheetml/2010/11/ac"/></mc:Choice></mc:AlternateContent><xr:revisionPtr revIDLastSave="0" documentId="13_ncr:1_{0}" xr6:coauthVersionLast="47" xr6:coauthVersionMax="47" xr10:uidLastSave="{0}"/><bookViews><workbookView xWindow="-120" yWindow="-120" windowWidth="29040" windowHeight="15840" activeTab="1" xr2:uid="{0}"/></bookViews>`,
  )
  book.edit('xl/workbook.xml', /<calcPr [^>]*\/>/, '<calcPr calcId="191029"/>')
  book.edit(
    'xl/workbook.xml',
    '</workbook>',
    `<extLst><ext uri="{140A7094-0E35-4892-8432-C4D2E57EDEB5}" xmlns:x15="${MS}/spreadsheetml/2010/11/main"><x15:workbookPr chartTrackingRefBase="1"/></ext></extLst></workbook>`,
  )
  book.edit(
    'xl/styles.xml',
    '</styleSheet>',
    `<colors><mruColors><color rgb="FF1F4E5F"/></mruColors></colors><extLst><ext uri="{EB79DEF2-80B8-43e5-95BD-54CBDDF9020C}" xmlns:x14="${MS}/spreadsheetml/2009/9/main"><x14:slicerStyles defaultSlicerStyle="SlicerStyleLight1"/></ext></extLst></styleSheet>`,
  )
  const calculated = [...book.text(book.sheet('Check')).matchAll(/<c r="([A-Z]+\d+)"[^>]*><f>/g)]
  book.set(
    'xl/calcChain.xml',
    `<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${calculated.map(([, r]) => `<c r="${r}" i="5"/>`).join('')}</calcChain>`,
  )
  relate('xl/_rels/workbook.xml.rels', 'calcChain', 'calcChain.xml')
  saveChart(book)
  // What a document library and a label of confidentiality add.
  book.set(
    'customXml/item1.xml',
    '<FormTemplates xmlns="http://schemas.microsoft.com/sharepoint/v3/contenttype/forms"/>',
  )
  book.set(
    'customXml/itemProps1.xml',
    '<ds:datastoreItem ds:itemID="{0}" xmlns:ds="http://schemas.openxmlformats.org/officeDocument/2006/customXml"><ds:schemaRefs><ds:schemaRef ds:uri="http://schemas.microsoft.com/sharepoint/v3/contenttype/forms"/></ds:schemaRefs></ds:datastoreItem>',
  )
  book.set(
    'customXml/_rels/item1.xml.rels',
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${R}/customXmlProps" Target="itemProps1.xml"/></Relationships>`,
  )
  relate('xl/_rels/workbook.xml.rels', 'customXml', '../customXml/item1.xml')
  book.set(
    'docProps/custom.xml',
    '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/custom-properties" xmlns:vt="http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes"><property fmtid="{D5CDD505-2E9C-101B-9397-08002B2CF9AE}" pid="2" name="ContentTypeId"><vt:lpwstr>0x0101</vt:lpwstr></property><property fmtid="{D5CDD505-2E9C-101B-9397-08002B2CF9AE}" pid="3" name="MSIP_Label_0_Enabled"><vt:lpwstr>true</vt:lpwstr></property></Properties>',
  )
  relate('_rels/.rels', 'custom-properties', 'docProps/custom.xml')
  book.set('docMetadata/LabelInfo.xml', `<clbl:labelList xmlns:clbl="${MS}/2020/mipLabelMetadata"/>`)
  relate('_rels/.rels', '', 'docMetadata/LabelInfo.xml', `${MS}/2020/02/relationships/classificationlabels`)
  return book
}

function saveSheet(book: PackageText, path: string): void {
  const printer = `xl/printerSettings/printerSettings${path.match(/\d+/)?.[0]}.bin`
  book.parts[printer] = strToU8('the settings of a printer')
  const id = book.relate(path, 'printerSettings', `../${printer.slice(3)}`)
  book.edit(
    path,
    /mc:Ignorable="x14ac"/,
    `mc:Ignorable="x14ac xr xr2 xr3" xmlns:xr="${MS}/spreadsheetml/2014/revision" xmlns:xr2="${MS}/spreadsheetml/2015/revision2" xmlns:xr3="${MS}/spreadsheetml/2016/revision3" xr:uid="{0}"`,
  )
  book.edit(path, '<sheetView ', '<sheetView zoomScale="130" zoomScaleNormal="130" ')
  book.edit(path, /<pageSetup ([^>]*)\/>/, (_, rest = '') => `<pageSetup ${rest} r:id="${id}"/>`)
}

function saveChart(book: PackageText): void {
  const chart = 'xl/charts/chart1.xml'
  book.edit(
    chart,
    '<c:roundedCorners',
    `<c:date1904 val="0"/><c:lang val="en-GB"/><mc:AlternateContent xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"><mc:Choice Requires="c14" xmlns:c14="${MS}/drawing/2007/8/2/chart"><c14:style val="102"/></mc:Choice><mc:Fallback><c:style val="2"/></mc:Fallback></mc:AlternateContent><c:roundedCorners`,
  )
  book.edit(
    chart,
    /<\/c:ser>/g,
    `<c:extLst><c:ext uri="{C3380CC4-5D6E-409C-BE32-E72D297353CC}" xmlns:c16="${MS}/drawing/2014/chart"><c16:uniqueId val="{00000000-0000-0000-0000-000000000000}"/></c:ext></c:extLst></c:ser>`,
  )
  book.edit(
    chart,
    '</c:chartSpace>',
    '<c:printSettings><c:headerFooter/><c:pageMargins b="0.75" l="0.7" r="0.7" t="0.75" header="0.3" footer="0.3"/><c:pageSetup/></c:printSettings></c:chartSpace>',
  )
  book.set('xl/charts/style1.xml', `<cs:chartStyle xmlns:cs="${MS}/drawing/2012/chartStyle" id="201"/>`)
  book.set(
    'xl/charts/colors1.xml',
    `<cs:colorStyle xmlns:cs="${MS}/drawing/2012/chartStyle" meth="cycle" id="10"/>`,
  )
  book.set(
    'xl/charts/_rels/chart1.xml.rels',
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${MS}/2011/relationships/chartColorStyle" Target="colors1.xml"/><Relationship Id="rId2" Type="${MS}/2011/relationships/chartStyle" Target="style1.xml"/></Relationships>`,
  )
  book.edit(
    'xl/drawings/drawing1.xml',
    /<xdr:cNvPr ([^>]*)\/>/,
    (_, rest = '') =>
      `<xdr:cNvPr ${rest}><a:extLst><a:ext uri="{FF2B5EF4-FFF2-40B4-BE49-F238E27FC236}"><a16:creationId xmlns:a16="${MS}/drawing/2014/main" id="{0}"/></a:ext></a:extLst></xdr:cNvPr>`,
  )
}
