import type { XmlEvents } from '../../container/xml.js'

/** A colour as a workbook names it: by its own figures, by a place in the old palette, or as a colour of the theme, lightened or darkened. */
export type NamedColour = Partial<Record<'rgb' | 'indexed' | 'theme' | 'tint', string>>

/** The old palette from place 8 on (ECMA-376 part 1, 18.8.27); places 0 to 7 are its first eight. */
const PALETTE = [
  '000000 ffffff ff0000 00ff00 0000ff ffff00 ff00ff 00ffff',
  '800000 008000 000080 808000 800080 008080 c0c0c0 808080',
  '9999ff 993366 ffffcc ccffff 660066 ff8080 0066cc ccccff',
  '000080 ff00ff ffff00 00ffff 800080 800000 008080 0000ff',
  '00ccff ccffff ccffcc ffff99 99ccff ff99cc cc99ff ffcc99',
  '3366ff 33cccc 99cc00 ffcc00 ff9900 ff6600 666699 969696',
  '003366 339966 003300 333300 993300 993366 333399 333333',
]
  .join(' ')
  .split(' ')

/** A colour of the old palette; 64 and 65 are what the system writes in and on. */
export const paletteColour = (place: string): string | undefined => {
  const at = Number(place)
  return PALETTE[at < 8 ? at : at - 8]
}

/** Reads the colours of a theme part in the order in which cells count them: light before dark, then the accents. */
export function themeEvents(colours: string[]): XmlEvents {
  let inScheme = false
  const found: string[] = []
  return {
    open(name, attributes) {
      if (name === 'clrScheme') inScheme = true
      else if (inScheme && name === 'srgbClr') found.push(attributes.val ?? '')
      else if (inScheme && name === 'sysClr') found.push(attributes.lastClr ?? '')
    },
    text() {},
    close(name) {
      if (name !== 'clrScheme') return
      inScheme = false
      const [dark1 = '', light1 = '', dark2 = '', light2 = '', ...accents] = found
      colours.push(light1, dark1, light2, dark2, ...accents)
    },
  }
}

/** The colour as `#rrggbb`; undefined where nothing says which it is. */
export function colourOf(
  { rgb, indexed, theme, tint }: NamedColour,
  colours: readonly string[],
): string | undefined {
  const named = rgb?.slice(-6) ?? (indexed === undefined ? colours[Number(theme)] : paletteColour(indexed))
  if (named === undefined || !/^[0-9a-f]{6}$/i.test(named)) return undefined
  const parts = [0, 2, 4].map((at) => Number.parseInt(named.slice(at, at + 2), 16) / 255)
  return `#${tinted(parts, Number(tint ?? 0))
    .map((part) => Math.round(Math.min(1, Math.max(0, part)) * 255))
    .map((part) => part.toString(16).padStart(2, '0'))
    .join('')}`
}

/** Lightness alone is moved, towards white or black (ECMA-376 part 1, 18.8.19); hue and saturation stay. */
function tinted(parts: readonly number[], tint: number): readonly number[] {
  if (tint === 0 || !Number.isFinite(tint)) return parts
  const [least, most] = [Math.min(...parts), Math.max(...parts)]
  const before = (least + most) / 2
  const after = tint < 0 ? before * (1 + tint) : before * (1 - tint) + tint
  // Of colours of one hue and saturation, the distance from the lightness is proportional to its own distance from black and white.
  const room = 1 - Math.abs(2 * before - 1)
  const share = room === 0 ? 0 : (1 - Math.abs(2 * after - 1)) / room
  return parts.map((part) => after + (part - before) * share)
}
