import type { PackageText } from './package'

/** One way to falsify a summary; it changes the package it is given. */
export interface Tampering {
  readonly name: string
  readonly change: (book: PackageText) => unknown
}

/** Cells to tamper with, found by what they hold: the pages may be laid out anew. */
export function landmarks(book: PackageText) {
  const summary = book.sheet('Summary')
  const xml = book.text(summary)
  const formulas = [...xml.matchAll(/<c r="([A-Z]+)(\d+)"[^>]*><f>([^<]*)<\/f><v>([^<]*)<\/v><\/c>/g)].map(
    ([, column = '', row = '', formula = '', value = '']) => ({
      address: column + row,
      column,
      row: Number(row),
      formula,
      value,
    }),
  )
  const verdict = formulas.find(({ value }) => value === 'MEETS' || value === 'MISSES')
  const figure = formulas.find(({ value }) => /^0\.\d{6,}$/.test(value))
  if (!verdict || !figure) throw new Error('the summary shows no verdict or no figure')
  const reading = /<c r="([A-Z]+\d+)"[^>]*><v>(-?[56]\d\.\d)<\/v><\/c>/.exec(
    book.text(book.sheet('Readings')),
  )
  if (!reading) throw new Error('no reading')
  return {
    summary,
    verdict,
    figure,
    formulas,
    reading: { address: reading[1] ?? '', value: reading[2] ?? '' },
  }
}

type Marks = ReturnType<typeof landmarks>

const font = (xml: string) => (book: PackageText) =>
  book.addTo('fonts', `<font>${xml}<name val="Calibri"/></font>`)
const withFont = (index: number) => (xf: string) => xf.replace(/fontId="\d+"/, `fontId="${index}"`)
const withFill = (index: number) => (xf: string) => xf.replace(/fillId="\d+"/, `fillId="${index}"`)
const withFormat = (id: number) => (xf: string) =>
  xf
    .replace(/ applyNumberFormat="\d"/, '')
    .replace(/numFmtId="\d+"/, `numFmtId="${id}" applyNumberFormat="1"`)
const withAlignment = (attributes: string) => (xf: string) => {
  const bare = xf.replace(/<alignment[^>]*\/>/, '')
  return bare.endsWith('/>')
    ? bare.replace(/\/>$/, ` applyAlignment="1"><alignment ${attributes}/></xf>`)
    : bare.replace('</xf>', `<alignment ${attributes}/></xf>`)
}
const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;')

/** Looks of a cell: each hides or falsifies what is read in it. */
function looks({ verdict, figure }: Marks): Tampering[] {
  const cells = { verdict: verdict.address, figure: figure.address }
  return Object.entries(cells).flatMap(([what, address]) => [
    {
      name: `white text: ${what}`,
      change: (b: PackageText) =>
        b.restyle('Summary', address, withFont(font('<sz val="11"/><color rgb="FFFFFFFF"/>')(b))),
    },
    {
      name: `text in the theme's background colour: ${what}`,
      change: (b: PackageText) =>
        b.restyle('Summary', address, withFont(font('<sz val="11"/><color theme="0"/>')(b))),
    },
    {
      name: `text 1 point high: ${what}`,
      change: (b: PackageText) =>
        b.restyle('Summary', address, withFont(font('<sz val="1"/><color rgb="FF1F2933"/>')(b))),
    },
    {
      name: `struck through: ${what}`,
      change: (b: PackageText) =>
        b.restyle('Summary', address, withFont(font('<strike/><sz val="10"/><color rgb="FF1F2933"/>')(b))),
    },
    {
      name: `letters as pictures: ${what}`,
      change: (b: PackageText) => {
        const index = b.addTo(
          'fonts',
          '<font><sz val="10"/><color rgb="FF1F2933"/><name val="Wingdings"/></font>',
        )
        return b.restyle('Summary', address, withFont(index))
      },
    },
    {
      name: `another background: ${what}`,
      change: (b: PackageText) => {
        const fill = '<fill><patternFill patternType="solid"><fgColor rgb="FFDDF3E4"/></patternFill></fill>'
        const index = b.addTo('fills', fill.replace('DDF3E4', what === 'verdict' ? 'AA2222' : 'DDF3E4'))
        return b.restyle('Summary', address, withFill(index))
      },
    },
    {
      name: `turned text: ${what}`,
      change: (b: PackageText) => b.restyle('Summary', address, withAlignment('textRotation="90"')),
    },
    {
      name: `shrunk to fit: ${what}`,
      change: (b: PackageText) => b.restyle('Summary', address, withAlignment('shrinkToFit="1"')),
    },
    {
      name: `indent of 200: ${what}`,
      change: (b: PackageText) =>
        b.restyle('Summary', address, withAlignment('horizontal="left" indent="200"')),
    },
    ...[
      ['nothing shown', ';;;'],
      ['another figure shown', '"0.29"'],
      ['text as another verdict', '0.00;0.00;0.00;"MEETS"'],
      ['less digits', '0'],
      ['scaled by a thousand', '0.00,'],
      ['as a percentage', '0%'],
      ['a digit put before', '"0.1"0'],
    ].map(([how = '', code = '']) => ({
      name: `number format, ${how}: ${what}`,
      change: (b: PackageText) => {
        b.addTo('numFmts', `<numFmt numFmtId="399" formatCode="${escaped(code)}"/>`)
        return b.restyle('Summary', address, withFormat(399))
      },
    })),
  ])
}

