import { type Colour, type Colours, colourOf, paletteColours, themeColours } from './colours.js'
import type { Package } from './package.js'
import { unusualInStyles } from './usual-elements.js'
import { at, attr, child, children, isOn, type XmlNode } from './xml-tree.js'

export interface FontLook {
  readonly name: string | undefined
  readonly size: number | undefined
  readonly colour: Colour
  readonly bold: boolean
  readonly italic: boolean
  readonly struck: boolean
  readonly raised: string
  /** `none`, or the kind of line below the letters. */
  readonly underlined: string
  /** Letters drawn as outlines or with a shadow. */
  readonly hollow: boolean
  /** Shown in the signs of a symbol font, whatever its name. */
  readonly symbols: boolean
}

/** How a cell looks: everything of its style that decides what is read in it. */
export interface CellLook {
  readonly font: FontLook
  readonly fill: Colour
  readonly format: string
  readonly horizontal: string
  readonly vertical: string
  readonly wrapped: boolean
  readonly shrunk: boolean
  readonly rotation: number
  readonly indent: number
  readonly fromRight: boolean
  /** Lines of the border from corner to corner. */
  readonly crossed: boolean
  /** Edges drawn with a thick or double line. */
  readonly heavyEdges: string
  /** The formula is not shown when the cell is chosen, once the sheet is protected. */
  readonly formulaHidden: boolean
  /** Whatever is typed into the cell, or its formula once it is looked at, stays a text. */
  readonly takenAsText: boolean
}

/** How a conditional format changes a cell; only what it sets. */
export interface ConditionLook {
  readonly colour?: Colour
  readonly fill?: Colour
  readonly bold?: boolean
  readonly struck?: boolean
  readonly format?: string
}

export interface Styles {
  readonly cells: readonly CellLook[]
  readonly conditions: readonly ConditionLook[]
  readonly theme: Theme
  /** Points of the font that widths of columns are counted in. */
  readonly usualSize: number
  /** What the part holds beside what is usual; `none`. */
  readonly unusual: string
}

/** What a theme gives: its colours in the order cells count them, and the names of its fonts. */
export interface Theme {
  readonly colours: Colours
  /** `minor` and `major` → name. */
  readonly fonts: ReadonlyMap<string, string>
}

/** Built-in formats that summaries use (ECMA-376 part 1, 18.8.30); others by their number. */
const BUILT_IN: Readonly<Record<string, string>> = {
  0: 'General',
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  14: 'mm-dd-yy',
  22: 'm/d/yy h:mm',
  37: '#,##0 ;(#,##0)',
  39: '#,##0.00;(#,##0.00)',
  49: '@',
}

export function readStyles(from: Package): Styles {
  const tree = from.tree(from.linked(from.workbookPath, 'styles') ?? '')
  const theme = themeOf(from.tree(from.linked(from.workbookPath, 'theme') ?? ''), tree)
  const codes = children(child(tree, 'numFmts'), 'numFmt')
  const formats = new Map(codes.map((one) => [attr(one, 'numFmtId') ?? '', attr(one, 'formatCode') ?? '']))
  const fonts = children(child(tree, 'fonts'), 'font').map((one) => fontOf(one, theme))
  const fills = children(child(tree, 'fills'), 'fill').map((one) => fillOf(one, theme.colours))
  const borders = children(child(tree, 'borders'), 'border')
  const crossed = borders.map(isCrossed)
  const heavy = borders.map(heavyEdgesOf)
  const cells = children(child(tree, 'cellXfs'), 'xf').map((xf): CellLook => {
    const id = attr(xf, 'numFmtId') ?? '0'
    const alignment = child(xf, 'alignment')
    return {
      font: fonts[Number(attr(xf, 'fontId') ?? 0)] ?? fontOf(undefined, theme),
      fill: fills[Number(attr(xf, 'fillId') ?? 0)] ?? 'none',
      format: formats.get(id) ?? BUILT_IN[id] ?? `format ${id}`,
      horizontal: attr(alignment, 'horizontal') ?? 'general',
      vertical: attr(alignment, 'vertical') ?? 'bottom',
      wrapped: isOn(attr(alignment, 'wrapText')),
      shrunk: isOn(attr(alignment, 'shrinkToFit')),
      rotation: Number(attr(alignment, 'textRotation') ?? 0),
      indent: Number(attr(alignment, 'indent') ?? 0),
      fromRight: attr(alignment, 'readingOrder') === '2',
      crossed: crossed[Number(attr(xf, 'borderId') ?? 0)] ?? false,
      heavyEdges: heavy[Number(attr(xf, 'borderId') ?? 0)] ?? 'none',
      formulaHidden: isOn(attr(child(xf, 'protection'), 'hidden')),
      takenAsText: isOn(attr(xf, 'quotePrefix')),
    }
  })
  const [usual] = children(child(tree, 'cellStyleXfs'), 'xf')
  const usualFont = fonts[Number(attr(usual, 'fontId') ?? 0)]
  return {
    theme,
    unusual:
      formats.size < codes.length
        ? 'two number formats of one number'
        : isOfSigns(usualFont)
          ? `the usual font ${usualFont?.name}`
          : unusualInStyles(tree),
    cells,
    usualSize: usualFont?.size ?? USUAL_SIZE,
    conditions: children(child(tree, 'dxfs'), 'dxf').map((one) => conditionOf(one, theme.colours)),
  }
}

