import { at, attr, children, isOn, type XmlNode } from './xml-tree.js'

/** A colour as six hex digits in capitals; `auto` where the program chooses. */
export type Colour = string

/**
 * Colours of a theme in the order in which cells count them (ECMA-376 part 1, 18.8.3), with what spreadsheet programs take where a file has no
 * theme: those of Office from 2007 on (values from memory).
 */
const THEME = {
  lt1: 'FFFFFF',
  dk1: '000000',
  lt2: 'EEECE1',
  dk2: '1F497D',
  accent1: '4F81BD',
  accent2: 'C0504D',
  accent3: '9BBB59',
  accent4: '8064A2',
  accent5: '4BACC6',
  accent6: 'F79646',
  hlink: '0000FF',
  folHlink: '800080',
} as const
/** The palette where a file has none of its own (18.8.27, values from memory): the first eight twice, then the others. */
const FIRST = ['000000', 'FFFFFF', 'FF0000', '00FF00', '0000FF', 'FFFF00', 'FF00FF', '00FFFF']
const OTHERS =
  '800000 008000 000080 808000 800080 008080 C0C0C0 808080 9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF 000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF 00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 003366 339966 003300 333300 993300 993366 333399 333333'
const PALETTE = [...FIRST, ...FIRST, ...OTHERS.split(' ')]

/** What styles take colours from: the theme's, in the order cells count them, and the palette's. */
export interface Colours {
  readonly theme: readonly Colour[]
  readonly palette: readonly Colour[]
}

/** Colours of a theme part, in the order cells count them. */
export function themeColours(theme: XmlNode | undefined): Colour[] {
  const scheme = at(theme, 'themeElements', 'clrScheme')
  return Object.entries(THEME).map(([name, usual]) => {
    const colour = at(scheme, name)?.children[0]
    return colour ? drawn(colour) : usual
  })
}

/** A file's own palette; else the usual one. */
export function paletteColours(styles: XmlNode | undefined): readonly Colour[] {
  const own = children(at(styles, 'colors', 'indexedColors'), 'rgbColor')
  if (own.length === 0) return PALETTE
  return own.map((one) => (attr(one, 'rgb') ?? '').slice(-6).toUpperCase())
}

/** What a colour element of a style comes to. */
export function colourOf(node: XmlNode | undefined, { theme, palette }: Colours): Colour {
  if (!node || isOn(attr(node, 'auto'))) return 'auto'
  const tint = Number(attr(node, 'tint') ?? 0)
  const mark = tint === 0 ? '' : ` tint ${tint.toFixed(2)}`
  const rgb = attr(node, 'rgb')
  if (rgb !== undefined) return rgb.slice(-6).toUpperCase() + mark
  const number = attr(node, 'theme')
  if (number !== undefined) return (theme[Number(number)] ?? `theme ${number}`) + mark
  const index = Number(attr(node, 'indexed') ?? TEXT)
  if (index === TEXT) return 'auto'
  return (index === GROUND ? PAPER : (palette[index] ?? `palette ${index}`)) + mark
}

/** Numbers of the palette for the system's text and ground (18.8.27). */
const TEXT = 64
const GROUND = 65
const PAPER = 'FFFFFF'

/** Colours of the system in a drawing or theme, whatever a file says they last were. */
const OF_SYSTEM: Readonly<Record<string, Colour>> = { windowText: '000000', window: PAPER }

/** What a colour element of a drawing comes to, with what changes it. */
function drawn(node: XmlNode | undefined): Colour {
  const value = attr(node, 'val') ?? 'auto'
  const base = OF_SYSTEM[value] ?? (attr(node, 'lastClr') ?? value).toUpperCase()
  const changes = (node?.children ?? []).map((one) => ` ${one.name} ${attr(one, 'val') ?? ''}`)
  return base + changes.join('')
}

/** Colour in a drawing: of the first solid fill below an element; `none` where it says there is none. */
export function drawnColour(node: XmlNode | undefined): Colour | undefined {
  for (const one of node?.children ?? []) {
    if (one.name === 'noFill') return 'none'
    if (one.name === 'solidFill') return drawn(one.children[0])
    if (one.name === 'gradFill' || one.name === 'pattFill' || one.name === 'blipFill') return one.name
  }
  return undefined
}

/** Whether a colour is so light that it is hardly seen on paper. */
export function isLight(colour: Colour): boolean {
  if (!/^[0-9A-F]{6}$/.test(colour)) return colour !== 'auto' && colour !== 'none'
  const [red, green, blue] = [0, 2, 4].map((i) => Number.parseInt(colour.slice(i, i + 2), 16) / 255)
  return 0.3 * (red ?? 0) + 0.59 * (green ?? 0) + 0.11 * (blue ?? 0) > LIGHT
}
const LIGHT = 0.75

/**
 * Contrast of a text with its ground, 1 to 21 (WCAG 2.2, relative luminance); undefined where a colour is not known. A text
 * without a colour is black, a ground without one white.
 */
export function contrast(text: Colour, ground: Colour): number | undefined {
  const [a, b] = [luminance(text === 'auto' ? '000000' : text), luminance(plainGround(ground))]
  if (a === undefined || b === undefined) return undefined
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}

const plainGround = (ground: Colour): Colour => (ground === 'none' || ground === 'auto' ? PAPER : ground)

/** @returns undefined for what is no plain colour, such as a pattern */
function luminance(colour: Colour): number | undefined {
  const [, hex, tint = '0'] = /^([0-9A-F]{6})(?: tint (-?[\d.]+))?$/.exec(colour) ?? []
  if (hex === undefined) return undefined
  const light = Number(tint)
  const parts = [0, 2, 4].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    const tinted = light < 0 ? part * (1 + light) : part + (1 - part) * light
    return tinted <= 0.04045 ? tinted / 12.92 : ((tinted + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * (parts[0] as number) + 0.7152 * (parts[1] as number) + 0.0722 * (parts[2] as number)
}
