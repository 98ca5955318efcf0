const SEPARATORS = ['\t', ';', '|', ','] as const
export type Separator = (typeof SEPARATORS)[number]

/** Characters looked at to tell the separator. */
const SAMPLE = 64 * 1024
const FIRST_LINES = 60

/**
 * The separator of a text file: of those that split most of the first lines, tab, semicolon and bar go before the comma,
 * which may be a decimal sign instead. A first line `sep=;` decides outright. Undefined: one field per line.
 */
export function findSeparator(text: string): Separator | undefined {
  const stated = /^sep=([\t;|,])\r?\n/.exec(text)?.[1]
  if (stated) return stated as Separator
  const start = text.slice(0, SAMPLE)
  const lines = separatorsOfLines(start)
  let best: { separator: Separator; share: number } | undefined
  for (const separator of SEPARATORS) {
    const share = lines.filter((found) => found.has(separator)).length / Math.max(1, lines.length)
    if (share > 0.5 && share > (best?.share ?? 0) + 0.2) best = { separator, share }
  }
  return best?.separator ?? SEPARATORS.find((separator) => longestRun(lines, separator) >= TABLE_LINES)
}

/** This many consecutive lines with a separator are a table, whatever is above it. */
const TABLE_LINES = 5

function longestRun(lines: readonly Set<string>[], separator: Separator): number {
  let [longest, run] = [0, 0]
  for (const found of lines) {
    run = found.has(separator) ? run + 1 : 0
    longest = Math.max(longest, run)
  }
  return longest
}

/** Which separators each of the first lines that are not empty holds outside quotation marks. */
function separatorsOfLines(text: string): Set<string>[] {
  const lines: Set<string>[] = []
  let found = new Set<string>()
  let quoted = false
  let before = '\n'
  let empty = true
  for (const letter of text) {
    // A mark opens a quoted field only at the field's front; inside, a doubled mark closes and opens it again.
    if (letter === '"' && (quoted || before === '"' || before === '\n' || isSeparator(before)))
      quoted = !quoted
    else if (!quoted && (letter === '\n' || letter === '\r')) {
      if (!empty) lines.push(found)
      if (lines.length === FIRST_LINES) return lines
      found = new Set()
      empty = true
      before = '\n'
      continue
    } else if (!quoted && isSeparator(letter)) found.add(letter)
    empty = false
    before = letter
  }
  return empty ? lines : [...lines, found]
}

const isSeparator = (letter: string): boolean => (SEPARATORS as readonly string[]).includes(letter)

/** "1,234" may be one thousand or one and a bit; "0,234", "12,5" and "1234,567" cannot be thousands. */
export function mayGroup(whole: string, decimals: string): boolean {
  return decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole)
}
