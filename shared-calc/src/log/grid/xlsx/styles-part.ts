import type { Attributes, XmlEvents } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import type { Faint } from '../grid.js'
import { lookOf, type Shade, shadeOf } from '../grid.js'
import { type NamedColour, paletteColour } from './colours.js'
import { isOn } from './rich-text.js'

/** What the reader needs of a cell's style: its number format, whether its font is struck through, how it stands out, its ground. */
export interface CellStyle {
  format?: string
  struck: boolean
  faint?: Faint
  ground?: NamedColour
}

/** Built-in formats (ECMA-376 part 1, 18.8.30); fractions and text are left out: nothing is read from them. */
const BUILT_IN: Record<number, string> = {
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  14: 'mm-dd-yy',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm AM/PM',
  19: 'h:mm:ss AM/PM',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'm/d/yy h:mm',
  37: '#,##0 ;(#,##0)',
  38: '#,##0 ;[Red](#,##0)',
  39: '#,##0.00 ;(#,##0.00)',
  40: '#,##0.00 ;[Red](#,##0.00)',
  45: 'mm:ss',
  46: '[h]:mm:ss',
  47: 'mm:ss.0',
  48: '##0.0E+0',
}

/** Reads xl/styles.xml into one entry per cell format. */
export function stylesEvents(styles: CellStyle[]): XmlEvents {
  const formats = new Map<number, string>()
  const fonts: Font[] = []
  const fills: Fill[] = []
  let section = ''
  return {
    open(name, attributes) {
      if (SECTIONS.has(name)) section = name
      else if (name === 'numFmt')
        formats.set(Number(attributes.numFmtId), shortCode(attributes.formatCode ?? ''))
      else if (section === 'fonts') openFont(fonts, name, attributes)
      else if (section === 'fills') openFill(fills, name, attributes)
      else if (section === 'cellXfs' && name === 'xf') {
        if (styles.length >= LIMITS.styles)
          refuse('too-many-cells', 'the workbook holds too many cell formats')
        const id = Number(attributes.numFmtId ?? 0)
        const format = formats.get(id) ?? BUILT_IN[id]
        const font = fonts[Number(attributes.fontId ?? 0)]
        const fill = fills[Number(attributes.fillId ?? 0)]
        const faint = lookOf(font?.shade, fill?.shade)
        styles.push({
          ...(format === undefined ? {} : { format }),
          struck: font?.struck ?? false,
          ...(faint ? { faint } : {}),
          ...(fill?.solid && fill.colour && { ground: fill.colour }),
        })
      }
    },
    text() {},
    close(name) {
      if (name === section) section = ''
    },
  }
}

interface Font {
  struck: boolean
  shade?: Shade
}

interface Fill {
  solid: boolean
  shade?: Shade
  colour?: NamedColour
}

const SECTIONS = new Set(['fonts', 'fills', 'cellXfs', 'cellStyleXfs', 'dxfs'])

/** The foreground of a solid pattern is what one sees (ECMA-376 part 1, 18.8.32). */
function openFill(fills: Fill[], name: string, attributes: Attributes): void {
  const fill = fills.at(-1)
  if (name === 'fill') fills.push({ solid: false })
  else if (fill && name === 'patternFill') fill.solid = attributes.patternType === 'solid'
  else if (fill && name === 'fgColor') {
    fill.shade = shadeIn(attributes)
    const { rgb, indexed, theme, tint } = attributes
    fill.colour = {
      ...(rgb !== undefined && { rgb }),
      ...(indexed !== undefined && { indexed }),
      ...(theme !== undefined && { theme }),
      ...(tint !== undefined && { tint }),
    }
  }
}

function openFont(fonts: Font[], name: string, attributes: Attributes): void {
  const font = fonts.at(-1)
  if (name === 'font') fonts.push({ struck: false })
  else if (font && name === 'strike') font.struck = isOn(attributes)
  else if (font && name === 'color') font.shade = shadeIn(attributes)
}

/** Grey or a colour by its own figures, by its place in the old palette, as a tint of black or white, or as an accent of the theme. */
function shadeIn({ rgb, indexed, theme, tint = '0' }: Attributes): Shade {
  if (rgb !== undefined) return shadeOf(rgb)
  if (indexed !== undefined) return shadeOf(paletteColour(indexed) ?? '')
  const lighter = Number(tint)
  if ((theme === '0' && lighter <= -0.1 && lighter >= -0.6) || (theme === '1' && lighter >= 0.4))
    return 'grey'
  return Number(theme) >= FIRST_ACCENT ? 'colour' : undefined
}

/** Place of the first accent among the colours of a theme (ECMA-376 part 1, 20.1.6.2). */
const FIRST_ACCENT = 4

function shortCode(code: string): string {
  if (code.length > LIMITS.formatCharacters)
    refuse('damaged-file', `a number format is longer than ${LIMITS.formatCharacters} characters`)
  return code
}
