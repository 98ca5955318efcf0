import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import { type HiddenChange, unseen } from './unseen'

const NS_MC = 'xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"'
const NS =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"'
const BOX = `<xdr:twoCellAnchor ${NS}><xdr:from><xdr:col>0</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>10</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>3</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>13</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to><xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="77" name="Box"/><xdr:cNvSpPr txBox="1"/></xdr:nvSpPr><xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr><xdr:txBody><a:bodyPr/><a:p><a:r><a:t>MEETS</a:t></a:r></a:p></xdr:txBody></xdr:sp><xdr:clientData/></xdr:twoCellAnchor>`

const drawing = 'xl/drawings/drawing1.xml'
const chart = 'xl/charts/chart1.xml'
const workbook = 'xl/workbook.xml'

/** Cells, rows, panes, conditional formats, drawings and charts. */
export function hiddenInCells(book: PackageText): HiddenChange[] {
  const { summary, verdict, figure } = landmarks(book)
  const font = (b: PackageText, xml: string) => b.addTo('fonts', `<font>${xml}</font>`)
  const fonted = (xml: string) => (b: PackageText) => {
    const index = font(b, xml)
    return b.restyle('Summary', figure.address, (xf) => xf.replace(/fontId="\d+"/, `fontId="${index}"`))
  }
  const formatted = (code: string) => (b: PackageText) => {
    b.addTo('numFmts', `<numFmt numFmtId="396" formatCode="${code}"/>`)
    return b.restyle('Summary', figure.address, (xf) =>
      xf
        .replace(/ applyNumberFormat="\d"/, '')
        .replace(/numFmtId="\d+"/, 'numFmtId="396" applyNumberFormat="1"'),
    )
  }
  const dxf = (b: PackageText, xml: string) => {
    const count = (b.text('xl/styles.xml').match(/<dxf>/g) ?? []).length
    b.edit('xl/styles.xml', '</dxfs>', `<dxf>${xml}</dxf></dxfs>`)
    return count
  }
  const sheetView = (name: string, attributes: string) => (b: PackageText) =>
    b.edit(b.sheet(name), '<sheetView ', `<sheetView ${attributes} `)
  return [
    // Numbers and texts of cells.
    { name: 'colour of the text set by the number format', change: formatted('[White]0.00') },
    { name: 'colour of the palette set by the number format', change: formatted('[Color2]0.00') },
    { name: 'number format that fills the cell', change: formatted('0.00* ') },
    { ...unseen, name: 'number format with blanks put before', change: formatted('0.00;;;') },
    { name: 'number format with a condition', change: formatted('[&lt;5]&quot;0.29&quot;;0.00') },
    { name: 'another language of the digits', change: formatted('[$-2000000]0.00') },
    { name: 'a font of bars', change: fonted('<sz val="10"/><color rgb="FF1F2933"/><name val="Code 128"/>') },
    {
      name: 'a font of the theme that is made of pictures',
      change: (b) => {
        b.edit(
          'xl/theme/theme1.xml',
          /(<a:minorFont>\s*<a:latin typeface=")[^"]*/,
          (_, open = '') => `${open}Wingdings`,
        )
        return fonted('<sz val="10"/><color rgb="FF1F2933"/><name val="Calibri"/><scheme val="minor"/>')(b)
      },
    },
    {
      name: 'text raised and made small',
      change: fonted(
        '<vertAlign val="superscript"/><sz val="10"/><color rgb="FF1F2933"/><name val="Calibri"/>',
      ),
    },
    {
      name: 'a piece of a text in a font of pictures',
      change: (b) =>
        b.edit(
          'xl/sharedStrings.xml',
          /<si><t[^>]*>(Method[^<]{4})([^<]*)<\/t><\/si>/,
          (_, a = '', z = '') =>
            `<si><r><rPr><rFont val="Wingdings"/></rPr><t xml:space="preserve">${a}</t></r><r><t xml:space="preserve">${z}</t></r></si>`,
        ),
    },
    {
      name: 'cells without addresses, one of them white',
      change: (b) => {
        const index = font(b, '<sz val="11"/><color rgb="FFFFFFFF"/><name val="Calibri"/>')
        b.restyle('Summary', verdict.address, (xf) => xf.replace(/fontId="\d+"/, `fontId="${index}"`))
        return b.edit(summary, `<c r="${verdict.address}"`, '<c')
      },
    },
    {
      name: 'a gradient behind a figure',
      change: (b) => {
        const fill = b.addTo(
          'fills',
          '<fill><gradientFill><stop position="0"><color rgb="FF000000"/></stop><stop position="1"><color rgb="FF1F2933"/></stop></gradientFill></fill>',
        )
        return b.restyle('Summary', figure.address, (xf) => xf.replace(/fillId="\d+"/, `fillId="${fill}"`))
      },
    },
    {
      name: 'a pattern over a figure',
      change: (b) => {
        const fill = b.addTo(
          'fills',
          '<fill><patternFill patternType="darkGrid"><fgColor rgb="FF1F2933"/><bgColor rgb="FF1F2933"/></patternFill></fill>',
        )
        return b.restyle('Summary', figure.address, (xf) => xf.replace(/fillId="\d+"/, `fillId="${fill}"`))
      },
    },
    {
      name: 'a theme colour changed and used',
      change: (b) => {
        b.edit(
          'xl/theme/theme1.xml',
          /<a:accent1>.*?<\/a:accent1>/s,
          '<a:accent1><a:srgbClr val="FFFFFF"/></a:accent1>',
        )
        return fonted('<sz val="10"/><color theme="4"/><name val="Calibri"/>')(b)
      },
    },
    // Rows, columns, panes.
    {
      name: 'rows that cannot be scrolled to above frozen ones',
      change: sheetView('Working', 'topLeftCell="A90"'),
    },
    {
      name: 'panes frozen below the verdict',
      change: (b) =>
        b.edit(
          summary,
          /<sheetView([^>]*)\/>/,
          (_, rest = '') =>
            `<sheetView${rest} topLeftCell="A14"><pane ySplit="2" topLeftCell="A16" activePane="bottomLeft" state="frozen"/></sheetView>`,
        ),
    },
    {
      name: 'the row of cautions cut by a line',
      change: (b) =>
        b.edit(
          summary,
          // Several lines of text, below the curve.
          /<row r="([5-9]\d)"([^>]*?)ht="(4\d)(?:\.\d+)?"/,
          (_, row = '', rest = '', height = '0') =>
            `<row r="${row}"${rest}ht="${Math.round(Number(height) * 0.8)}"`,
        ),
    },
    {
      name: 'rows folded away',
      change: (b) =>
        b.edit(
          summary,
          new RegExp(`<row r="${figure.row}"`),
          `<row r="${figure.row}" outlineLevel="1" hidden="1"`,
        ),
    },
    {
      name: 'columns folded away',
      change: (b) =>
        b.edit(
          b.sheet('Check'),
          /<col min="2" max="(\d+)"/,
          (_, to = '') => `<col min="2" max="${to}" outlineLevel="1" hidden="1"`,
        ),
    },
    {
      name: 'tabs of the sheets hidden',
      change: (b) =>
        b.edit(workbook, '<sheets>', '<bookViews><workbookView showSheetTabs="0"/></bookViews><sheets>'),
    },
    {
      name: 'window hidden',
      change: (b) =>
        b.edit(workbook, '<sheets>', '<bookViews><workbookView visibility="hidden"/></bookViews><sheets>'),
    },
    // Conditional formats.
    {
      name: 'condition that strikes a figure through',
      change: (b) => {
        const id = dxf(b, '<font><strike/></font>')
        return b.edit(
          summary,
          '<conditionalFormatting',
          `<conditionalFormatting sqref="A13"><cfRule type="expression" dxfId="${id}" priority="1"><formula>TRUE</formula></cfRule></conditionalFormatting><conditionalFormatting`,
        )
      },
    },
    {
      name: 'look of an issued condition struck through',
      change: (b) => b.edit('xl/styles.xml', /<dxf><font>/, '<dxf><font><strike val="1"/>'),
    },
    {
      name: 'condition kept in an extension',
      change: (b) =>
        b.edit(
          summary,
          '</worksheet>',
          `<extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:conditionalFormattings><x14:conditionalFormatting xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:cfRule type="expression" priority="1" id="{1}"><xm:f>TRUE</xm:f><x14:dxf><font><color rgb="FFFFFFFF"/></font></x14:dxf></x14:cfRule><xm:sqref>${verdict.address}</xm:sqref></x14:conditionalFormatting></x14:conditionalFormattings></ext></extLst></worksheet>`,
        ),
    },
    {
      name: 'a small chart drawn in a cell',
      change: (b) =>
        b.edit(
          summary,
          '</worksheet>',
          '<extLst><ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:sparklineGroups xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:sparklineGroup><x14:sparklines><x14:sparkline><xm:f>Working!C4:C9</xm:f><xm:sqref>A13</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst></worksheet>',
        ),
    },
    // Drawings and charts.
    {
      name: 'text box for new programs only',
      change: (b) =>
        b.edit(
          drawing,
          '</xdr:wsDr>',
          `<mc:AlternateContent ${NS_MC}><mc:Choice Requires="a14">${BOX}</mc:Choice><mc:Fallback/></mc:AlternateContent></xdr:wsDr>`,
        ),
    },
    {
      name: 'text boxes grouped',
      change: (b) =>
        b.edit(
          drawing,
          '</xdr:wsDr>',
          `${BOX.replace(/<xdr:sp macro/, '<xdr:grpSp><xdr:nvGrpSpPr/><xdr:grpSpPr/><xdr:sp macro').replace('</xdr:sp>', '</xdr:sp></xdr:grpSp>')}</xdr:wsDr>`,
        ),
    },
    {
      name: 'a reading of the chart without its mark',
      change: (b) =>
        b.edit(
          chart,
          '</c:marker><c:xVal>',
          '</c:marker><c:dPt><c:idx val="3"/><c:marker><c:symbol val="none"/></c:marker></c:dPt><c:xVal>',
        ),
    },
    {
      name: 'axis in thousands',
      change: (b) =>
        b.edit(chart, /<\/c:valAx>/, '<c:dispUnits><c:builtInUnit val="thousands"/></c:dispUnits></c:valAx>'),
    },
    {
      name: 'line of the fit smoothed',
      change: (b) => b.edit(chart, /<c:smooth val="0"\/>/g, '<c:smooth val="1"/>'),
    },
    {
      name: 'error bars',
      change: (b) =>
        b.edit(
          chart,
          '<c:xVal>',
          '<c:errBars><c:errBarType val="both"/><c:errValType val="percentage"/><c:val val="30"/></c:errBars><c:xVal>',
        ),
    },
    {
      name: 'stored name of a series',
      change: (b) =>
        b.edit(
          chart,
          /<c:tx><c:v>([^<]*), readings</,
          (_, name = '') =>
            `<c:tx><c:strRef><c:f>Summary!$A$1</c:f><c:strCache><c:pt idx="0"><c:v>${name}, readings</c:v></c:pt></c:strCache></c:strRef><c:v><`,
        ),
    },
    {
      name: 'a picture behind the chart',
      change: (b) =>
        b.edit(chart, '<c:layout/>', '<c:layout/><c:spPr><a:blipFill><a:blip/></a:blipFill></c:spPr>'),
    },
  ]
}
