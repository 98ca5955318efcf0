import { attr, child, children, isOn, type XmlNode } from './xml-tree.js'

/** What decides how a sheet is printed, in words. Sizes and fonts of headers are left out: programs write them differently. */
export function pageOf(tree: XmlNode | undefined): Map<string, string> {
  const setup = child(tree, 'pageSetup')
  const fits = isOn(attr(child(child(tree, 'sheetPr'), 'pageSetUpPr'), 'fitToPage'))
  const margins = child(tree, 'pageMargins')
  const options = child(tree, 'printOptions')
  const headers = child(tree, 'headerFooter')
  const text = (name: string) => plainHeader(child(headers, name)?.text ?? '')
  const scale = Number(attr(setup, 'scale') ?? 100)
  const pages = (name: string) => {
    const count = attr(setup, name) ?? '1'
    return count === '0' ? 'any number of pages' : count === '1' ? '1 page' : `${count} pages`
  }
  return new Map([
    ['orientation', attr(setup, 'orientation') ?? 'default'],
    ['paper', paperOf(setup)],
    ['scale', fits ? `fitted to ${pages('fitToWidth')} wide and ${pages('fitToHeight')} high` : `${scale} %`],
    [
      'draft or black and white',
      isOn(attr(setup, 'draft')) || isOn(attr(setup, 'blackAndWhite')) ? 'yes' : 'no',
    ],
    ...['left', 'right', 'top', 'bottom'].map((side): [string, string] => [
      `${side} margin`,
      Number(attr(margins, side) ?? 0.7).toFixed(1),
    ]),
    ['header or footer over the cells', isOver(margins) ? 'yes' : 'no'],
    [
      'row numbers or grid lines printed',
      isOn(attr(options, 'headings')) || isOn(attr(options, 'gridLines')) ? 'yes' : 'no',
    ],
    ['errors printed as', attr(setup, 'errors') ?? 'displayed'],
    ['order of the pages', attr(setup, 'pageOrder') ?? 'downThenOver'],
    [
      'number of the first page',
      isOn(attr(setup, 'useFirstPageNumber')) ? (attr(setup, 'firstPageNumber') ?? '1') : 'automatic',
    ],
    ['copies', attr(setup, 'copies') ?? '1'],
    ['page breaks', breaks(tree)],
    ['format of header and footer', headerLook(headers)],
    ['header', text('oddHeader')],
    ['footer', text('oddFooter')],
    [
      'header and footer of the first page',
      isOn(attr(headers, 'differentFirst')) ? text('firstHeader') + text('firstFooter') : 'as on other pages',
    ],
    [
      'header and footer of even pages',
      isOn(attr(headers, 'differentOddEven')) ? text('evenHeader') + text('evenFooter') : 'as on other pages',
    ],
  ])
}

/** Paper by its number, and by its size where that is given too: programs may go by either. */
const paperOf = (setup: XmlNode | undefined): string =>
  [attr(setup, 'paperSize') ?? 'default', attr(setup, 'paperWidth'), attr(setup, 'paperHeight')]
    .filter((text) => text !== undefined)
    .join(' × ')

/** Whether header or footer stand farther into the page than the cells begin, by more than a program's rounding. Inches. */
const isOver = (margins: XmlNode | undefined): boolean =>
  (
    [
      ['header', 'top'],
      ['footer', 'bottom'],
    ] as const
  ).some(([text, cells]) => Number(attr(margins, text) ?? 0.3) > Number(attr(margins, cells) ?? 0.75) + OVER)
const OVER = 0.2

/** Page breaks set by hand: rows, then columns. */
const breaks = (tree: XmlNode | undefined): string =>
  ['rowBreaks', 'colBreaks']
    .flatMap((name) => children(child(tree, name), 'brk'))
    .filter((one) => isOn(attr(one, 'man')))
    .map((one) => attr(one, 'id') ?? '')
    .join(', ') || 'none'

/** A header's text with its codes of place and number, without those of size, font and style. */
const plainHeader = (text: string): string =>
  text
    .replace(/&"[^"]*"|&K[0-9A-Fa-f]{6}|&\d+|&[BIUESXY]/g, '')
    .replace(/\s+/g, ' ')
    .trim()

/** Codes in headers that hide or blow up what they say: text too small or too large to be a footer, colours, fonts of symbols. */
function headerLook(headers: XmlNode | undefined): string {
  const texts = (headers?.children ?? []).map(({ text }) => text.replaceAll('&&', ''))
  const codes = texts.flatMap((text) => text.match(/&"[^"]*"|&K[0-9A-Fa-f+-]{5,6}|&\d+|&[SXY]/g) ?? [])
  return codes.filter(isOddCode).join(' ') || 'plain'
}

function isOddCode(code: string): boolean {
  if (code.startsWith('&K')) return !/^&K(000000|01\+000)$/.test(code)
  if (code.startsWith('&"')) return /dings|symbol|barcode|code ?(39|128)/i.test(code)
  // Struck through, above or below the line.
  if (/^&[SXY]$/.test(code)) return true
  const size = Number(code.slice(1))
  return size < HEADER_POINTS.least || size > HEADER_POINTS.most
}
const HEADER_POINTS = { least: 6, most: 16 }
