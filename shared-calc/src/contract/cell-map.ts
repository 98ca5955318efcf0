import type { Finding } from './record/index.js'

/** Field path of a record → address of the cell or range it was read from. */
export type CellMap = Readonly<Record<string, string>>

/** Adds to each finding the cells of the fields it names. */
export function attachCells(findings: readonly Finding[], cells: CellMap | undefined): Finding[] {
  if (!cells) return [...findings]
  return findings.map((finding) => {
    const found = finding.where.flatMap((path) => cellsOf(path, cells))
    return found.length === 0 ? finding : { ...finding, cells: [...new Set(found)] }
  })
}

/** The cell of a field; for a field that holds others, the cells of all it holds. */
function cellsOf(path: string, cells: CellMap): string[] {
  const own = cells[path]
  if (own !== undefined) return [own]
  return Object.keys(cells).flatMap((key) =>
    key.startsWith(`${path}.`) || key.startsWith(`${path}[`) ? [cells[key] as string] : [],
  )
}
