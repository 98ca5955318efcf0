import type { PackageText } from '../package'
import type { Marks, Tampering } from './landmarks'

const NS =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"'
const box = (row: number, body: string) =>
  `<xdr:twoCellAnchor ${NS}><xdr:from><xdr:col>0</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>3</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row + 2}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>${body}<xdr:clientData/></xdr:twoCellAnchor>`
const shape = (text: string) =>
  `<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="77" name="Box"/><xdr:cNvSpPr txBox="1"/></xdr:nvSpPr><xdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill></xdr:spPr><xdr:txBody><a:bodyPr/><a:p><a:r><a:t>${text}</a:t></a:r></a:p></xdr:txBody></xdr:sp>`

/** Charts, text boxes, pictures, comments. */
export function drawings({ summary, verdict, figure }: Marks): Tampering[] {
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
