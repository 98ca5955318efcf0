/**
 * A function of a short text that remembers what it gave: headings, units and paths come again from cell to cell and from
 * log to log. Forgets everything once it knows `most` texts, so that no log can fill the memory.
 */
export function remembered<T extends object>(make: (text: string) => T, most = 4000): (text: string) => T {
  const known = new Map<string, T>()
  return (text) => {
    const before = known.get(text)
    if (before) return before
    const made = make(text)
    if (known.size >= most) known.clear()
    known.set(text, made)
    return made
  }
}