/** Rows, columns, merges, sheets. */
function sizes({ summary, verdict, figure }: Marks): Tampering[] {
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

const RULE = /<cfRule type="expression" dxfId="(\d+)" priority="(\d+)"><formula>([^<]*)<\/formula><\/cfRule>/

/** Conditional formats. */
function conditions({ summary, verdict, figure }: Marks): Tampering[] {
  const add = (sqref: string, rule: string) => (b: PackageText) =>
    b.edit(
      summary,
      /(<conditionalFormatting)/,
      (_, open = '') => `<conditionalFormatting sqref="${sqref}">${rule}</conditionalFormatting>${open}`,
    )
  const dxf = (b: PackageText, xml: string) => {
    const count = (b.text('xl/styles.xml').match(/<dxf>/g) ?? []).length
    b.edit('xl/styles.xml', '</dxfs>', `<dxf>${xml}</dxf></dxfs>`)
    return count
  }
  return [
    {
      name: 'conditional formats removed from Summary',
      change: (b) => b.edit(summary, /<conditionalFormatting.*<\/conditionalFormatting>/s, ''),
    },
    {
      name: 'conditional formats removed from Check',
      change: (b) => b.edit(b.sheet('Check'), /<conditionalFormatting.*<\/conditionalFormatting>/s, ''),
    },
    {
      name: 'condition turned round',
      change: (b) => b.edit(summary, RULE, (all) => all.replace('&quot;MEETS&quot;', '&quot;MISSES&quot;')),
    },
    {
      name: 'condition that never holds',
      change: (b) => b.edit(summary, RULE, (all) => all.replace(/<formula>[^<]*/, '<formula>FALSE')),
    },
    {
      name: 'condition with another look',
      change: (b) => b.edit(summary, RULE, (all) => all.replace(/dxfId="0"/, 'dxfId="1"')),
    },
    {
      name: 'condition for another area',
      change: (b) =>
        b.edit(summary, /(<conditionalFormatting sqref=")[^"]*"/, (_, open = '') => `${open}H1:H2"`),
    },
    {
      name: 'colours of the conditions swapped',
      change: (b) =>
        b.edit('xl/styles.xml', /<dxfs[^>]*>.*<\/dxfs>/s, (all) =>
          all.replaceAll('FFDDF3E4', 'FFX').replaceAll('FFFBDCDC', 'FFDDF3E4').replaceAll('FFX', 'FFFBDCDC'),
        ),
    },
    {
      name: 'condition that shows another verdict',
      change: (b) =>
        add(
          verdict.address,
          `<cfRule type="expression" dxfId="${dxf(b, '<numFmt numFmtId="398" formatCode="0;0;0;&quot;MISSES&quot;"/>')}" priority="1"><formula>TRUE</formula></cfRule>`,
        )(b),
    },
    {
      name: 'condition that shows another figure',
      change: (b) =>
        add(
          figure.address,
          `<cfRule type="expression" dxfId="${dxf(b, '<numFmt numFmtId="397" formatCode="&quot;0.21&quot;"/>')}" priority="1"><formula>TRUE</formula></cfRule>`,
        )(b),
    },
    {
      name: 'condition with white text',
      change: (b) =>
        add(
          figure.address,
          `<cfRule type="expression" dxfId="${dxf(b, '<font><color rgb="FFFFFFFF"/></font>')}" priority="1"><formula>TRUE</formula></cfRule>`,
        )(b),
    },
    {
      name: 'bars over a figure',
      change: add(
        figure.address,
        '<cfRule type="dataBar" priority="1"><dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FF000000"/></dataBar></cfRule>',
      ),
    },
  ]
}

const NS =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"'
const box = (row: number, body: string) =>
  `<xdr:twoCellAnchor ${NS}><xdr:from><xdr:col>0</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>3</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row + 2}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>${body}<xdr:clientData/></xdr:twoCellAnchor>`
const shape = (text: string) =>
  `<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="77" name="Box"/><xdr:cNvSpPr txBox="1"/></xdr:nvSpPr><xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill></xdr:spPr><xdr:txBody><a:bodyPr/><a:p><a:r><a:t>${text}</a:t></a:r></a:p></xdr:txBody></xdr:sp>`

/** Charts, text boxes, pictures, comments. */
function drawings({ summary, verdict, figure }: Marks): Tampering[] {
  const drawing = 'xl/drawings/drawing1.xml'
  const chart = 'xl/charts/chart1.xml'
  const draw = (xml: string) => (b: PackageText) => b.edit(drawing, '</xdr:wsDr>', `${xml}</xdr:wsDr>`)
  return [
    { name: 'text box over the verdict', change: draw(box(verdict.row - 1, shape('MISSES'))) },
    { name: 'empty white box over the verdict', change: draw(box(verdict.row - 1, shape(''))) },
    { name: 'text box over a figure', change: draw(box(figure.row - 1, shape('0.31 1/h'))) },
    {
      name: 'picture over the verdict',
      change: (b) => {
        b.parts['xl/media/image9.png'] = new Uint8Array([137, 80, 78, 71])
        b.edit(
          'xl/drawings/_rels/drawing1.xml.rels',
          '</Relationships>',
          '<Relationship Id="rId77" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/image" Target="../media/image9.png"/></Relationships>',
        )
        const picture =
          '<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="78" name="P"/><xdr:cNvPicPr/></xdr:nvPicPr><xdr:blipFill><a:blip xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:embed="rId77"/></xdr:blipFill><xdr:spPr/></xdr:pic>'
        return draw(box(verdict.row - 1, picture))(b)
      },
    },
    {
      name: 'chart deleted',
      change: (b) => b.edit(drawing, /<xdr:twoCellAnchor.*<\/xdr:twoCellAnchor>/s, ''),
    },
    { name: 'drawing cut off the sheet', change: (b) => b.edit(summary, /<drawing [^>]*\/>/, '') },
    { name: 'chart hidden', change: (b) => b.edit(drawing, '<xdr:cNvPr ', '<xdr:cNvPr hidden="1" ') },
    {
      name: 'chart moved down',
      change: (b) =>
        b.edit(
          drawing,
          /<xdr:row>(\d+)<\/xdr:row>/g,
          (_, row = '0') => `<xdr:row>${Number(row) + 60}</xdr:row>`,
        ),
    },
    {
      name: 'chart over the verdict',
      change: (b) => b.edit(drawing, /<xdr:row>\d+<\/xdr:row>/, '<xdr:row>0</xdr:row>'),
    },
    {
      name: 'chart made tiny',
      change: (b) => b.edit(drawing, /(<xdr:to><xdr:col>)\d+/, (_, open = '') => `${open}1`),
    },
    {
      name: 'chart of other cells',
      change: (b) =>
        b.edit(
          chart,
          /(<c:yVal><c:numRef><c:f>'Working'!)\$[A-Z]+\$(\d+)/,
          (_, open = '', row = '') => `${open}$B$${row}`,
        ),
    },
    {
      name: 'chart of fewer rows',
      change: (b) =>
        b.edit(
          chart,
          /(<c:f>'Working'!\$[A-Z]+\$\d+:\$[A-Z]+\$)(\d+)/,
          (_, open = '', row = '0') => `${open}${Number(row) - 2}`,
        ),
    },
    {
      name: 'stored values of the chart',
      change: (b) =>
        b.edit(
          chart,
          /(<c:yVal>.*?<c:pt idx="0"><c:v>)([\d.]+)/s,
          (_, open = '', value = '0') => `${open}${Number(value) * 1.3}`,
        ),
    },
    {
      name: 'chart of typed-in values',
      change: (b) =>
        b.edit(
          chart,
          /<c:yVal><c:numRef><c:f>[^<]*<\/c:f><c:numCache>(.*?)<\/c:numCache><\/c:numRef><\/c:yVal>/s,
          (_, cache = '') => `<c:yVal><c:numLit>${cache}</c:numLit></c:yVal>`,
        ),
    },
    {
      name: 'a series renamed',
      change: (b) => b.edit(chart, /<c:tx><c:v>[^<]*</, '<c:tx><c:v>measured by another<'),
    },
    { name: 'a series left out', change: (b) => b.edit(chart, /<c:ser>.*?<\/c:ser>/s, '') },
    {
      name: 'a series added',
      change: (b) =>
        b.edit(
          chart,
          /(<c:ser>.*?<\/c:ser>)/s,
          (all) =>
            all +
            all
              .replace('<c:idx val="0"/>', '<c:idx val="9"/>')
              .replace('<c:order val="0"/>', '<c:order val="9"/>'),
        ),
    },
    {
      name: 'marks without colour',
      change: (b) =>
        b.edit(
          chart,
          /(<c:marker><c:symbol val="circle"\/>.*?srgbClr val=")[0-9A-F]{6}/s,
          (_, open = '') => `${open}FFFFFF`,
        ),
    },
    {
      name: 'marks taken away',
      change: (b) => b.edit(chart, '<c:symbol val="circle"/>', '<c:symbol val="none"/>'),
    },
    {
      name: 'title put on the chart',
      change: (b) =>
        b.edit(
          chart,
          '<c:autoTitleDeleted val="1"/>',
          '<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:r><a:t>n50 = 0.31: passed</a:t></a:r></a:p></c:rich></c:tx></c:title><c:autoTitleDeleted val="0"/>',
        ),
    },
    {
      name: 'title of an axis',
      change: (b) => b.edit(chart, /pressure difference, Pa/, 'pressure difference, kPa'),
    },
    {
      name: 'limits of an axis',
      change: (b) => b.edit(chart, /<c:max val="[^"]*"\/>/, '<c:max val="5000"/>'),
    },
    { name: 'axis no longer logarithmic', change: (b) => b.edit(chart, '<c:logBase val="10"/>', '') },
    {
      name: 'axis turned round',
      change: (b) => b.edit(chart, '<c:orientation val="minMax"/>', '<c:orientation val="maxMin"/>'),
    },
    { name: 'axis taken away', change: (b) => b.edit(chart, '<c:delete val="0"/>', '<c:delete val="1"/>') },
    {
      name: 'number format of an axis',
      change: (b) => b.edit(chart, /<c:numFmt formatCode="[^"]*"/, '<c:numFmt formatCode="0&quot;0&quot;"'),
    },
    { name: 'legend taken away', change: (b) => b.edit(chart, /<c:legend>.*<\/c:legend>/s, '') },
    { name: 'kind of the chart', change: (b) => b.edit(chart, /scatterChart/g, 'lineChart') },
    {
      name: 'a comment',
      change: (b) => {
        b.set(
          'xl/comments9.xml',
          '<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>x</author></authors><commentList><comment ref="A12" authorId="0"><text><t>void</t></text></comment></commentList></comments>',
        )
        return b.relate(summary, 'comments', '../comments9.xml')
      },
    },
    {
      name: 'a background picture',
      change: (b) => {
        b.parts['xl/media/image8.png'] = new Uint8Array([137, 80, 78, 71])
        const id = b.relate(summary, 'image', '../media/image8.png')
        return b.edit(summary, '</worksheet>', `<picture r:id="${id}"/></worksheet>`)
      },
    },
    { name: 'picture in the footer', change: (b) => b.edit(summary, '<oddFooter>', '<oddFooter>&amp;G') },
  ]
}

/** Names, settings, properties, print set-up, links. */
function settings({ summary, figure }: Marks): Tampering[] {
  const workbook = 'xl/workbook.xml'
  const core = 'docProps/core.xml'
  return [
    {
      name: 'a name moved',
      change: (b) =>
        b.edit(
          workbook,
          /(<definedName name="margin_to_target">Working!\$C\$)(\d+)/,
          (_, open = '', row = '0') => `${open}${Number(row) + 1}`,
        ),
    },
    {
      name: 'a name turned into a constant',
      change: (b) =>
        b.edit(workbook, /(<definedName name="air_change_rate_50">)[^<]*/, (_, open = '') => `${open}0.31`),
    },
    {
      name: 'a name removed',
      change: (b) => b.edit(workbook, /<definedName name="leakage_to_seal">.*?<\/definedName>/, ''),
    },
    {
      name: 'a name added',
      change: (b) =>
        b.edit(
          workbook,
          '</definedNames>',
          '<definedName name="official_result">0.31</definedName></definedNames>',
        ),
    },
    {
      name: 'print area',
      change: (b) =>
        b.edit(
          workbook,
          /(<definedName name="_xlnm.Print_Area" localSheetId="0">)[^<]*/,
          (_, open = '') => `${open}Summary!$A$1:$F$20`,
        ),
    },
    {
      name: 'print area removed',
      change: (b) =>
        b.edit(workbook, /<definedName name="_xlnm.Print_Area" localSheetId="0">.*?<\/definedName>/, ''),
    },
    {
      name: 'calculation by hand',
      change: (b) => b.edit(workbook, '<calcPr ', '<calcPr calcMode="manual" '),
    },
    {
      name: 'precision as displayed',
      change: (b) => b.edit(workbook, '<calcPr ', '<calcPr fullPrecision="0" '),
    },
    {
      name: 'iterative calculation',
      change: (b) => b.edit(workbook, '<calcPr ', '<calcPr iterate="1" iterateCount="9" '),
    },
    { name: 'dates from 1904', change: (b) => b.edit(workbook, '<workbookPr ', '<workbookPr date1904="1" ') },
    {
      name: 'a link to another workbook',
      change: (b) => {
        b.set(
          'xl/externalLinks/externalLink1.xml',
          '<externalLink xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"/>',
        )
        b.edit(
          'xl/_rels/workbook.xml.rels',
          '</Relationships>',
          '<Relationship Id="rId88" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/externalLink" Target="externalLinks/externalLink1.xml"/></Relationships>',
        )
        return b.edit(
          workbook,
          '</sheets>',
          '</sheets><externalReferences><externalReference r:id="rId88"/></externalReferences>',
        )
      },
    },
    { name: 'macros', change: (b) => (b.parts['xl/vbaProject.bin'] = new Uint8Array([1, 2, 3])) },
    { name: 'author', change: (b) => b.edit(core, /<dc:creator>[^<]*/, '<dc:creator>Somebody Else') },
    { name: 'title', change: (b) => b.edit(core, /<dc:title>[^<]*/, '<dc:title>Another house') },
    {
      name: 'date of making',
      change: (b) =>
        b.edit(core, /(<dcterms:created[^>]*>)[^<]*/, (_, open = '') => `${open}2020-01-01T12:00:00Z`),
    },
    {
      name: 'date of saving',
      change: (b) =>
        b.edit(core, /(<dcterms:modified[^>]*>)[^<]*/, (_, open = '') => `${open}2020-01-01T12:00:00Z`),
    },
    {
      name: 'saved by',
      change: (b) => b.edit(core, /<cp:lastModifiedBy>[^<]*/, '<cp:lastModifiedBy>Somebody Else'),
    },
    {
      name: 'company',
      change: (b) => b.edit('docProps/app.xml', /<Company>[^<]*/, '<Company>Another Office'),
    },
    {
      name: 'header',
      change: (b) => b.edit(summary, '<oddFooter>', '<oddHeader>APPROVED</oddHeader><oddFooter>'),
    },
    { name: 'footer', change: (b) => b.edit(summary, /<oddFooter>[^<]*/, '<oddFooter>&amp;CAPPROVED') },
    {
      name: 'footer of the first page',
      change: (b) =>
        b.edit(
          summary,
          /<headerFooter>(.*?)<\/headerFooter>/s,
          (_, inner = '') =>
            `<headerFooter differentFirst="1">${inner}<firstFooter>APPROVED</firstFooter></headerFooter>`,
        ),
    },
    {
      name: 'landscape',
      change: (b) => b.edit(summary, 'orientation="portrait"', 'orientation="landscape"'),
    },
    { name: 'paper', change: (b) => b.edit(summary, 'paperSize="9"', 'paperSize="70"') },
    {
      name: 'printed at 10 %',
      change: (b) =>
        b.edit(summary, /<sheetPr>.*?<\/sheetPr>/s, '').edit(summary, 'scale="100"', 'scale="10"'),
    },
    {
      name: 'margins that leave no page',
      change: (b) => b.edit(summary, /<pageMargins left="[^"]*"/, '<pageMargins left="7"'),
    },
    {
      name: 'page breaks',
      change: (b) =>
        b.edit(
          summary,
          '<drawing ',
          '<rowBreaks count="1" manualBreakCount="1"><brk id="10" max="16383" man="1"/></rowBreaks><drawing ',
        ),
    },
    {
      name: 'protection of Record removed',
      change: (b) => b.edit(b.sheet('Record'), /<sheetProtection[^>]*\/>/, ''),
    },
    {
      name: 'a check of what may be typed',
      change: (b) =>
        b.edit(
          summary,
          '<printOptions',
          '<dataValidations count="1"><dataValidation type="list" sqref="A12"><formula1>"MEETS,MISSES"</formula1></dataValidation></dataValidations><printOptions',
        ),
    },
    {
      name: 'a link on a cell',
      change: (b) => {
        const id = b.relate(summary, 'hyperlink', 'https://example.invalid/', true)
        return b.edit(
          summary,
          '<printOptions',
          `<hyperlinks><hyperlink ref="A12" r:id="${id}"/></hyperlinks><printOptions`,
        )
      },
    },
    {
      name: 'a filter in use',
      change: (b) =>
        b.edit(
          b.sheet('Check'),
          /<\/sheetData>/,
          '</sheetData><autoFilter ref="A8:E40"><filterColumn colId="4"><filters><filter val="agrees"/></filters></filterColumn></autoFilter>',
        ),
    },
    {
      name: 'formulas shown in place of results',
      change: (b) => b.edit(summary, '<sheetView ', '<sheetView showFormulas="1" '),
    },
    { name: 'zeros not shown', change: (b) => b.edit(summary, '<sheetView ', '<sheetView showZeros="0" ') },
    {
      name: 'columns from right to left',
      change: (b) => b.edit(summary, '<sheetView ', '<sheetView rightToLeft="1" '),
    },
    {
      name: 'theme colours',
      change: (b) =>
        b.edit('xl/theme/theme1.xml', /(<a:dk1>.*?lastClr=")[0-9A-F]{6}/s, (_, open = '') => `${open}FFFFFF`),
    },
    {
      name: 'theme fonts',
      change: (b) =>
        b.edit('xl/theme/theme1.xml', /<a:latin typeface="[^"]*"/, '<a:latin typeface="Wingdings"'),
    },
    {
      name: 'styles swapped',
      change: (b) =>
        b.edit(
          'xl/styles.xml',
          /(<cellXfs[^>]*>)(<xf\b[^>]*?\/>)(<xf\b[^>]*?\/>)/,
          (_, open = '', one = '', other = '') => open + other + one,
        ),
    },
    {
      name: 'borders',
      change: (b) =>
        b.edit('xl/styles.xml', /<borders[^>]*>.*?<\/borders>/s, (all) => all.replace(/hair/g, 'thick')),
    },
    {
      name: 'protection of cells',
      change: (b) =>
        b.restyle('Summary', figure.address, (xf) =>
          xf.replace(/\/>$/, '><protection hidden="1"/></xf>').replace('<alignment', '<alignment'),
        ),
    },
    { name: 'a part nobody knows', change: (b) => b.set('xl/hidden/notes.xml', '<notes/>') },
    {
      name: 'a text no cell shows',
      change: (b) => b.edit('xl/sharedStrings.xml', '</sst>', '<si><t>hidden</t></si></sst>'),
    },
    {
      name: 'extension of a sheet',
      change: (b) => b.edit(summary, '</worksheet>', '<extLst><ext uri="{X}"/></extLst></worksheet>'),
    },
  ]
}

/** What cells hold. */
function contents({ summary, verdict, figure, reading }: Marks): Tampering[] {
  const cell = (address: string, change: (xml: string) => string) => (b: PackageText) =>
    b.edit(summary, new RegExp(`<c r="${address}"[^>]*>.*?</c>`, 's'), (xml) => change(xml))
  return [
    {
      name: 'poisoned result, formula kept: verdict',
      change: cell(verdict.address, (xml) => xml.replace(/<v>[^<]*/, '<v>NOT VALID')),
    },
    {
      name: 'poisoned result, formula kept: figure',
      change: cell(figure.address, (xml) => xml.replace(/<v>[^<]*/, '<v>0.31')),
    },
    {
      name: 'poisoned result in the fourth digit',
      change: cell(figure.address, (xml) => xml.replace(/<v>([^<]*)/, (_, v) => `<v>${Number(v) + 0.0001}`)),
    },
    {
      name: 'formula turned into its own result',
      change: cell(figure.address, (xml) => xml.replace(/<f>.*?<\/f>/, '')),
    },
    {
      name: 'verdict turned into text',
      change: cell(verdict.address, (xml) => xml.replace(/<f>.*?<\/f>/, '')),
    },
    {
      name: 'formula to another cell of the same value',
      change: cell(figure.address, (xml) => xml.replace(/<f>(.*?)<\/f>/, '<f>$1+0</f>')),
    },
    {
      name: 'text in the place of a result',
      change: cell(figure.address, (xml) =>
        xml
          .replace(/ t="\w+"/, '')
          .replace('<c ', '<c t="inlineStr" ')
          .replace(/<f>.*<\/v>/s, '<is><t>0.31</t></is>'),
      ),
    },
    { name: 'number kept as text', change: cell(figure.address, (xml) => xml.replace('<c ', '<c t="str" ')) },
    {
      name: 'an error',
      change: cell(figure.address, (xml) => xml.replace('<c ', '<c t="e" ').replace(/<v>[^<]*/, '<v>#N/A')),
    },
    { name: 'a result emptied', change: cell(figure.address, () => `<c r="${figure.address}"/>`) },
    {
      name: 'white letters in a text',
      change: (b) =>
        b.edit(
          'xl/sharedStrings.xml',
          /<si><t[^>]*>(Method[^<]{4})([^<]*)<\/t><\/si>/,
          (_, a = '', z = '') =>
            `<si><r><rPr><color rgb="FFFFFFFF"/></rPr><t xml:space="preserve">${a}</t></r><r><rPr/><t xml:space="preserve">${z}</t></r></si>`,
        ),
    },
    { name: 'a word of a text', change: (b) => b.edit('xl/sharedStrings.xml', /Method: /, 'Method as ') },
    {
      name: 'a reading typed over',
      change: (b) => b.edit(b.sheet('Readings'), `<v>${reading.value}</v>`, '<v>12.3</v>'),
    },
    {
      name: 'a cell filled beside the table',
      change: (b) =>
        b.edit(summary, '</sheetData>', '<row r="400"><c r="C400"><v>1</v></c></row></sheetData>'),
    },
    {
      name: 'Check made to agree',
      change: (b) => b.edit(b.sheet('Check'), /<f>IF\(IFERROR[^<]*<\/f>/g, '<f>&quot;agrees&quot;</f>'),
    },
    {
      name: 'count of differences fixed at 0',
      change: (b) => b.edit(b.sheet('Check'), /<f>COUNTIF[^<]*<\/f>/, '<f>0</f>'),
    },
    {
      name: 'a digest',
      change: (b) =>
        b.edit(b.sheet('Record'), /(<t>)[0-9a-f]( ?)/, (_, open = '', rest = '') => `${open}z${rest}`),
    },
    {
      name: 'digests removed',
      change: (b) =>
        b.edit(b.sheet('Record'), /<row r="\d+"><c r="A\d+"[^>]*><is><t>issued part.*?<\/row>/gs, ''),
    },
  ]
}

export const tamperingsOf = (book: PackageText): Tampering[] => {
  const marks = landmarks(book)
  return [
    ...looks(marks),
    ...sizes(marks),
    ...conditions(marks),
    ...drawings(marks),
    ...settings(marks),
    ...contents(marks),
  ]
}
