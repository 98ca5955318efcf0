import type { Direction, Run } from '@draughtbook/shared-calc'
import { atPath } from '../kept/at-path.js'
import { isWhole, type PlacedRun, pathInDraft, placeCells, placed } from './placed-run.js'
import type { Told } from './told.js'
import type { UnderstoodTest } from './understand.js'

/** Fields and runs of an accepted log, put where the entries refer to them; where it can no longer be read whole, what is left. */
export class UnderstoodLog {
  /** Runs by their place in the log. */
  readonly #places = new Map<number, PlacedRun>()

  constructor(private readonly test: UnderstoodTest) {}

  /** A field that still refers to the cell it was understood from; undefined where the log now leaves something open. */
  field(
    path: string,
    { cell, unit }: { cell: string; unit?: string },
  ): { cell: string; value: string | number } | undefined {
    if (unit !== undefined || this.test.cells[path] !== cell) return undefined
    const value = atPath(this.#read, path)
    return typeof value === 'string' || typeof value === 'number' ? { cell, value } : undefined
  }

  /** The run of a direction, its cells named by the place it takes. */
  run(
    direction: Direction,
    index: number,
    cells: Record<string, string>,
  ): { run: Run; waiting?: string } | undefined {
    const { runs = [] } = this.#read as { runs?: Run[] }
    const from = runs.findIndex((run) => run?.direction === direction)
    const run = runs[from]
    if (!run) return undefined
    const place = placed(run.readings, from, index)
    this.#places.set(from, place)
    placeCells(this.test.cells, place, cells)
    return { run: structuredClone({ ...run, readings: run.readings.filter(isWhole) }) }
  }

  /** What reading the log had to say about what the draft still takes from it, and what it now leaves open. */
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

  get #read(): object {
    return this.test.record ?? this.test.draft
  }

  /** The path in the draft; undefined where the draft has another value there. */
  #placed(path: string, draft: Record<string, unknown>): string | undefined {
    const run = /^runs\[(\d+)\]/.exec(path)
    if (run) {
      const place = this.#places.get(Number(run[1]))
      return place && pathInDraft(path, place)
    }
    const own = atPath(this.#read, path)
    return own === undefined || typeof own === 'object' || own === atPath(draft, path) ? path : undefined
  }
}
