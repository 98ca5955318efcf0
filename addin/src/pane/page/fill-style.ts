/**
 * The ground of a cell in the log's own colour, and black or white upon it, whichever reads better. One of the two reaches a contrast
 * of 4.5 on any colour (WCAG 2.2, 1.4.3).
 * @param colour as `#rrggbb`
 */
export function fillStyle(colour: string): Record<'--fill' | '--on-fill', string> {
  return { '--fill': colour, '--on-fill': luminance(colour) > EVEN ? '#000000' : '#ffffff' }
}

/** Where black and white contrast alike: (L + 0.05)² = 0.05 × 1.05. */
const EVEN = Math.sqrt(0.05 * 1.05) - 0.05

/** Relative luminance of a colour, 0 to 1. Source: WCAG 2.2, relative luminance. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}
