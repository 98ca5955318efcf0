const EMPTY = new Set(['☐', '□', '▢', '❏', '❐', '○', '◯'])
const FULL = new Set(['☑', '☒', '✓', '✔', '✗', '✘', '■', '●', '◉'])

interface Box {
  readonly ticked: boolean
  readonly start: number
  readonly end: number
}

/**
 * Of choices with boxes in one text only those ticked: "☐ pressurisation ☒ depressurisation" says depressurisation, "[x] acceptance [ ] fabric"
 * acceptance. A text without an empty box and a word is left as it is.
 */
export function withoutUnticked(text: string): string {
  const boxes = boxesIn(text)
  const [first] = boxes
  const last = boxes.at(-1)
  if (!first || !last || boxes.every(({ ticked }) => ticked) || !/\p{L}/u.test(text)) return text
  // Boxes stand in front of their words, or behind them.
  const behind = text.slice(last.end).trim() === '' && text.slice(0, first.start).trim() !== ''
  const lead = behind ? '' : text.slice(0, first.start)
  const kept = boxes.flatMap(({ ticked, start, end }, index) => {
    const words = behind
      ? text.slice(boxes[index - 1]?.end ?? 0, start)
      : text.slice(end, boxes[index + 1]?.start ?? text.length)
    return ticked ? words.trim() : []
  })
  return [lead.trim(), ...kept].join(' ').trim()
}

function boxesIn(text: string): Box[] {
  const signs: Box[] = []
  const brackets: Box[] = []
  for (let at = 0; at < text.length; at++) {
    const letter = text[at] as string
    if (EMPTY.has(letter) || FULL.has(letter))
      signs.push({ ticked: FULL.has(letter), start: at, end: at + 1 })
    const close = letter === '[' ? ']' : letter === '(' ? ')' : undefined
    const end = close === undefined || signs.length > 0 ? -1 : text.slice(at, at + 4).indexOf(close)
    const inner = text
      .slice(at + 1, at + end)
      .trim()
      .toLowerCase()
    if (end > 0 && (inner === '' || inner === 'x'))
      brackets.push({ ticked: inner === 'x', start: at, end: at + end + 1 })
  }
  if (signs.length > 0) return signs
  // "Pressure ( )" has no unit yet; several brackets, or one in front of the words, are boxes.
  return brackets.length > 1 || brackets[0]?.start === 0 ? brackets : []
}
