import { decimalOf } from '../grid/decimal.js'
import type { Grid } from '../grid/grid.js'
import type { SeriesLayout } from '../layout/schema.js'
import { refuse } from '../problem.js'
import { viewOf } from './grid/view.js'
import type { Use } from './interpretation.js'
import {
  isTime,
  type SeriesColumns,
  seriesColumn,
  seriesColumns,
  seriesUses,
} from './record/series-columns.js'
import { isSeries } from './sheet-tables.js'
import { findHeads } from './tables/heads.js'

/** The columns of a raw series, and what each of them was used as. */
export interface FoundSeriesLayout {
  columns: Pick<SeriesLayout, 'time' | 'pressure' | 'flow' | 'devicePressure'>
  uses: Use[]
}

/**
 * The one raw series on the sheets of a grid, by its headings.
 * @throws LogError `series-unusable` where the headings name no time, pressure and flow; `ambiguous` where there are several
 */
export function findSeries(grid: Grid): FoundSeriesLayout {
  const around = { date1904: grid.date1904, decimal: decimalOf(grid) }
  const found = grid.sheetNames.flatMap((name) => {
    const sheet = grid.sheet(name)
    if (!sheet) return []
    const view = viewOf(sheet, around)
    const head = findHeads(view).find(isSeries)
    return (head && seriesColumns(view, head.top)) ?? []
  })
  const [first, second] = found
  const { head, time, pressure, flow, device } = first ?? {}
  const carrier = flow ?? device
  if (!first || !head || !time || !pressure || !carrier)
    refuse(
      'series-unusable',
      'no columns of time, pressure and flow (or device pressure) with at least 150 rows were found: name the columns, or give each a heading with its unit, as in "Time (s)", "Pressure (Pa)", "Flow (m³/h)"',
    )
  if (second || several(first))
    refuse('ambiguous', 'there are several series here: select the columns of one, or name them')
  return {
    columns: {
      time: seriesColumn(head, time, 'time'),
      pressure: seriesColumn(head, pressure, 'pressure'),
      ...(flow
        ? { flow: seriesColumn(head, flow, 'flow') }
        : { devicePressure: seriesColumn(head, carrier, 'pressure') }),
    },
    uses: seriesUses(first),
  }
}

/** Two columns of times beside each other, each with its pressures. */
const several = ({ all }: SeriesColumns): boolean =>
  all.filter(isTime).length > 1 && all.filter(({ role }) => role === 'pressure').length > 1
