/** A heading cut in two: its words, and what may be its unit. */
export interface HeadingParts {
  words: string
  unit: string
}

/**
 * Cuts a heading at the bracket it ends with: "Volume (m³):" → "Volume" and "m³". One pass from the end: patterns that look for
 * the place from the front take the square of the length, or more, over a heading of blanks.
 */
export function lastBracket(text: string): HeadingParts | undefined {
  const end = withoutColon(text)
  if (!end.endsWith(')') && !end.endsWith(']')) return undefined
  for (let at = end.length - 2; at >= 0; at--) {
    const letter = end[at] as string
    if (letter === '(' || letter === '[')
      return { words: end.slice(0, at).trimEnd(), unit: end.slice(at + 1, -1).trim() }
    if (letter === ')' || letter === ']') return undefined
  }
  return undefined
}

/** Cuts off the last word, after "in" or "en", a comma, a slash or a blank: "Flow in m³/h" → "Flow" and "m³/h". */
export function lastWord(text: string): HeadingParts | undefined {
  const end = /\s:\s*$/.test(text) ? withoutColon(text) : text.trimEnd()
  const before = beforeLastWord(end)
  const word = end.slice(before)
  const rest = end.slice(0, before)
  const words = rest.trimEnd()
  if (words === '') return cutWithin(words, word)
  // The sign may be at the end of the words or at the front of the last one: "Flow, m³/h", "Flow ,m³/h".
  const signed = /^[,/]./s.test(word)
  if (signed) return { words, unit: word.slice(1) }
  if (/[,/]$/.test(words)) return { words: words.slice(0, -1).trimEnd(), unit: word }
  const joined = /\s(?:in|en)$/.test(words) ? words.slice(0, -2).trimEnd() : words
  return { words: joined, unit: word }
}

/** A heading of one word: "Flow,m³/h" is cut at its first sign. */
function cutWithin(before: string, word: string): HeadingParts | undefined {
  const at = word.search(/[,/]/)
  return at < 0 || at === word.length - 1
    ? undefined
    : { words: before + word.slice(0, at), unit: word.slice(at + 1) }
}

/** Where the last word of a text without trailing blanks begins. */
function beforeLastWord(text: string): number {
  let at = text.length
  while (at > 0 && !BLANK.test(text[at - 1] as string)) at--
  return at
}

const BLANK = /\s/

function withoutColon(text: string): string {
  const end = text.trimEnd()
  return end.endsWith(':') ? end.slice(0, -1).trimEnd() : end
}
