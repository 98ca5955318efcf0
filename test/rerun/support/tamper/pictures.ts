import type { PackageText } from '../package'
import type { HiddenChange } from './unseen'

/** Of a workbook with photos and a logo. */
export function hiddenInPictures(book: PackageText): HiddenChange[] {
  const path =
    Object.keys(book.parts)
      .filter((p) => /drawings\/drawing\d+\.xml$/.test(p))
      .find((p) => book.text(p).includes('<xdr:pic')) ?? 'none'
  const pictures = Object.keys(book.parts).filter((p) => /media\//.test(p))
  const blip = (inner: string) => (b: PackageText) =>
    b.edit(path, /<a:blip ([^>]*?)\/?>(<\/a:blip>)?/, (_, a = '') => `<a:blip ${a}>${inner}</a:blip>`)
  return [
    {
      name: 'picture cropped to a corner',
      change: (b) =>
        b.edit(
          path,
          /(<a:blip .*?(?:\/>|<\/a:blip>))/s,
          (_, x = '') => `${x}<a:srcRect l="90000" t="90000"/>`,
        ),
    },
    {
      name: 'picture turned upside down',
      change: (b) => b.edit(path, /<xdr:spPr><a:prstGeom/, `<xdr:spPr><a:xfrm rot="10800000"/><a:prstGeom`),
    },
    {
      name: 'picture mirrored',
      change: (b) => b.edit(path, /<xdr:spPr><a:prstGeom/, `<xdr:spPr><a:xfrm flipH="1"/><a:prstGeom`),
    },
    { name: 'picture made pale', change: blip('<a:lum bright="100000"/>') },
    { name: 'picture transparent', change: blip('<a:alphaModFix amt="0"/>') },
    { name: 'picture in two colours', change: blip('<a:biLevel thresh="50000"/>') },
    {
      name: 'another picture for newer programs',
      change: (b) => {
        b.set('xl/media/other.svg', '<svg xmlns="http://www.w3.org/2000/svg"/>')
        const rels = path.replace(/([^/]+)$/, '_rels/$1.rels')
        b.edit(
          rels,
          '</Relationships>',
          '<Relationship Id="rIdSvg" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/image" Target="../media/other.svg"/></Relationships>',
        )
        return blip(
          '<a:extLst><a:ext uri="{96DAC541-7B7A-43D3-8B79-37D633B846F1}"><asvg:svgBlip xmlns:asvg="http://schemas.microsoft.com/office/drawing/2016/SVG/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:embed="rIdSvg"/></a:ext></a:extLst>',
        )(b)
      },
    },
    {
      name: 'picture taken from a web address',
      change: (b) => {
        const rels = path.replace(/([^/]+)$/, '_rels/$1.rels')
        b.edit(
          rels,
          '</Relationships>',
          '<Relationship Id="rIdFar" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/image" Target="https://example.invalid/a.png" TargetMode="External"/></Relationships>',
        )
        return b.edit(path, /(<a:blip [^>]*)r:embed="/, (_, o = '') => `${o}r:link="rIdFar" r:embed="`)
      },
    },
    {
      name: 'pictures exchanged',
      change: (b) => {
        const [x = '', y = ''] = [pictures.at(0), pictures.at(-1)]
        const [one, two] = [b.parts[x], b.parts[y]]
        if (!one || !two || one.length === two.length) throw new Error('the workbook has no two pictures')
        b.parts[x] = two
        b.parts[y] = one
      },
    },
    {
      name: 'picture covered by its own fill',
      change: (b) => b.edit(path, /<a:prstGeom prst="rect">/, '<a:prstGeom prst="line">'),
    },
    {
      name: 'another text for the picture',
      change: (b) => b.edit(path, /descr="[^"]*"/, 'descr="No leak found"'),
    },
  ]
}
