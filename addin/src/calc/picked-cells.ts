import { type Direction, type Run, runDirections } from '@draughtbook/shared-calc'
import {
  type Grid,
  type PickedCells,
  type PickedLists,
  type PickedQuestion,
  type ReadPicks,
  readPicks,
} from '@draughtbook/shared-calc/log'
import { parseArea } from '../host/address.js'
import { atPath } from '../kept/at-path.js'
import { type Pick, RUN_ROLES, type RunPicks, type TestEntries } from '../pane/one-test/entries.js'
import { isWhole, type PlacedRun, pathInDraft, placeCells, placed } from './placed-run.js'
import { type Told, withoutLayout } from './told.js'
import type { UnderstoodLog } from './understood-log.js'

/** The cells the entries point to, read; put where the entries refer to them. */
export interface PickedIn {
  field(path: string): { cell?: string; value?: string | number } | undefined
  /** The run of a direction, its cells named by the place it takes. */
  run(
    direction: Direction,
    index: number,
    cells: Record<string, string>,
  ): { run: Run; waiting?: string } | undefined
  /** What reading the cells had to say. */
  tell(told: Told): void
  questions: readonly PickedQuestion[]
}

/** Reads all cells the entries point to at once, but for what is read as the log was understood. */
export function picksIn(
  { fields, runs }: TestEntries,
  grid: Grid | undefined,
  told: Told,
  log: UnderstoodLog | undefined,
): PickedIn {
  const place = (pick: Pick, path?: string): PickedCells | undefined => {
    const found = grid && locate(grid, pick)
    if (!found) told.problem(pick.reference, `This workbook has no cells ${pick.reference}.`, path)
    return found
  }
  const linked = Object.entries(fields).flatMap(([path, entry]) => {
    if (!('cell' in entry) || log?.field(path, entry)) return []
    const { cell: reference, unit } = entry
    const found = place({ reference, ...(unit !== undefined && { unit }) }, path)
    return found ? [{ ...found, path }] : []
  })
  const lists = grid
    ? runDirections.flatMap((direction) => {
        const picks = runs[direction]
        const isPicked = picks && !picks.typed && !picks.stations && !(picks.understood && log)
        return isPicked ? [listsOf(direction, picks, place)] : []
      })
    : []
  const read = grid ? readPicks(grid, linked, lists) : NOTHING
  const places = new Map<number, PlacedRun>()
  return {
    questions: read.questions,
    field: (path) => {
      const value = atPath(read.draft, path)
      const cell = read.cells[path]
      return {
        ...(cell === undefined ? {} : { cell }),
        ...(typeof value === 'string' || typeof value === 'number' ? { value } : {}),
      }
    },
    run: (direction, index, cells) => {
      const from = lists.findIndex((one) => one.direction === direction)
      const own = read.runs[from]
      if (!own) return undefined
      const place = placed(own.run.readings, from, index)
      places.set(from, place)
      placeCells(read.cells, place, cells)
      const readings = own.run.readings.filter(isWhole) as unknown as Run['readings']
      const run = { ...own.run, direction, readings }
      return { run, ...(own.waiting !== undefined && { waiting: own.waiting }) }
    },
    tell: (into) => {
      const inDraft = (path: string): string => {
        const place = places.get(Number(/^runs\[(\d+)\]/.exec(path)?.[1]))
        return (place && pathInDraft(path, place)) ?? path
      }
      for (const finding of read.findings) into.take({ ...finding, where: finding.where.map(inDraft) })
      for (const problem of read.problems)
        into.problem(problem.cell ?? '', withoutLayout(problem), inDraft(problem.path))
      for (const { text, cells } of read.questions) into.problem(cells[0] ?? '', text, 'runs')
    },
  }
}

const NOTHING: ReadPicks = { draft: {}, runs: [], cells: {}, findings: [], problems: [], questions: [] }

function listsOf(
  direction: Direction,
  picks: RunPicks,
  place: (pick: Pick) => PickedCells | undefined,
): PickedLists {
  const lists = Object.fromEntries(
    RUN_ROLES.flatMap((role) => {
      const pick = picks[role]
      const found = pick && place(pick)
      return found ? [[role, found]] : []
    }),
  )
  return {
    direction,
    ...lists,
    ranges: picks.ranges && place(picks.ranges),
    range: picks.range,
    zeroFlowSign: picks.zeroFlowSign,
  }
}

function locate(grid: Grid, { reference, unit }: Pick): PickedCells | undefined {
  const stated = unit === undefined ? {} : { unit }
  const area = parseArea(reference)
  if (area) {
    const sheet = area.sheet ?? grid.sheetNames[0] ?? ''
    if (!grid.sheet(sheet)) return undefined
    const { top, left, bottom, right } = area
    return {
      sheet,
      block: { top: top - 1, left: left - 1, bottom: bottom - 1, right: right - 1 },
      ...stated,
    }
  }
  const name = grid.names.find((candidate) => candidate.name.toLowerCase() === reference.toLowerCase())
  return name && grid.sheet(name.sheet) && { sheet: name.sheet, block: name.block, ...stated }
}
