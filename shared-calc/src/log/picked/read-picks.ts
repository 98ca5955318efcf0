import { tableText } from '../../catalogue/findings/log/tables.js'
import type { Direction, Finding } from '../../contract/record/index.js'
import { Collector } from '../collector.js'
import { addressOf, type Block, parseBlock, withSheet } from '../grid/address.js'
import type { Grid } from '../grid/grid.js'
import { gathering, readDetails } from '../layout/details.js'
import { type DraftRun, readRuns } from '../layout/runs.js'
import { LAYOUT_FORMAT, type Layout } from '../layout/schema.js'
import type { Scope } from '../layout/scope.js'
import type { LogProblem } from '../problem.js'
import { aligned } from './align.js'
import {
  listRoles,
  type PickedCells,
  type PickedField,
  type PickedLists,
  type PickedQuestion,
} from './picks.js'
import { runLayout, signsOfPicks, type TrimmedRun, unitQuestions } from './run-layout.js'
import { trimmed } from './trim.js'

/** One run from picked cells, as far as they give it. */
export interface ReadRunCells {
  readonly direction: Direction
  readonly run: DraftRun
  /** Cell of the last reading where it still lacks its other half. */
  readonly waiting?: string
}

/** What picked cells come to. Paths of runs count them as they were given: `runs[0].readings[2].flow_m3_h`. */
export interface ReadPicks {
  /** Parts of a record. */
  readonly draft: Record<string, unknown>
  /** In the order given; nothing where no run was picked, or a question about it is open. */
  readonly runs: readonly (ReadRunCells | undefined)[]
  /** Field path → cell. */
  readonly cells: Readonly<Record<string, string>>
  readonly findings: readonly Finding[]
  readonly problems: readonly LogProblem[]
  readonly questions: readonly PickedQuestion[]
}

/** Reads cells that were pointed at, with the reader of layouts: each pick is a place of a layout made for the occasion. */
export function readPicks(
  grid: Grid,
  fields: readonly PickedField[],
  picked: readonly PickedLists[],
): ReadPicks {
  const collector = new Collector()
  const draft: Record<string, unknown> = {}
  const scope = scopeOf(grid)
  if (!scope)
    return { draft, runs: picked.map(() => undefined), cells: {}, findings: [], problems: [], questions: [] }
  const layout: Layout = { ...EMPTY, fields: fields.map(fieldOf) }
  readDetails(scope, layout, draft, collector)
  const trimmedRuns = picked.map((run, index) => trimmedRun(grid, run, `runs[${index}]`, collector))
  const complete = trimmedRuns.flatMap((run) => (run ? [run] : []))
  const { signs, questions } = signsOfPicks(scope, complete)
  const asked = [...questions, ...complete.flatMap((run) => unitQuestions(scope, run))]
  const runs = trimmedRuns.map((run, index): ReadRunCells | undefined => {
    if (!run || asked.some(({ direction }) => direction === run.direction)) return undefined
    const sign = signs[complete.indexOf(run)]
    const described = runLayout(run, sign)
    const path = `runs[${index}]`
    if (sign?.reversed && complete.every(({ direction }) => direction === 'pressurisation'))
      collector.tell(tableText('log-sign/direction'), firstCell(run.pressure), path)
    let read: DraftRun | undefined
    gathering(collector, () => {
      read = readRuns(scope, { ...layout, runs: [described] }, described, index, collector)[0]
    })
    const waiting = read && waitingCell(grid, picked[index] ?? run)
    return read && { direction: run.direction, run: read, ...(waiting !== undefined && { waiting }) }
  })
  const { cells, problems } = collector
  return { draft, runs, cells, findings: collector.findings(), problems, questions: asked }
}

const EMPTY: Layout = {
  format: LAYOUT_FORMAT,
  name: 'picked cells',
  hiddenRows: 'read',
  tests: { each: 'workbook' },
  constants: {},
  fields: [],
  lists: [],
  runs: [],
  series: [],
}

function scopeOf(grid: Grid): Scope | undefined {
  const sheet = grid.sheet(grid.sheetNames[0] ?? '')
  return sheet && { grid, sheet, top: 0, bottom: sheet.rows - 1, shift: 0 }
}

const fieldOf = ({ path, sheet, block, unit }: PickedField): Layout['fields'][number] => ({
  path,
  at: { cell: addressOf(block.top, block.left), sheet },
  ...(unit === undefined ? {} : { unit }),
})

/** The lists without headings and blank ends, pressures beside their flows. Undefined where there are not both. */
function trimmedRun(
  grid: Grid,
  run: PickedLists,
  path: string,
  collector: Collector,
): TrimmedRun | undefined {
  const lists: Partial<Record<(typeof listRoles)[number], PickedCells>> = {}
  for (const role of listRoles) {
    const cells = run[role]
    if (cells)
      gathering(collector, () => {
        lists[role] = { ...cells, block: trimmed(grid, cells, path, collector) }
      })
  }
  const { pressure } = lists
  const carrier = lists.flow ? 'flow' : 'devicePressure'
  const second = lists[carrier]
  if (!pressure || !second) return undefined
  const { ranges } = run
  const { lists: paired, beyond } = aligned([pressure, second, ...(ranges ? [ranges] : [])])
  const [one = pressure, other = second, third] = paired
  const alone = [one, other].flatMap(({ sheet }, index) =>
    (beyond[index] ?? []).flatMap((block) => filledIn(grid, sheet, block)),
  )
  for (const cell of alone) collector.tell(tableText('log-incomplete'), cell, path)
  return { ...run, ...lists, pressure: one, [carrier]: other, ...(third && { ranges: third }) }
}

/** Cells of a block that hold something. */
function filledIn(grid: Grid, name: string, { top, left, bottom, right }: Block): string[] {
  const sheet = grid.sheet(name)
  const cells: string[] = []
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++)
      if (sheet?.at(row, column)) cells.push(withSheet(sheet.name, addressOf(row, column)))
  return cells
}

/** The last filled cell of the list that is ahead of the other: a test under way. */
function waitingCell(grid: Grid, picked: PickedLists): string | undefined {
  const second = picked.flow ?? picked.devicePressure
  if (!picked.pressure || !second) return undefined
  const upright = picked.pressure.block.left === picked.pressure.block.right
  const [pressure, other] = [picked.pressure, second].map(({ sheet, block }) => {
    const cell = filledIn(grid, sheet, block).at(-1) ?? ''
    const last = parseBlock(cell.slice(cell.lastIndexOf('!') + 1))
    return { cell, at: (upright ? last?.bottom : last?.right) ?? -1 }
  })
  if (!pressure || !other || pressure.at === other.at) return undefined
  return pressure.at > other.at ? pressure.cell : other.cell
}

const firstCell = ({ sheet, block }: PickedCells): string =>
  withSheet(sheet, addressOf(block.top, block.left))
