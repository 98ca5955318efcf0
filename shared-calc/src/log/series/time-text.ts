const CLOCK = /^(\d{1,3}):(\d{2}):(\d{2}(?:[.,]\d+)?)$/
const DATED = /^(\d{4}-\d{2}-\d{2}|\d{1,2}[./]\d{1,2}[./]\d{4})[T ](\d{1,2}:\d{2}:\d{2}(?:[.,]\d+)?)Z?$/

/**
 * A moment as text, in seconds: 14:03:07.2 from midnight, with a date before it from 1970. Day and month may stand either
 * way: only differences count. Undefined for anything else; "12:34" too, which may be minutes or hours.
 */
export function readTimeText(text: string): number | undefined {
  const plain = text.trim()
  const dated = DATED.exec(plain)
  if (dated) {
    const [first = 0, second = 0, third = 0] = (dated[1] as string).split(/[-./]/).map(Number)
    const day = first > 31 ? Date.UTC(first, second - 1, third) : Date.UTC(third, second - 1, first)
    const clock = readTimeText(dated[2] as string)
    return clock === undefined || Number.isNaN(day) ? undefined : day / 1000 + clock
  }
  const match = CLOCK.exec(plain)
  if (!match) return undefined
  const minutes = Number(match[2])
  const seconds = Number((match[3] as string).replace(',', '.'))
  return minutes < 60 && seconds < 60 ? Number(match[1]) * 3600 + minutes * 60 + seconds : undefined
}
