import type { PackageText } from './package'

const CELL = /<c r="([A-Z]+)(\d+)"([^>]*)>\s*<f\b[^>]*>([^<]*)<\/f>/g

/** References as distances from a row: two cells of a column with the same text can share a formula. */
const relative = (formula: string, row: number): string =>
  formula.replace(
    /(?<![\w$.])([A-Z]{1,3})(\d+)(?![\w.(!])/g,
    (_, column, digits) => `${column}[${Number(digits) - row}]`,
  )

/**
 * Stores every formula that is only filled down once for its whole run of cells, as programs may do when they save
 * (ECMA-376 part 1, 18.3.1.40). Returns the cells that now hold no formula text of their own.
 */
export function shareFormulas(book: PackageText, sheet: string): string[] {
  const path = book.sheet(sheet)
  const xml = book.text(path)
  const cells = [...xml.matchAll(CELL)]
    .filter((found) => !found[0].includes('<f t=') && !/["']|&quot;|&apos;/.test(found[4] ?? ''))
    .map(([whole, column = '', row = '', , formula = '']) => ({
      whole,
      column,
      row: Number(row),
      formula,
      pattern: relative(formula, Number(row)),
    }))
    .sort((a, b) => a.column.localeCompare(b.column) || a.row - b.row)
  const emptied: string[] = []
  const changed = new Map<string, string>()
  let groups = 0
  for (let i = 0; i < cells.length; ) {
    let end = i + 1
    const first = cells[i]
    if (!first) break
    while (
      cells[end]?.column === first.column &&
      cells[end]?.row === first.row + end - i &&
      cells[end]?.pattern === first.pattern
    )
      end += 1
    if (end > i + 1) {
      const ref = `${first.column}${first.row}:${first.column}${first.row + end - i - 1}`
      for (const { whole, column, row, formula } of cells.slice(i, end)) {
        const own = row === first.row
        const shared = own
          ? `<f t="shared" ref="${ref}" si="${groups}">${formula}</f>`
          : `<f t="shared" si="${groups}"/>`
        changed.set(
          whole,
          whole.replace(/<f\b[^>]*>[^<]*<\/f>/, () => shared),
        )
        if (!own) emptied.push(`${column}${row}`)
      }
      groups += 1
    }
    i = end
  }
  book.set(
    path,
    xml.replace(CELL, (whole) => changed.get(whole) ?? whole),
  )
  return emptied
}
