import type { PackageText } from '../package'
import { landmarks } from './landmarks'
import type { HiddenChange } from './unseen'

const styles = 'xl/styles.xml'
const workbook = 'xl/workbook.xml'
const theme = 'xl/theme/theme1.xml'

/** Fonts, colours, fills, number formats and conditional formats. */
export function otherLooks(book: PackageText): HiddenChange[] {
  const { summary, figure } = landmarks(book)
  const fonted = (xml: string) => (b: PackageText) => {
    const index = b.addTo('fonts', `<font>${xml}</font>`)
    return b.restyle('Summary', figure.address, (xf) => xf.replace(/fontId="\d+"/, `fontId="${index}"`))
  }
  const filled = (xml: string) => (b: PackageText) => {
    const index = b.addTo('fills', `<fill>${xml}</fill>`)
    return b.restyle('Summary', figure.address, (xf) => xf.replace(/fillId="\d+"/, `fillId="${index}"`))
  }
  const formatted =
    (code: string, address = figure.address, sheet = 'Summary') =>
    (b: PackageText) => {
      b.addTo('numFmts', `<numFmt numFmtId="396" formatCode="${code}"/>`)
      return b.restyle(sheet, address, (xf) =>
        xf
          .replace(/ applyNumberFormat="\d"/, '')
          .replace(/numFmtId="\d+"/, 'numFmtId="396" applyNumberFormat="1"'),
      )
    }
  const bordered = (xml: string) => (b: PackageText) => {
    const count =
      (/<borders[^>]*>(.*?)<\/borders>/s.exec(b.text(styles))?.[1] ?? '').match(/<border[ >]/g)?.length ?? 0
    b.edit(styles, '</borders>', `${xml}</borders>`)
    return b.restyle('Summary', figure.address, (xf) =>
      xf
        .replace(/borderId="\d+"/, `borderId="${count}"`)
        .replace(/ applyBorder="\d"/, '')
        .replace('<xf ', '<xf applyBorder="1" '),
    )
  }
  const aligned = (attributes: string) => (b: PackageText) =>
    b.restyle('Summary', figure.address, (xf) =>
      /<alignment/.test(xf)
        ? xf.replace(/<alignment[^>]*\/>/, `<alignment ${attributes}/>`)
        : xf.replace(/\/>$/, `><alignment ${attributes}/></xf>`),
    )
  const palette = (index: number, rgb: string) => (b: PackageText) =>
    b.edit(
      styles,
      '</styleSheet>',
      `<colors><indexedColors>${Array.from({ length: 64 }, (_, i) => `<rgbColor rgb="${i === index ? rgb : '00000000'}"/>`).join('')}</indexedColors></colors></styleSheet>`,
    )
  const F = (color: string) => `<b/><sz val="10"/>${color}<name val="Calibri"/>`
  const dxfLast = (b: PackageText, xml: string) => b.edit(styles, /<dxf>/, () => `<dxf>${xml}</dxf><dxf>`)
  return [
    {
      name: 'palette redefined, text in its black',
      change: (b) => {
        palette(8, '00FFFFFF')(b)
        return fonted(F('<color indexed="8"/>'))(b)
      },
    },
    { name: 'text in the window colour of the system', change: fonted(F('<color indexed="65"/>')) },
    { name: 'text white by theme', change: fonted(F('<color theme="0"/>')) },
    { name: 'text black by theme, tinted to white', change: fonted(F('<color theme="1" tint="0.98"/>')) },
    {
      name: 'theme black a system colour of windows, used',
      change: (b) => {
        b.edit(theme, /<a:dk1>.*?<\/a:dk1>/s, '<a:dk1><a:sysClr val="window" lastClr="000000"/></a:dk1>')
        return fonted(F('<color theme="1"/>'))(b)
      },
    },
    {
      name: 'theme black made light by a change, used',
      change: (b) => {
        b.edit(
          theme,
          /<a:dk1>.*?<\/a:dk1>/s,
          '<a:dk1><a:srgbClr val="000000"><a:lumOff val="100000"/></a:srgbClr></a:dk1>',
        )
        return fonted(F('<color theme="1"/>'))(b)
      },
    },
    {
      name: 'a font said to be of symbols',
      change: fonted('<b/><sz val="10"/><color rgb="FF1F2933"/><name val="Calibri"/><charset val="2"/>'),
    },
    {
      name: 'usual font one point small',
      change: (b) => b.edit(styles, '<font><sz val="11"/>', '<font><sz val="1"/>'),
    },
    {
      name: 'usual font seventy points large',
      change: (b) => b.edit(styles, '<font><sz val="11"/>', '<font><sz val="70"/>'),
    },
    {
      name: 'figure crossed out by lines of its border',
      change: bordered(
        '<border diagonalUp="1" diagonalDown="1"><left/><right/><top/><bottom/><diagonal style="thick"><color rgb="FF1F2933"/></diagonal></border>',
      ),
    },
    {
      name: 'fill of text colour by theme',
      change: filled('<patternFill patternType="solid"><fgColor theme="1"/></patternFill>'),
    },
    {
      name: 'fill of a pattern in palette colours',
      change: filled(
        '<patternFill patternType="darkGrid"><fgColor indexed="8"/><bgColor indexed="9"/></patternFill>',
      ),
    },
    { name: 'digits of another script by the number format', change: formatted('[DBNum1][$-804]0.00') },
    { name: 'words for digits by the number format', change: formatted('[DBNum2]0.00') },
    { name: 'number format with a unit of another size', change: formatted('0.00&quot; ± 0.001&quot;') },
    { name: 'number format with an escaped digit', change: formatted('\\00.00') },
    { name: 'number format that hides by three semicolons', change: formatted(';;;') },
    { name: 'number format in fractions', change: formatted('# ??/??') },
    { name: 'number format as a date', change: formatted('yyyy') },
    { name: 'number format with a comma that divides', change: formatted('0.00,') },
    { name: 'number format by currency of a language', change: formatted('[$1-809]0.00') },
    { name: 'text read from right to left', change: aligned('horizontal="right" readingOrder="2"') },
    { name: 'text turned on its side', change: aligned('textRotation="255"') },
    { name: 'text indented out of its cell', change: aligned('horizontal="right" indent="200"') },
    {
      name: 'a long text wrapped in a low row',
      change: (b) => {
        const row = /<row r="(\d+)"[^>]*><c r="A\1" s="(\d+)" t="s"/.exec(b.text(b.sheet('Summary')))
        return b.restyle('Summary', `A${row?.[1]}`, (xf) =>
          xf.replace(/<alignment[^>]*\/>/, '<alignment vertical="center" wrapText="1"/>'),
        )
      },
    },
    {
      // The conditions of a cell exclude each other: nothing after the one that holds would hold too.
      unseen: true,
      name: 'condition that stops those after it',
      change: (b) =>
        b.edit(
          summary,
          /<cfRule type="expression" dxfId="0" priority="(\d+)"/,
          (_, p = '') => `<cfRule type="expression" dxfId="0" priority="${p}" stopIfTrue="1"`,
        ),
    },
    {
      name: 'issued condition given a gradient',
      change: (b) =>
        b.edit(
          styles,
          /<dxf>/,
          '<dxf><fill><gradientFill degree="90"><stop position="0"><color rgb="FF1F2933"/></stop><stop position="1"><color rgb="FF1F2933"/></stop></gradientFill></fill></dxf><dxf>',
        ),
    },
    {
      name: 'gradient put into the look of an issued condition',
      change: (b) =>
        b.edit(
          styles,
          /<dxf>(.*?)<fill>.*?<\/fill>/s,
          (_, open = '') =>
            `<dxf>${open}<fill><gradientFill degree="90"><stop position="0"><color rgb="FF1F2933"/></stop><stop position="1"><color rgb="FF1F2933"/></stop></gradientFill></fill>`,
        ),
    },
    {
      name: 'pattern put into the look of an issued condition',
      change: (b) =>
        b.edit(
          styles,
          /(<dxf>.*?<patternFill) ?[^>]*>/s,
          (_, open = '') => `${open} patternType="darkGrid"><fgColor rgb="FF1F2933"/>`,
        ),
    },
    {
      name: 'underlined and in italics by an issued condition',
      unseen: true,
      change: (b) => b.edit(styles, /(<dxf><font>)/, (_, open = '') => `${open}<i/><u/>`),
    },
    {
      name: 'a condition of the first ten',
      change: (b) => {
        dxfLast(b, '<font><color rgb="FFFFFFFF"/></font>')
        return b.edit(
          summary,
          '<printOptions',
          `<conditionalFormatting sqref="${figure.address}"><cfRule type="top10" dxfId="0" priority="99" rank="10"/></conditionalFormatting><printOptions`,
        )
      },
    },
    {
      name: 'icons in front of a figure',
      change: (b) =>
        b.edit(
          summary,
          '<printOptions',
          `<conditionalFormatting sqref="${figure.address}"><cfRule type="iconSet" priority="99"><iconSet iconSet="3Symbols"><cfvo type="percent" val="0"/><cfvo type="percent" val="33"/><cfvo type="percent" val="67"/></iconSet></cfRule></conditionalFormatting><printOptions`,
        ),
    },
    {
      name: 'conditional formats not worked out',
      change: (b) => b.edit(summary, '<sheetPr>', '<sheetPr enableFormatConditionsCalculation="0">'),
    },
    {
      name: 'formulas worked out as an older program did',
      change: (b) => b.edit(summary, '<sheetPr>', '<sheetPr transitionEvaluation="1">'),
    },
    {
      name: 'objects of the workbook not shown',
      change: (b) => b.edit(workbook, '<workbookPr ', '<workbookPr showObjects="none" '),
    },
    {
      name: 'cells beside the verdict filled with another colour',
      change: (b) => {
        const index = b.addTo(
          'fills',
          '<fill><patternFill patternType="solid"><fgColor rgb="FF8B0000"/></patternFill></fill>',
        )
        return b.restyle('Summary', 'F12', (xf) =>
          xf
            .replace(/fillId="\d+"/, `fillId="${index}"`)
            .replace(/<xf /, '<xf applyFill="1" ')
            .replace(/applyFill="1" (.*) applyFill="1"/, 'applyFill="1" $1'),
        )
      },
    },
    {
      name: 'style of the figure that of the cell below',
      change: (b) => {
        const t = b.text(summary)
        const below = new RegExp(`<c r="${figure.column}${figure.row + 5}" s="(\\d+)"`).exec(t)?.[1] ?? '1'
        return b.edit(summary, new RegExp(`(<c r="${figure.address}" s=")\\d+`), (_, o = '') => o + below)
      },
    },
  ]
}
