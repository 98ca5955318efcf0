import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import type { HiddenChange } from './unseen'

const drawing = 'xl/drawings/drawing1.xml'
const chart = 'xl/charts/chart1.xml'
const LINE = /(<c:ser><c:idx val="1"\/>.*?<a:ln )w="\d+"/s

/** What lies over the cells, and what is drawn in the chart. */
export function otherDrawings(book: PackageText): HiddenChange[] {
  const { summary, verdict, figure } = landmarks(book)
  return [
    {
      name: 'chart not printed',
      change: (b) => b.edit(drawing, '<xdr:clientData/>', '<xdr:clientData fPrintsWithSheet="0"/>'),
    },
    { name: 'line of the fit without width', change: (b) => b.edit(chart, LINE, (_, o = '') => `${o}w="0"`) },
    {
      name: 'line of the fit fifty points wide',
      change: (b) => b.edit(chart, LINE, (_, o = '') => `${o}w="635000"`),
    },
    {
      name: 'line of the fit transparent',
      change: (b) =>
        b.edit(
          chart,
          /(<c:ser><c:idx val="1"\/>.*?)<a:srgbClr val="(\w+)"\/>/s,
          (_, o = '', c = '') => `${o}<a:srgbClr val="${c}"><a:alpha val="0"/></a:srgbClr>`,
        ),
    },
    {
      name: 'line of the fit as light as paper',
      change: (b) =>
        b.edit(
          chart,
          /(<c:ser><c:idx val="1"\/>.*?)<a:srgbClr val="(\w+)"\/>/s,
          (_, o = '', c = '') =>
            `${o}<a:srgbClr val="${c}"><a:lumMod val="0"/><a:lumOff val="100000"/></a:srgbClr>`,
        ),
    },
    {
      name: 'readings drawn seventy points large',
      change: (b) => b.edit(chart, /<c:size val="\d+"\/>/, '<c:size val="72"/>'),
    },
    {
      name: 'readings drawn two points small',
      change: (b) => b.edit(chart, /<c:size val="\d+"\/>/, '<c:size val="2"/>'),
    },
    {
      name: 'area of the plot made tiny',
      change: (b) =>
        b.edit(
          chart,
          '<c:plotArea><c:layout/>',
          '<c:plotArea><c:layout><c:manualLayout><c:layoutTarget val="inner"/><c:xMode val="edge"/><c:yMode val="edge"/><c:x val="0.9"/><c:y val="0.9"/><c:w val="0.05"/><c:h val="0.05"/></c:manualLayout></c:layout>',
        ),
    },
    {
      name: 'legend lies over the curve',
      change: (b) =>
        b.edit(
          chart,
          /(<c:legend>.*?)<c:overlay val="0"\/>/s,
          (_, o = '') =>
            `${o}<c:layout><c:manualLayout><c:xMode val="edge"/><c:yMode val="edge"/><c:x val="0.1"/><c:y val="0.1"/><c:w val="0.8"/><c:h val="0.8"/></c:manualLayout></c:layout><c:overlay val="1"/><c:spPr><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill></c:spPr>`,
        ),
    },
    {
      name: 'an entry of the legend taken out',
      change: (b) =>
        b.edit(
          chart,
          /<c:legend><c:legendPos val="\w+"\/>/,
          (all) => `${all}<c:legendEntry><c:idx val="0"/><c:delete val="1"/></c:legendEntry>`,
        ),
    },
    {
      name: 'white numbers at an axis',
      change: (b) =>
        b.edit(
          chart,
          /(<c:valAx>.*?)(<c:crossAx)/s,
          (_, o = '', e = '') =>
            `${o.replace(/<c:txPr>.*<\/c:txPr>/s, '')}<c:txPr><a:bodyPr/><a:p><a:pPr><a:defRPr sz="900"><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill></a:defRPr></a:pPr></a:p></c:txPr>${e}`,
        ),
    },
    {
      name: 'curve on a black ground',
      change: (b) =>
        b.edit(
          chart,
          '</c:plotArea>',
          '<c:spPr><a:solidFill><a:srgbClr val="17508A"/></a:solidFill></c:spPr></c:plotArea>',
        ),
    },
    {
      name: 'names of the series by number format',
      change: (b) =>
        b.edit(
          chart,
          /(<c:ser><c:idx val="0"\/>.*?<\/c:marker>)/s,
          (_, o = '') =>
            `${o}<c:dLbls><c:numFmt formatCode="&quot;0.31&quot;" sourceLinked="0"/><c:showLegendKey val="0"/><c:showVal val="1"/><c:showCatName val="0"/><c:showSerName val="0"/><c:showPercent val="0"/><c:showBubbleSize val="0"/></c:dLbls>`,
        ),
    },
    {
      name: 'axis crosses elsewhere',
      change: (b) =>
        b.edit(chart, /<c:crosses val="\w+"\/>|<c:crossesAt val="[^"]*"\/>/, '<c:crossesAt val="99"/>'),
    },
    {
      name: 'one series shown in the colour of the other',
      change: (b) =>
        b.edit(chart, /(<c:ser><c:idx val="2"\/>.*?<\/c:ser>)/s, (s = '') =>
          s.replaceAll('B4530A', '17508A'),
        ),
    },
    {
      name: 'chart turned',
      change: (b) => b.edit(drawing, '<xdr:xfrm>', '<xdr:xfrm rot="10800000" flipV="1">'),
    },
    {
      name: 'chart behind a link',
      unseen: true,
      change: (b) =>
        b.edit(
          drawing,
          /<xdr:cNvPr ([^>]*)\/>/,
          (_, a = '') =>
            `<xdr:cNvPr ${a}><a:hlinkClick xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="rId1"/></xdr:cNvPr>`,
        ),
    },
    {
      name: 'another description of the chart',
      change: (b) => b.edit(drawing, /descr="[^"]*"/, 'descr="The house misses its target by far"'),
    },
    {
      name: 'a shape of the older kind over the verdict',
      change: (b) => {
        b.set(
          'xl/drawings/vmlDrawing1.vml',
          `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"/><v:shape id="s1" type="#t202" style='position:absolute;margin-left:0;margin-top:150pt;width:300pt;height:30pt;z-index:1;visibility:visible' fillcolor="white"><v:textbox>MISSES</v:textbox><x:ClientData ObjectType="Label"><x:Anchor>0,0,${verdict.row - 1},0,3,0,${verdict.row},0</x:Anchor></x:ClientData></v:shape></xml>`,
        )
        const id = b.relate(summary, 'vmlDrawing', '../drawings/vmlDrawing1.vml')
        return b.edit(summary, '</worksheet>', `<legacyDrawing r:id="${id}"/></worksheet>`)
      },
    },
    {
      name: 'a picture in the header of the older kind',
      change: (b) => {
        b.set(
          'xl/drawings/vmlDrawing1.vml',
          `<xml xmlns:v="urn:schemas-microsoft-com:vml"><v:shape id="CF" style='width:600pt;height:600pt'><v:imagedata o:relid="rId1" xmlns:o="urn:schemas-microsoft-com:office:office"/></v:shape></xml>`,
        )
        const id = b.relate(summary, 'vmlDrawing', '../drawings/vmlDrawing1.vml')
        b.edit(summary, '<oddFooter>', '<oddHeader>&amp;C&amp;G</oddHeader><oddFooter>')
        return b.edit(summary, '</worksheet>', `<legacyDrawingHF r:id="${id}"/></worksheet>`)
      },
    },
    {
      name: 'a line drawn through a figure',
      change: (b) =>
        b.edit(
          drawing,
          '</xdr:wsDr>',
          `<xdr:absoluteAnchor><xdr:pos x="0" y="3000000"/><xdr:ext cx="3000000" cy="1"/><xdr:cxnSp macro=""><xdr:nvCxnSpPr><xdr:cNvPr id="99" name="L"/><xdr:cNvCxnSpPr/></xdr:nvCxnSpPr><xdr:spPr><a:prstGeom prst="line"><a:avLst/></a:prstGeom><a:ln w="25400"/></xdr:spPr></xdr:cxnSp><xdr:clientData/></xdr:absoluteAnchor></xdr:wsDr>`,
        ),
    },
    {
      name: 'a picture of cells elsewhere',
      change: (b) =>
        b.edit(
          drawing,
          '</xdr:wsDr>',
          `<xdr:oneCellAnchor><xdr:from><xdr:col>0</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${figure.row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:ext cx="900000" cy="200000"/><xdr:sp macro="" textlink="Working!$C$5"><xdr:nvSpPr><xdr:cNvPr id="98" name="T"/><xdr:cNvSpPr/></xdr:nvSpPr><xdr:spPr/><xdr:txBody><a:bodyPr/><a:p/></xdr:txBody></xdr:sp><xdr:clientData/></xdr:oneCellAnchor></xdr:wsDr>`,
        ),
    },
    {
      name: 'two drawings, the first as issued',
      change: (b) => {
        b.set(
          'xl/drawings/drawing9.xml',
          b
            .text(drawing)
            .replace(
              /<xdr:twoCellAnchor.*<\/xdr:twoCellAnchor>/s,
              `<xdr:oneCellAnchor><xdr:from><xdr:col>0</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${verdict.row - 1}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:ext cx="900000" cy="200000"/><xdr:sp macro=""><xdr:nvSpPr><xdr:cNvPr id="98" name="T"/><xdr:cNvSpPr/></xdr:nvSpPr><xdr:spPr/><xdr:txBody><a:bodyPr/><a:p><a:r><a:t>MISSES</a:t></a:r></a:p></xdr:txBody></xdr:sp><xdr:clientData/></xdr:oneCellAnchor>`,
            ),
        )
        const id = b.relate(summary, 'drawing', '../drawings/drawing9.xml')
        return b.edit(summary, '</worksheet>', `<drawing r:id="${id}"/></worksheet>`)
      },
    },
  ]
}