/** A font of pictures or bars, which rows, columns and empty cells would be shown in. */
const isOfSigns = (font: FontLook | undefined): boolean =>
  font !== undefined && (font.symbols || /dings|symbol|barcode|code ?(39|128)/i.test(font.name ?? ''))

/** Points, where a file does not say. */
const USUAL_SIZE = 11

/** Edges whose line is thick enough to cover what stands beside it. Programs draw thin lines as they like. */
function heavyEdgesOf(border: XmlNode): string {
  const edges = ['left', 'start', 'right', 'end', 'top', 'bottom'].filter((edge) =>
    /^(thick|double)$/.test(attr(child(border, edge), 'style') ?? ''),
  )
  return edges.join(', ').replace('start', 'left').replace('end', 'right') || 'none'
}

function isCrossed(border: XmlNode): boolean {
  const line = attr(child(border, 'diagonal'), 'style') ?? 'none'
  return line !== 'none' && (isOn(attr(border, 'diagonalUp')) || isOn(attr(border, 'diagonalDown')))
}

function themeOf(tree: XmlNode | undefined, styles: XmlNode | undefined): Theme {
  const fonts = at(tree, 'themeElements', 'fontScheme')
  return {
    colours: { theme: themeColours(tree), palette: paletteColours(styles) },
    fonts: new Map(
      ['minor', 'major'].flatMap((kind): [string, string][] => {
        const name = attr(at(fonts, `${kind}Font`, 'latin'), 'typeface')
        return name ? [[kind, name]] : []
      }),
    ),
  }
}

/** Font of a style, or of a piece of a text. */
export function fontOf(font: XmlNode | undefined, theme: Theme): FontLook {
  const flag = (name: string) => {
    const one = child(font, name)
    return one !== undefined && isOn(attr(one, 'val'), true)
  }
  const size = attr(child(font, 'sz'), 'val')
  return {
    name: nameOf(
      theme.fonts.get(attr(child(font, 'scheme'), 'val') ?? ''),
      attr(child(font, 'name') ?? child(font, 'rFont'), 'val'),
    ),
    size: size === undefined ? undefined : Number(size),
    colour: colourOf(child(font, 'color'), theme.colours),
    bold: flag('b'),
    italic: flag('i'),
    struck: flag('strike'),
    raised: attr(child(font, 'vertAlign'), 'val') ?? 'baseline',
    underlined: child(font, 'u') ? (attr(child(font, 'u'), 'val') ?? 'single') : 'none',
    hollow: flag('outline') || flag('shadow'),
    symbols: attr(child(font, 'charset'), 'val') === SYMBOLS,
  }
}

/** The name the theme gives a font, and its own: where they are not the same, programs take the one or the other. */
const nameOf = (themed: string | undefined, own: string | undefined): string | undefined =>
  themed !== undefined && own !== undefined && themed.toLowerCase() !== own.toLowerCase()
    ? `${own} or ${themed}`
    : (themed ?? own)

/** The character set of symbol fonts (ECMA-376 part 1, 18.4.1). */
const SYMBOLS = '2'

function fillOf(fill: XmlNode, theme: Colours): Colour {
  const pattern = child(fill, 'patternFill')
  const type = attr(pattern, 'patternType') ?? 'none'
  if (!pattern) return fill.children.length > 0 ? 'gradient' : 'none'
  if (type === 'none') return 'none'
  const colour = colourOf(child(pattern, 'fgColor'), theme)
  return type === 'solid' ? colour : `${type} ${colour}`
}

function conditionOf(dxf: XmlNode, theme: Colours): ConditionLook {
  const font = child(dxf, 'font')
  const colour = child(font, 'color')
  // In conditional formats the background is the colour that is seen; some programs write the foreground too.
  const fill = at(dxf, 'fill', 'patternFill')
  const shown = child(fill, 'bgColor') ?? child(fill, 'fgColor')
  const format = attr(child(dxf, 'numFmt'), 'formatCode')
  const pattern = attr(fill, 'patternType') ?? 'solid'
  const over =
    pattern === 'solid' || pattern === 'none' ? '' : ` ${pattern} ${colourOf(child(fill, 'fgColor'), theme)}`
  return {
    ...(colour && { colour: colourOf(colour, theme) }),
    ...(shown && { fill: colourOf(shown, theme) + over }),
    ...(at(dxf, 'fill', 'gradientFill') && { fill: 'gradient' }),
    ...(child(font, 'b') && isOn(attr(child(font, 'b'), 'val'), true) && { bold: true }),
    ...(child(font, 'strike') && isOn(attr(child(font, 'strike'), 'val'), true) && { struck: true }),
    ...(format !== undefined && { format }),
  }
}
