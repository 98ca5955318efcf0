import { cellText } from '../../../catalogue/findings/log/cells.js'
import { columnReasons, runText } from '../../../catalogue/findings/log/runs.js'
import type { Direction } from '../../../contract/record/index.js'
import { blockBetween } from '../../grid/address.js'
import type { Grid } from '../../grid/grid.js'
import { type Looked, look } from '../../layout/look.js'
import { isUsable, type TableRow } from '../../layout/row-usable.js'
import { placeInSheet } from '../grid/lines.js'
import { isUnstored } from '../grid/unstored.js'
import { placeIn, type View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import type { Draft } from './draft.js'

const span = (run: FoundRun, column: number): string => {
  const rows = run.readings.map(({ row }) => row)
  const first = run.view.address(Math.min(...rows), column)
  const last = run.view.address(Math.max(...rows), column)
  return run.row === undefined ? blockBetween(first, last) : run.view.address(run.row, column)
}

/** Says what each column of a run was used as, and which were left out and why. */
export function tellUses(draft: Draft, run: FoundRun, index: number, direction: Direction | undefined): void {
  const { block } = run
  const named = direction ?? 'direction not known yet'
  if (run.pressuresIn)
    draft.tell(runText('log-pressures-in-headings'), run.pressuresIn, `runs[${index}].readings`)
  draft.use(
    run.pressuresIn?.join(', ') ?? span(run, block.pressure.at),
    block.pressure.label.text,
    `${block.pressure.role === 'induced' ? 'pressure across the building without zero flow' : 'pressure across the building'}, ${named}`,
    `runs[${index}].readings[].pressure_Pa`,
    block.law && block.carriers.every(({ role }) => role !== 'device')
      ? `with the flow it makes a leakage curve with exponent ${block.law.exponent.toFixed(2)}`
      : undefined,
  )
  for (const carrier of block.carriers)
    draft.use(
      span(run, carrier.at),
      carrier.label.text,
      `${carrier.role === 'device' ? 'pressure at the flow device' : 'air flow'}, ${named}`,
      `runs[${index}].readings[]`,
    )
  for (const { at, headingCell } of [block.pressure, ...block.carriers])
    if (run.readings.some((row) => !row.hidden && run.view.hidden(row.row, at)))
      draft.tell(
        cellText('log-hidden', { what: 'reading', hidden: 'column' }),
        headingCell,
        `runs[${index}].readings`,
      )
  for (const range of block.ranges)
    if (range)
      draft.use(
        span(run, range.at),
        range.label.text,
        'range of the flow device',
        `runs[${index}].readings[].range`,
      )
  const fields = new Set(Object.values(draft.collector.cells))
  for (const { column, why: reason } of block.ignored) {
    const why = hasUnstored(run, column.at) ? columnReasons.unstored : reason
    // A list of readings repeats volume and temperatures in every line.
    if (block.walked.rows.some(({ row }) => fields.has(run.view.address(row, column.at)))) continue
    if (isOfField(run, column.at, fields) || isUsed(draft, run, column.at)) continue
    draft.uses.push({ cells: span(run, column.at), heading: column.label.text, ignoredBecause: why })
    // The parts of a total are named with it.
    if (column.role !== 'index' && column.role !== 'time' && !block.total?.parts.includes(column))
      draft.tell(
        runText(why === columnReasons.unpaired ? 'log-column-left-out/unpaired' : 'log-column-left-out', {
          heading: column.label.text,
          why,
        }),
        span(run, column.at),
        `runs[${index}].readings`,
      )
  }
  const [total] = block.carriers
  if (block.total)
    draft.tell(
      runText(block.total.as === 'mean' ? 'log-total/mean' : 'log-total/sum', {
        cell: total?.headingCell ?? '',
      }),
      [total?.headingCell ?? '', ...block.total.parts.map(({ headingCell }) => headingCell)],
      `runs[${index}]`,
    )
  else if (block.carriers.length > 1)
    draft.tell(
      runText('log-fans'),
      block.carriers.map(({ headingCell }) => headingCell),
      `runs[${index}]`,
    )
}

/** In a list with a line a run, the line of the other run repeats the values of the test. */
const isOfField = ({ view, row }: FoundRun, column: number, fields: ReadonlySet<string>): boolean =>
  row !== undefined &&
  [...fields].some((cell) => {
    const place = placeIn(view, cell)
    const at = view.turned ? place?.row : place?.column
    return at === column && place && cell === view.address(view.turned ? place.column : place.row, column)
  })

const isUsed = (draft: Draft, run: FoundRun, column: number): boolean => {
  const cells = span(run, column)
  return run.row !== undefined && draft.uses.some((use) => use.usedAs !== undefined && use.cells === cells)
}

/** A column of formulas whose results the file does not hold. */
const hasUnstored = ({ view, readings }: FoundRun, column: number): boolean =>
  readings.some(({ row }) => isUnstored(view.at(row, column)))

/** The cells of a row as the reader of layouts sees them, to say why they are no reading; undefined where they are parts of cells. */
function seenRow(
  grid: Grid,
  view: View,
  { pressure, carriers }: FoundRun['block'],
  row: number,
): TableRow | undefined {
  const at = (column: number, path: string): Looked => {
    const place = view.turned ? placeInSheet(view.lines, column, row) : placeInSheet(view.lines, row, column)
    return look({ grid }, {}, { sheet: view.sheet, ...place }, path)
  }
  const flows = carriers.map((carrier) => at(carrier.at, 'flow_m3_h'))
  const flow = flows.find(({ state }) => state !== 'blank') ?? flows[0]
  const seen = { pressure: at(pressure.at, 'pressure_Pa'), ...(flow && { flow }) }
  return seen.pressure.address === view.address(row, pressure.at) ? seen : undefined
}

/** A number right beside one that is struck through, in no column of the table: most likely what it was replaced by. */
function tellReplacements(
  draft: Draft,
  { pressure, carriers, segment }: FoundRun['block'],
  view: View,
  row: number,
  path: string,
): void {
  for (const { at } of [pressure, ...carriers]) {
    const value = view.number(row, at + 1)
    if (view.at(row, at)?.kind !== 'struck' || value === undefined) continue
    if (segment.columns.some((one) => one.at === at + 1 && one.label.text !== '')) continue
    const [struck, cell] = [view.address(row, at), view.address(row, at + 1)]
    draft.tell(runText('log-row-left-out/beside', { value, cell, struck }), cell, path)
  }
}

/** Names the rows of a run that are no readings. */
export function tellLeftOut(draft: Draft, { block, view }: FoundRun, index: number, grid: Grid): void {
  const path = `runs[${index}].readings`
  for (const { cell, why, hidden, row, isNote } of block.walked.leftOut) {
    if (isNote) {
      draft.tell(runText('log-remark/between', { text: why }), cell, path)
      continue
    }
    if (row !== undefined) tellReplacements(draft, block, view, row, path)
    const seen = row === undefined ? undefined : seenRow(grid, view, block, row)
    if (seen && !isUsable(seen, false, draft.collector, path)) continue
    draft.tell(runText(hidden ? 'log-row-left-out/summary' : 'log-row-left-out', { why }), cell, path)
  }
  const filtered = block.walked.rows.filter((row) => row.hidden)
  const shownRows = block.walked.rows.filter((row) => !row.hidden)
  if (filtered.length > 0 && shownRows.length > 0)
    draft.tell(
      cellText('log-hidden/left-out'),
      filtered.map((row) => row.pressure.cell),
      `runs[${index}].readings`,
    )
}
