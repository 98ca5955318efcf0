import type { PackageText } from '../package'
import type { Marks, Tampering } from './landmarks'

/** One property of a font each, so that every one is proven by itself. */
const fontChanges: readonly (readonly [string, (font: string) => string])[] = [
  ['white text', (font) => font.replace(/<color [^>]*>/, '<color rgb="FFFFFFFF"/>')],
  ["text in the theme's background colour", (font) => font.replace(/<color [^>]*>/, '<color theme="0"/>')],
  ['text 1 point high', (font) => font.replace(/<sz [^>]*>/, '<sz val="1"/>')],
  ['struck through', (font) => font.replace('<sz', '<strike/><sz')],
  ['letters as pictures', (font) => font.replace(/<name [^>]*>/, '<name val="Wingdings"/>')],
  ['no longer bold', (font) => font.replace('<b/>', '')],
  ['text raised', (font) => font.replace('<sz', '<vertAlign val="superscript"/><sz')],
  ['underlined as a link', (font) => font.replace('<sz', '<u/><sz')],
  ['letters with a shadow', (font) => font.replace('<sz', '<shadow/><sz')],
  ['letters of a symbol font by their set', (font) => font.replace('<name', '<charset val="2"/><name')],
]
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
export function looks({ verdict, figure }: Marks): Tampering[] {
  const cells = { verdict: verdict.address, figure: figure.address }
  return Object.entries(cells).flatMap(([what, address]) => [
    ...fontChanges.map(([name, change]) => ({
      name: `${name}: ${what}`,
      change: (b: PackageText) => b.refont('Summary', address, change),
    })),
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
