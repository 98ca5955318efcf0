import type { Finding } from './record/evaluation.js'

/** One thing that stops a calculation, and where it is. */
export interface Problem {
  /** Field path, as in `runs[0].readings[2].flow_m3_h`; empty for the whole input. */
  path: string
  /** Cell address, where the input came from a sheet. */
  cell?: string
  message: string
  /** Nothing was entered: there is something to enter, and nothing to correct. */
  missing?: true
  /** The message without its advice on the layout, where it has any: for values that no layout reads. */
  fault?: string
}

/** Input that cannot be read or computed. Every problem names its field, and its cell where there is one. */
export class InputError extends Error {
  override readonly name = 'InputError'
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(problemLine).join('\n'))
  }
}

/** The problems of an input error; undefined for any other. A frozen version has an error class of its own. */
export const problemsOf = (error: unknown): readonly Problem[] | undefined =>
  error instanceof InputError || (error instanceof Error && error.name === 'InputError')
    ? (error as InputError).problems
    : undefined

export function problemLine({ path, cell, message }: Problem): string {
  const place = [cell, path].filter(Boolean).join(' · ')
  return place ? `${place}: ${message}` : message
}

/** Field path of a record → address of the cell or range it was read from. */
export type CellMap = Readonly<Record<string, string>>

/** The same error with the cell of each field that was read from one. */
export const withCells = (error: InputError, cells: CellMap = {}): InputError =>
  new InputError(
    error.problems.map((problem) => {
      const cell = problem.cell ?? cells[problem.path]
      return cell === undefined ? problem : { ...problem, cell }
    }),
  )

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
