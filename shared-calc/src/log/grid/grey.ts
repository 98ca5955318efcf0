/** Whether a colour, as RRGGBB behind whatever stands in front, is a grey clearly lighter than ordinary writing and darker than paper. */
export function isGrey(colour: string): boolean {
  const figures = /([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour)
  if (!figures) return false
  const parts = figures.slice(1).map((part) => Number.parseInt(part, 16))
  const [least, most] = [Math.min(...parts), Math.max(...parts)]
  return most - least <= 24 && least >= 0x70 && most <= 0xf0
}
