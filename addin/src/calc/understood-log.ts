import type { Direction, Run } from '@draughtbook/shared-calc'
import type { Told } from './told.js'
import type { UnderstoodTest } from './understand.js'

/** Fields and runs of an accepted log, put where the entries refer to them. */
export class UnderstoodLog {
  /** Place of a run in the log → its place in the draft. */
  readonly #places = new Map<number, number>()

  constructor(private readonly test: UnderstoodTest) {}

  /** Whether nothing stands in the way of reading it; where something does, the picked cells are shown, as not valid. */
  get whole(): boolean {
    return this.test.record !== undefined
  }

  /** A field that still refers to the cell it was understood from; undefined where the log now leaves something open. */
  field(
    path: string,
    { cell, unit }: { cell: string; unit?: string },
  ): { cell: string; value: string | number } | undefined {
    if (unit !== undefined || this.test.cells[path] !== cell) return undefined
    const value = valueAt(this.test.record, path)
    return typeof value === 'string' || typeof value === 'number' ? { cell, value } : undefined
  }

  /** The run of a direction, its cells named by the place it takes. */
  run(
    direction: Direction,
    index: number,
    cells: Record<string, string>,
  ): { run: Run; waiting?: string } | undefined {
    const runs = this.test.record?.runs ?? []
    const from = runs.findIndex((run) => run.direction === direction)
    const run = runs[from]
    if (!run) return undefined
    this.#places.set(from, index)
    const start = `runs[${from}]`
    for (const [path, cell] of Object.entries(this.test.cells))
      if (path.startsWith(start)) cells[`runs[${index}]${path.slice(start.length)}`] = cell
    return { run: structuredClone(run) }
  }

  /** What reading the log had to say of what the draft still takes from it, and what it now leaves open. */
  tell(told: Told, draft: Record<string, unknown>): void {
    for (const { text, cells, path } of this.test.questions) told.problem(cells[0] ?? '', text, path)
    const { problems } = this.test
    for (const { message, cell, path } of problems) {
      // A reading that lacks a value follows from a cell of it that could not be read, which is named.
      const reading = /^runs\[\d+\]\.readings\[\d+\]/.exec(path)?.[0]
      const follows =
        reading && !cell && problems.some((other) => other.cell && other.path.startsWith(reading))
      if (!follows) told.problem(cell ?? '', message, path)
    }
    for (const finding of this.test.findings) {
      const where = finding.where.flatMap((path) => this.#placed(path, draft) ?? [])
      if (where.length > 0 || finding.where.length === 0) told.take({ ...finding, where })
    }
  }

  /** The path in the draft; undefined where the draft has another value there. */
  #placed(path: string, draft: Record<string, unknown>): string | undefined {
    const run = /^runs\[(\d+)\]/.exec(path)
    if (run) {
      const place = this.#places.get(Number(run[1]))
      return place === undefined ? undefined : path.replace(run[0], `runs[${place}]`)
    }
    const own = valueAt(this.test.record, path)
    return own === undefined || typeof own === 'object' || own === valueAt(draft, path) ? path : undefined
  }
}

function valueAt(record: unknown, path: string): unknown {
  return path
    .split(/[.[\]]+/)
    .filter(Boolean)
    .reduce<unknown>(
      (at, key) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined),
      record,
    )
}
