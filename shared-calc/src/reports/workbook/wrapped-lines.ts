/**
 * Lines that a text takes in a column that holds `width` characters: words are not divided, except after a hyphen or where
 * one is longer than a line; line breaks count.
 */
export function wrappedLines(text: string, width: number): number {
  let lines = 0
  for (const line of text.split('\n')) lines += linesOfOne(line, Math.max(1, width))
  return Math.max(1, lines)
}

function linesOfOne(line: string, width: number): number {
  let lines = 1
  let used = 0
  for (const word of line.match(/[^\s-]*-+|\S+|\s+/g) ?? []) {
    const blank = word.trim() === ''
    if (!blank && used > 0 && used + word.length > width) {
      lines += 1
      used = 0
    }
    used += word.length
    // A blank at the end of a line takes no room; a word longer than a line goes on in the next.
    if (used > width && !blank) {
      lines += Math.ceil(used / width) - 1
      used = ((used - 1) % width) + 1
    }
  }
  return lines
}
