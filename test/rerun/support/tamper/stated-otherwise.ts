import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import type { HiddenChange } from './unseen'

const styles = 'xl/styles.xml'
const chart = 'xl/charts/chart1.xml'
const types = '[Content_Types].xml'

/** What is seen, stated in attributes and lists that programs seldom write. */
export function statedOtherwise(book: PackageText): HiddenChange[] {
  const { summary, figure } = landmarks(book)
  const texts = 'xl/sharedStrings.xml'
  /** A text of the summary in one piece with a look of its own; of texts alone no cell's own font says anything. */
  const piece =
    (look: string): HiddenChange['change'] =>
    (b) => {
      const label = new RegExp(`<c r="A${figure.row}"[^>]* t="s"[^>]*><v>(\\d+)</v>`).exec(
        b.text(summary),
      )?.[1]
      let at = -1
      return b.edit(texts, /<si>(?:(?!<\/si>).)*<\/si>/gs, (si = '') => {
        at += 1
        if (at !== Number(label)) return si
        return `<si><r><rPr>${look}</rPr><t xml:space="preserve">${si.replace(/<[^>]*>/g, '')}</t></r></si>`
      })
    }
  const formatted = (code: string) => (b: PackageText) => {
    b.addTo('numFmts', `<numFmt numFmtId="398" formatCode="${code}"/>`)
    return b.restyle('Summary', figure.address, (xf) => xf.replace(/numFmtId="\d+"/, 'numFmtId="398"'))
  }
  return [
    { name: 'a piece of a text in outlined letters', change: piece('<outline/>') },
    { name: 'a piece of a text with shadows', change: piece('<shadow/>') },
    { name: 'a piece of a text underlined twice', change: piece('<u val="double"/>') },
    { name: 'a piece of a text in the signs of a symbol font', change: piece('<charset val="2"/>') },
    { name: 'a piece of a text struck through by an older word', change: piece('<strike val="on"/>') },
    { name: 'a number of the other sign shown without it', change: formatted('0.00;0.00') },
    {
      name: 'two widths for the same columns',
      change: (b) => b.edit(summary, '</cols>', '<col min="2" max="6" width="0.5" customWidth="1"/></cols>'),
    },
    {
      name: 'columns without a width, wide by the base width',
      change: (b) =>
        b
          .edit(summary, '<sheetFormatPr ', '<sheetFormatPr baseColWidth="200" ')
          .edit(summary, /<cols>.*?<\/cols>/s, ''),
    },
    {
      name: 'a slicer in an extension',
      change: (b) =>
        b.edit(
          summary,
          '</worksheet>',
          '<extLst><ext uri="{A8765BA9-456A-4dab-B4F3-ACF838C121DE}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:slicerList/></ext></extLst></worksheet>',
        ),
    },
    {
      name: 'paper of another size beside its number',
      change: (b) => b.edit(summary, 'paperSize="9"', 'paperSize="9" paperHeight="50mm" paperWidth="50mm"'),
    },
    {
      name: 'a footer in the middle of the page',
      change: (b) => b.edit(summary, /footer="[\d.]+"/, 'footer="6"'),
    },
    {
      name: 'a footer struck through',
      change: (b) => b.edit(summary, /(<oddFooter>&amp;L&amp;8)/, '$1&amp;S'),
    },
    {
      name: 'a point of the chart neither drawn nor joined',
      change: (b) =>
        b.edit(
          chart,
          '<c:xVal>',
          '<c:dPt><c:idx val="0"/><c:spPr><a:noFill/><a:ln><a:noFill/></a:ln></c:spPr></c:dPt><c:xVal>',
        ),
    },
    {
      name: 'numbers of an axis far apart',
      change: (b) => b.edit(chart, '</c:valAx>', '<c:majorUnit val="1000"/></c:valAx>'),
    },
    {
      name: 'fewer stored values of the chart counted than there are',
      change: (b) => b.edit(chart, /<c:ptCount val="\d+"\/>/, '<c:ptCount val="2"/>'),
    },
    {
      name: 'stored values of the chart by another format',
      change: (b) => b.edit(chart, /<c:formatCode>[^<]*/, '<c:formatCode>&quot;9&quot;0'),
    },
    {
      name: 'styles listed as something else',
      change: (b) => b.edit(types, /(PartName="\/xl\/styles.xml" ContentType=")[^"]*/, '$1application/xml'),
    },
    {
      name: 'the usual font one of signs',
      change: (b) => b.edit(styles, /(<fonts[^>]*><font>.*?<name val=")[^"]*/s, '$1Wingdings'),
    },
    {
      name: 'a font without a size',
      change: (b) => {
        const added = b.addTo('fonts', '<font><color rgb="FF1F2933"/><name val="Calibri"/></font>')
        return b.restyle('Summary', figure.address, (xf) => xf.replace(/fontId="\d+"/, `fontId="${added}"`))
      },
    },
  ]
}
