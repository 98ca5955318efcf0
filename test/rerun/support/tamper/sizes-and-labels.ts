import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import type { HiddenChange } from './unseen'

const styles = 'xl/styles.xml'
const chart = 'xl/charts/chart1.xml'
const LABELS = '<c:dLbls><c:showVal val="1"/></c:dLbls>'

/** Sizes, places in a cell, labels of a chart and comments, each stated where programs differ in what they read. */
export function sizesAndLabels(book: PackageText): HiddenChange[] {
  const { summary, figure } = landmarks(book)
  const xfOf = (b: PackageText, address: string) => {
    const style = Number(new RegExp(`<c r="${address}" s="(\\d+)"`).exec(b.text(summary))?.[1] ?? 0)
    const block = /<cellXfs[^>]*>(.*?)<\/cellXfs>/s.exec(b.text(styles))?.[1] ?? ''
    return block.match(/<xf\b[^>]*?(?:\/>|>.*?<\/xf>)/gs)?.[style] ?? ''
  }
  const fonted =
    (change: (font: string) => string): HiddenChange['change'] =>
    (b) => {
      const index = Number(/fontId="(\d+)"/.exec(xfOf(b, figure.address))?.[1])
      const fonts = /<fonts[^>]*>(.*?)<\/fonts>/s.exec(b.text(styles))?.[1] ?? ''
      const font = fonts.match(/<font>.*?<\/font>|<font\/>/gs)?.[index] ?? '<font></font>'
      const added = b.addTo('fonts', change(font))
      return b.restyle('Summary', figure.address, (xf) => xf.replace(/fontId="\d+"/, `fontId="${added}"`))
    }
  /** The last row that has a height of its own: the cautions, several lines of text. */
  const last = Number([...book.text(summary).matchAll(/<row r="(\d+)"[^>]* customHeight="1"/g)].at(-1)?.[1])
  return [
    {
      name: 'empty rows under the chart made low',
      change: (b) => b.edit(summary, 'defaultRowHeight="15"', 'defaultRowHeight="3" customHeight="1"'),
    },
    {
      name: 'an empty row that pushes the others off the page',
      change: (b) => b.edit(summary, '<row r="20" ', '<row r="19" ht="390" customHeight="1"/><row r="20" '),
    },
    {
      name: 'a column twice as wide',
      change: (b) =>
        b.edit(summary, /(<col min="1" max="1" width=")(\d+)/, (_, a = '', w = '') => a + 2 * Number(w)),
    },
    {
      name: 'a row three times as high',
      change: (b) =>
        b.edit(
          summary,
          new RegExp(`(<row r="${last}"[^>]* ht=")(\\d+)`),
          (_, a = '', h = '') => a + 3 * Number(h),
        ),
    },
    {
      name: 'the font that widths are counted in',
      change: (b) => b.edit(styles, /(<fonts[^>]*><font><sz val=")11"/, (_, a = '') => `${a}22"`),
    },
    {
      name: 'text at the foot of its cell',
      change: (b) =>
        b.restyle('Summary', `A${last}`, (xf) => xf.replace(/vertical="\w+"/, 'vertical="bottom"')),
    },
    {
      name: 'a formula that stays a text',
      change: (b) => b.restyle('Summary', figure.address, (xf) => xf.replace('<xf ', '<xf quotePrefix="1" ')),
    },
    {
      name: 'two positions of the letters in one font',
      change: fonted((font) =>
        font.replace('</font>', '<vertAlign val="baseline"/><vertAlign val="subscript"/></font>'),
      ),
    },
    {
      name: 'two sizes in one font',
      change: fonted((font) => font.replace('</font>', '<sz val="2"/></font>')),
    },
    {
      name: 'values at the points of a series',
      change: (b) => b.edit(chart, '<c:xVal>', `${LABELS}<c:xVal>`),
    },
    {
      name: 'values at the points of all series',
      change: (b) => b.edit(chart, '<c:axId ', `${LABELS}<c:axId `),
    },
    {
      name: 'name of a series with texts at its points',
      change: (b) => b.edit(chart, /<c:v>limit: [^<]*/, '<c:v>limit: n50 1.5 1/h at 50 Pa'),
    },
    {
      name: 'two starts of one axis',
      change: (b) => b.edit(chart, /(<c:min val="[^"]*"\/>)/, (_, min = '') => `${min}<c:min val="45"/>`),
    },
    {
      name: 'a comment of the newer kind alone',
      change: (b) => {
        b.set(
          'xl/threadedComments/threadedComment1.xml',
          '<ThreadedComments xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><threadedComment ref="B12" dT="2026-10-20T00:00:00" personId="{1}" id="{2}"><text>accepted</text></threadedComment></ThreadedComments>',
        )
        b.relate(summary, 'threadedComment', '../threadedComments/threadedComment1.xml')
      },
    },
  ]
}
