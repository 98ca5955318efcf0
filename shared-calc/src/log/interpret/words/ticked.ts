const FULL = new Set(['☑', '☒', '✓', '✔', '✗', '✘', '■', '●', '◉'])
/** A box as one sign, or as brackets with a blank, an x or nothing between them. */
const BOX = /[☐□▢❏❐○◯☑☒✓✔✗✘■●◉]|\[(?:\s{0,2}|\sx|x\s?)\]|\((?:\s{0,2}|\sx|x\s?)\)/gi

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
  const found = [...text.matchAll(BOX)].map(([box], index, all): Box => {
    const start = all[index]?.index ?? 0
    const ticked = box.length === 1 ? FULL.has(box) : /x/i.test(box)
    return { ticked, start, end: start + box.length }
  })
  const signs = found.filter(({ start, end }) => end - start === 1)
  if (signs.length > 0) return signs
  // "Pressure ( )" has no unit yet; several brackets, or one in front of the words, are boxes.
  return found.length > 1 || found[0]?.start === 0 ? found : []
}
