import type { Finding } from '../record/index.js'
import { parseAddress } from './grid/address.js'
import { type LogProblem, type LogProblemCode, problem } from './problem.js'

interface Told {
  rule: string
  severity: Finding['severity']
  message: string
  remedy?: string
  where: string[]
  cells: string[]
}

/**
 * Gathers what happens while one test is read. The same thing said of many cells becomes one finding that names them all.
 */
export class Collector {
  private readonly told = new Map<string, Told>()
  readonly problems: LogProblem[] = []
  /** Field path → cell address. */
  readonly cells: Record<string, string> = {}

  tell(
    severity: Finding['severity'],
    rule: string,
    message: string,
    cell: string,
    path: string,
    remedy?: string,
  ): void {
    const key = `${severity}|${rule}|${message}`
    const told = this.told.get(key) ?? {
      rule,
      severity,
      message,
      where: [],
      cells: [],
      ...(remedy ? { remedy } : {}),
    }
    this.told.set(key, told)
    if (path && !told.where.includes(path)) told.where.push(path)
    if (cell && !told.cells.includes(cell)) told.cells.push(cell)
  }

  refuse(code: LogProblemCode, message: string, cell: string | undefined, path: string): void {
    if (this.problems.some((one) => one.cell === cell && one.path === path && one.message === message)) return
    this.problems.push(problem(code, message, cell === undefined ? { path } : { path, cell }))
  }

  findings(): Finding[] {
    return [...this.told.values()].map((told) => ({ ...told, cells: compact(told.cells) }))
  }
}

/** Log!C9, Log!C10, Log!C11 → Log!C9:C11: cells of a column that follow each other become one range. */
export function compact(cells: readonly string[]): string[] {
  const ranges: { sheet: string; column: number; top: number; bottom: number; text: string }[] = []
  for (const cell of cells) {
    const cut = cell.lastIndexOf('!')
    const sheet = cell.slice(0, cut)
    const place = parseAddress(cell.slice(cut + 1))
    const last = ranges.at(-1)
    if (
      place &&
      last &&
      last.sheet === sheet &&
      last.column === place.column &&
      last.bottom + 1 === place.row
    ) {
      last.bottom = place.row
      last.text = `${last.text.split(':')[0]}:${cell.slice(cut + 1)}`
    } else {
      const { row = -1, column = -1 } = place ?? {}
      ranges.push({ sheet, column, top: row, bottom: row, text: cell })
    }
  }
  return ranges.map(({ text }) => text)
}
