import type { Attributes, XmlEvents } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import type { Faint } from '../grid.js'
import { lookOf, type Shade, shadeOf } from '../grid.js'
import { addPart, addText, NUMBER_STYLES, type NumberStyle } from './number-style.js'

interface Style {
  parent?: string
  data?: string
  /** Undefined: as the parent has it. */
  struck?: boolean
  /** Of its writing; 'plain' for one that is neither grey nor a colour. */
  shade?: Shade | 'plain'
  /** Colour of the ground, or `transparent`. */
  ground?: string
  hidden?: boolean
}

/** What the reader needs of a style, its parents asked. */
export interface CellStyle {
  format?: string
  struck: boolean
  faint?: Faint
  fill?: string
}

/** Styles beyond this depth are a circle: a parent that is its own. */
const MOST_PARENTS = 20

/** Styles of a spreadsheet by family and name, from its two parts. */
export class Styles {
  private readonly styles = new Map<string, Style>()
  private readonly numbers = new Map<string, NumberStyle>()
  private readonly known = new Map<string, CellStyle>()

  add(family: string, name: string, style: Style): void {
    if (this.styles.size >= LIMITS.styles)
      refuse('too-many-cells', 'the spreadsheet holds too many cell formats')
    this.styles.set(`${family} ${name}`, style)
  }

  addNumber(style: NumberStyle): void {
    if (this.numbers.size >= LIMITS.styles)
      refuse('too-many-cells', 'the spreadsheet holds too many number formats')
    this.numbers.set(style.name, style)
  }

  /** A style of cells or, for a piece of a cell's text, of texts. */
  of(family: 'table-cell' | 'text', name: string): CellStyle {
    const key = `${family} ${name}`
    const known = this.known.get(key)
    if (known) return known
    const line = this.ancestry(family, name)
    const data = line.find((style) => style.data !== undefined)?.data
    const format = data === undefined ? undefined : this.formatOf(data)
    const struck = line.find((style) => style.struck !== undefined)?.struck ?? false
    const shade = line.find((style) => style.shade !== undefined)?.shade
    const ground = line.find((style) => style.ground !== undefined)?.ground ?? ''
    const fill = /^#[0-9a-f]{6}$/i.test(ground) ? ground.toLowerCase() : undefined
    const faint = lookOf(shade === 'plain' ? undefined : shade, shadeOf(ground))
    const made: CellStyle = {
      struck,
      ...(format !== undefined && { format }),
      ...(faint && { faint }),
      ...(fill !== undefined && fill !== '#ffffff' && { fill }),
    }
    this.known.set(key, made)
    return made
  }

  /** Whether a text's style says anything of striking through, itself or by a parent. */
  struckText(name: string): boolean | undefined {
    return this.ancestry('text', name).find((style) => style.struck !== undefined)?.struck
  }

  isTableHidden(name: string): boolean {
    return this.styles.get(`table ${name}`)?.hidden ?? false
  }

  private ancestry(family: string, name: string): Style[] {
    const line: Style[] = []
    for (let next: string | undefined = name; next !== undefined && line.length < MOST_PARENTS; ) {
      const style = this.styles.get(`${family} ${next}`)
      if (style) line.push(style)
      next = style?.parent
    }
    return line
  }

  private formatOf(name: string): string | undefined {
    const style = this.numbers.get(name)
    const applied = style?.applied === undefined ? undefined : this.numbers.get(style.applied)
    const code = (applied ?? style)?.code
    return code === '' || code === '0' ? undefined : code
  }
}

/** Reads styles: those of styles.xml, and those of content.xml that no one gave a name. */
export function styleEvents(styles: Styles): XmlEvents {
  let style: { family: string; name: string; held: Style } | undefined
  let number: NumberStyle | undefined
  let text = ''
  return {
    open(element, attributes) {
      text = ''
      if (NUMBER_STYLES.has(element))
        number = { name: attributes['style:name'] ?? '', kind: element, code: '' }
      else if (number && element === 'map') {
        if (number.applied === undefined && attributes['style:apply-style-name'] !== undefined)
          number.applied = attributes['style:apply-style-name']
      } else if (number) addPart(number, element, attributes)
      else if (element === 'style' || element === 'default-style')
        style = {
          family: attributes['style:family'] ?? '',
          name: attributes['style:name'] ?? '',
          held: heldBy(attributes),
        }
      else if (style && element === 'text-properties') {
        const struck = isStruck(attributes)
        if (struck !== undefined) style.held.struck = struck
        const colour = attributes['fo:color']
        if (colour !== undefined) style.held.shade = shadeOf(colour) ?? 'plain'
      } else if (style && element === 'table-cell-properties') {
        const colour = attributes['fo:background-color']
        if (colour !== undefined) style.held.ground = colour
      } else if (style && element === 'table-properties')
        style.held.hidden = attributes['table:display'] === 'false'
    },
    text(piece) {
      if (number) text += piece
    },
    close(element) {
      if (number && (element === 'text' || element === 'currency-symbol')) addText(number, text)
      else if (number && element === number.kind) {
        styles.addNumber(number)
        number = undefined
      } else if (style && (element === 'style' || element === 'default-style')) {
        styles.add(style.family, style.name, style.held)
        style = undefined
      }
    },
  }
}

function heldBy(attributes: Attributes): Style {
  const parent = attributes['style:parent-style-name']
  const data = attributes['style:data-style-name']
  return { ...(parent !== undefined && { parent }), ...(data !== undefined && { data }) }
}

/** Two attributes say it, of which writers set one or both (OpenDocument 1.3 part 3, 20.372 and 20.375). */
function isStruck(attributes: Attributes): boolean | undefined {
  const said = attributes['style:text-line-through-style'] ?? attributes['style:text-line-through-type']
  return said === undefined ? undefined : said !== 'none'
}
