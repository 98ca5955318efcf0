import { questions } from '../../../catalogue/questions.js'
import { shown } from '../../cells/units.js'
import { columnLetters } from '../../grid/address.js'
import type { Grid } from '../../grid/grid.js'
import { gathering } from '../../layout/details.js'
import { LAYOUT_FORMAT, parseLayout } from '../../layout/schema.js'
import { setPath } from '../../layout/set-path.js'
import { readSeriesRuns } from '../../series/read-series.js'
import { roleOf } from '../tables/columns.js'
import { findHeads } from '../tables/heads.js'
import type { TestGroup } from '../tests/group.js'
import { directionIn, readLabel } from '../words/label.js'
import type { Draft } from './draft.js'

/** Runs from a gauge's own time log: its columns by their headings, its stations by the reader of series. */
export function putSeries(draft: Draft, grid: Grid, { series }: TestGroup): void {
  for (const { view, top } of series) {
    const head = findHeads(view).find((one) => one.top === top)
    if (!head) continue
    const columns = head.columns.map((column) => roleOf(view, head.first, head.first + 40, column))
    const time =
      columns.find(
        ({ role, unit, label }) => role === 'time' || unit?.kind === 'time' || label.tokens.includes('time'),
      ) ?? columns[0]
    const pressure =
      columns.find(({ role }) => role === 'pressure') ?? columns.find(({ role }) => role === 'induced')
    const flow =
      columns.find(({ role }) => role === 'flow') ?? columns.find(({ role }) => role === 'corrected')
    if (!time || !pressure || !flow) {
      draft.collector.refuse(
        'series-unusable',
        'the series needs a time, a pressure and an air flow: give each column a heading',
        view.address(top, 0),
        'runs',
      )
      continue
    }
    const unit = flow.unit?.kind === 'flow' ? shown(flow.unit.unit) : draft.answers['flow.unit']
    if (!unit) {
      draft.ask({
        path: 'flow.unit',
        cells: [flow.headingCell],
        ...questions.flowUnit({ heading: flow.headingCell, american: false }),
      })
      continue
    }
    const range = (at: number) =>
      `${columnLetters(at)}${head.first + 1}:${columnLetters(at)}${view.sheet.rows}`
    const direction = directionIn(readLabel(view.name))
    const layout = parseLayout({
      format: LAYOUT_FORMAT,
      name: 'as understood',
      fields: [],
      series: [
        {
          direction: direction ?? 'by sign',
          time: {
            at: { range: range(time.at), sheet: view.name },
            unit: time.unit?.kind === 'time' ? shown(time.unit.unit) : 's',
          },
          pressure: {
            at: { range: range(pressure.at), sheet: view.name },
            unit: pressure.unit?.kind === 'pressure' ? shown(pressure.unit.unit) : 'Pa',
          },
          flow: { at: { range: range(flow.at), sheet: view.name }, unit },
        },
      ],
    })
    const scope = { grid, sheet: view.sheet, top: 0, bottom: view.sheet.rows - 1, shift: 0 }
    const { runs = [] } = draft.record as { runs?: unknown[] }
    const [given] = layout.series
    if (!given) continue
    gathering(draft.collector, () => {
      const read = readSeriesRuns(scope, layout, given, runs.length, draft.collector)
      for (const [index, run] of read.runs.entries())
        setPath(draft.record, `runs[${runs.length + index}]`, run)
    })
    for (const column of columns)
      if (column === pressure || column === flow || column === time)
        draft.use(
          `${view.address(head.first, column.at)}:${columnLetters(column.at)}${view.sheet.rows}`,
          column.label.text,
          `raw series: ${column === pressure ? 'pressure across the building' : column === flow ? 'air flow' : 'time'}`,
          'runs',
        )
      else
        draft.uses.push({
          cells: view.address(head.first, column.at),
          heading: column.label.text,
          ignoredBecause: 'it is not needed',
        })
  }
}
