import { at, attr, isOn, type XmlNode } from './xml-tree.js'

/** A colour as six hex digits in capitals; `auto` where the program chooses. */
export type Colour = string

/** Order in which cells count the theme's colours (ECMA-376 part 1, 18.8.3). */
const THEME = [
  'lt1',
  'dk1',
  'lt2',
  'dk2',
  'accent1',
  'accent2',
  'accent3',
  'accent4',
  'accent5',
  'accent6',
  'hlink',
  'folHlink',
]
/** The first colours of the fixed palette (18.8.27); a summary uses none. */
const INDEXED = ['000000', 'FFFFFF', 'FF0000', '00FF00', '0000FF', 'FFFF00', 'FF00FF', '00FFFF']

/** Colours of a theme part, in the order cells count them. */
export function themeColours(theme: XmlNode | undefined): Colour[] {
  const scheme = at(theme, 'themeElements', 'clrScheme')
  return THEME.map((name) => {
    const entry = at(scheme, name)?.children[0]
    return (attr(entry, 'lastClr') ?? attr(entry, 'val') ?? 'auto').toUpperCase()
  })
}

/** What a colour element of a style comes to. */
export function colourOf(node: XmlNode | undefined, theme: readonly Colour[]): Colour {
  if (!node || isOn(attr(node, 'auto'))) return 'auto'
  const tint = Number(attr(node, 'tint') ?? 0)
  const mark = tint === 0 ? '' : ` tint ${tint.toFixed(2)}`
  const rgb = attr(node, 'rgb')
  if (rgb !== undefined) return rgb.slice(-6).toUpperCase() + mark
  const number = attr(node, 'theme')
  if (number !== undefined) return (theme[Number(number)] ?? `theme ${number}`) + mark
  const index = Number(attr(node, 'indexed') ?? 64)
  if (index >= 64) return 'auto'
  return (INDEXED[index % 8 === index ? index : index - 8] ?? `palette ${index}`) + mark
}

/** Colour in a drawing: of the first solid fill below an element; `none` where it says there is none. */
export function drawnColour(node: XmlNode | undefined): Colour | undefined {
  for (const one of node?.children ?? []) {
    if (one.name === 'noFill') return 'none'
    if (one.name === 'solidFill') {
      const [colour] = one.children
      return (attr(colour, 'lastClr') ?? attr(colour, 'val') ?? 'auto').toUpperCase()
    }
  }
  return undefined
}
