import { questions } from '../../../catalogue/questions.js'
import { unitOfBuildingPressures } from '../../cells/likely-unit.js'
import type { Grid } from '../../grid/grid.js'
import { gathering } from '../../layout/details.js'
import { LAYOUT_FORMAT, parseLayout, type SeriesLayout } from '../../layout/schema.js'
import { setPath } from '../../layout/set-path.js'
import { readSeriesRuns } from '../../series/read-series.js'
import type { View } from '../grid/view.js'
import type { KnownColumn } from '../tables/columns.js'
import type { TestGroup } from '../tests/test-group.js'
import { directionIn, readLabel } from '../words/label.js'
import type { Draft } from './draft.js'
import { seriesColumn, seriesColumns, seriesUses } from './series-columns.js'

/** Runs from a gauge's own time log: its columns by their headings, its stations by the reader of series. */
export function putSeries(draft: Draft, grid: Grid, { series }: TestGroup, fewest: number): void {
  for (const { view, top } of series) {
    const columns = seriesColumns(view, top)
    if (!columns) continue
    const { head, time, pressure, flow, steps } = columns
    if (!time || !pressure || !flow) {
      draft.collector.refuse(
        'series-unusable',
        'the series needs a time, a pressure and an air flow: give each column a heading',
        view.address(top, 0),
        'runs',
      )
      continue
    }
    const given = draft.answers['flow.unit']
    if (flow.unit?.kind !== 'flow' && given === undefined) {
      draft.ask({
        path: 'flow.unit',
        cells: [flow.headingCell],
        ...questions.flowUnit({ heading: flow.headingCell, american: false }),
      })
      continue
    }
    const unit = pressureUnit(draft, view, head.first, pressure)
    if (!unit) continue
    const direction = directionIn(readLabel(view.name))
    const layout = parseLayout({
      format: LAYOUT_FORMAT,
      name: 'as understood',
      fields: [],
      series: [
        {
          direction: direction ?? 'by sign',
          time: seriesColumn(head, time, 'time'),
          pressure: seriesColumn(head, pressure, 'pressure', unit.stated),
          flow: seriesColumn(head, flow, 'flow', given),
          ...(steps ? { steps: seriesColumn(head, steps, 'time').at } : {}),
        },
      ],
    })
    const scope = { grid, sheet: view.sheet, top: 0, bottom: view.sheet.rows - 1, shift: 0 }
    const { runs = [] } = draft.record as { runs?: unknown[] }
    const [one] = layout.series
    if (!one) continue
    gathering(draft.collector, () => {
      const read = readSeriesRuns(scope, layout, one, runs.length, draft.collector)
      for (const [index, run] of read.runs.entries())
        setPath(draft.record, `runs[${runs.length + index}]`, run)
      draft.series.push(...read.series)
      for (const { readings } of read.runs)
        if (readings.length < fewest) refuseShort(draft, readings.length, fewest, one, view.address(top, 0))
    })
    draft.uses.push(...seriesUses(columns))
  }
}

/** A pressure that drifts all the time gives too few readings, which says nothing of how many stations there were. */
function refuseShort(
  draft: Draft,
  found: number,
  fewest: number,
  { averagingTime_s }: SeriesLayout,
  cell: string,
): void {
  draft.collector.refuse(
    'series-unusable',
    `the pressure is steady for ${averagingTime_s} s only ${found === 1 ? 'once' : `${found} times`}, and a run needs ${fewest} readings by this method: choose a shorter averaging time in a layout, or enter the readings by hand`,
    cell,
    'runs',
  )
}

/** The unit of the pressures of a series: stated, answered, left to their size where that proves it, or asked for. */
function pressureUnit(
  draft: Draft,
  view: View,
  first: number,
  { at, unit, headingCell }: KnownColumn,
): { stated: string | undefined } | undefined {
  const answer = draft.answers['pressure.unit']
  if (unit?.kind === 'pressure' || answer !== undefined) return { stated: answer }
  const numbers = Array.from({ length: view.rows - first }, (_, index) => view.number(first + index, at))
  if (unitOfBuildingPressures(numbers.filter((one) => one !== undefined))) return { stated: undefined }
  draft.ask({
    path: 'pressure.unit',
    cells: [headingCell],
    ...questions.pressureUnit({ heading: headingCell }),
  })
  return undefined
}
