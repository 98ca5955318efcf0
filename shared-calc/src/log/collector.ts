import type { Remark } from '../catalogue/findings/remark.js'
import type { Problem } from '../contract/problem.js'
import type { Finding } from '../contract/record/index.js'
import { compactCells } from './grid/compact-cells.js'
import { type LogProblem, type LogProblemCode, problem } from './problem.js'

interface Told extends Remark {
  where: string[]
  cells: string[]
}

/**
 * Gathers what happens while one test is read. The same thing said about many cells becomes one finding that names them all.
 */
export class Collector {
  private readonly told = new Map<string, Told>()
  readonly problems: LogProblem[] = []
  /** Field path → cell address. */
  readonly cells: Record<string, string> = {}

  tell(remark: Remark, cell: string, path: string): void {
    const key = `${remark.severity}|${remark.rule}|${remark.message}`
    const told = this.told.get(key) ?? { ...remark, where: [], cells: [] }
    this.told.set(key, told)
    if (path && !told.where.includes(path)) told.where.push(path)
    if (cell && !told.cells.includes(cell)) told.cells.push(cell)
  }

  refuse(
    code: LogProblemCode,
    message: string,
    cell: string | undefined,
    path: string,
    more: Pick<Problem, 'missing' | 'fault'> = {},
  ): void {
    if (this.problems.some((one) => one.cell === cell && one.path === path && one.message === message)) return
    this.problems.push(problem(code, message, { path, ...(cell !== undefined && { cell }), ...more }))
  }

  /** Forgets the places of a run that was taken out; the runs after it move up. */
  takeOutRun(index: number): void {
    const moved = (path: string) =>
      path.replace(/^runs\[(\d+)\]/, (whole, at: string) =>
        Number(at) > index ? `runs[${Number(at) - 1}]` : whole,
      )
    const own = new RegExp(`^runs\\[${index}\\]`)
    const kept = Object.entries(this.cells).filter(([path]) => !own.test(path))
    for (const path of Object.keys(this.cells)) delete this.cells[path]
    for (const [path, cell] of kept) this.cells[moved(path)] = cell
    for (const told of this.told.values())
      told.where = told.where.filter((path) => !own.test(path)).map(moved)
  }

  findings(): Finding[] {
    return [...this.told.values()].map((told) => ({ ...told, cells: compactCells(told.cells) }))
  }
}
