import { tableText } from '../../catalogue/findings/log/tables.js'
import type { Direction } from '../../contract/record/index.js'
import type { Collector } from '../collector.js'
import { refuse } from '../problem.js'
import { locate } from './locate.js'
import { type Looked, look, settle } from './look.js'
import type { TableRow } from './row-usable.js'
import type { Layout, RunLayout } from './schema.js'
import type { Scope } from './scope.js'
import { signed } from './sign.js'
import { readTable } from './table.js'
import { readZeroFlow, turned } from './zero-flow.js'

/** A run as far as the log gives it; the record's schema decides whether it is whole. */
export interface DraftRun {
  direction?: Direction
  averagingTime_s?: number
  zeroFlowBefore_Pa?: number[]
  zeroFlowAfter_Pa?: number[]
  readings: Record<string, number | string>[]
}

/** The runs one table holds: one, or both where a column or the sign parts them. `first` is the index of the first in the record. */
export function readRuns(
  scope: Scope,
  layout: Layout,
  run: RunLayout,
  first: number,
  collector: Collector,
): DraftRun[] {
  const rows = readTable(scope, layout, run, collector, `runs[${first}]`)
  const parts = part(scope, layout, run, rows, first, collector)
  return parts.map(({ direction, rows: own }, index) => {
    const path = `runs[${first + index}]`
    const draft: DraftRun = { direction, readings: [] }
    const before = readZeroFlow(
      scope,
      layout,
      run,
      'zeroFlowBefore',
      direction,
      collector,
      `${path}.zeroFlowBefore_Pa`,
    )
    const after = readZeroFlow(
      scope,
      layout,
      run,
      'zeroFlowAfter',
      direction,
      collector,
      `${path}.zeroFlowAfter_Pa`,
    )
    if (before) draft.zeroFlowBefore_Pa = before
    if (after) draft.zeroFlowAfter_Pa = after
    for (const row of own) addRow(row, draft, direction, run, path, collector)
    return draft
  })
}

interface Part {
  direction: Direction
  rows: TableRow[]
}

function part(
  scope: Scope,
  layout: Layout,
  run: RunLayout,
  rows: TableRow[],
  first: number,
  collector: Collector,
): Part[] {
  const path = `runs[${first}].direction`
  if (run.direction === 'by sign') return bySign(rows, run, collector, `runs[${first}]`)
  if (typeof run.direction === 'string') return [{ direction: run.direction, rows }]
  if ('at' in run.direction) {
    const found = locate(scope, run.direction.at, path)
    const value = settle(look(scope, layout, found, path, { words: run.direction.words }), collector, path)
    return value === undefined ? [] : [{ direction: value as Direction, rows }]
  }
  return byColumn(rows, first, collector)
}

function byColumn(rows: TableRow[], first: number, collector: Collector): Part[] {
  const parts: Part[] = []
  let current: Direction | undefined
  for (const row of rows) {
    const looked = row.direction
    if (!looked) continue
    const before: string[] = parts.map(({ direction }) => direction)
    if (looked.state === 'blank' && current) {
      collector.tell(tableText('log-carried', { direction: current }), looked.address, `runs[${first}]`)
    } else {
      const known = looked.state === 'value' ? before.indexOf(String(looked.value)) : -1
      const index = first + (known < 0 ? parts.length : known)
      const value = settle(looked, collector, `runs[${index}].direction`)
      if (looked.state === 'blank')
        collector.refuse(
          'not-found',
          'the first row has no direction: enter it',
          looked.address,
          `runs[${index}].direction`,
        )
      if (value === undefined) continue
      current = value as Direction
    }
    const direction = current as Direction
    const own = parts.find((one) => one.direction === direction)
    if (own) own.rows.push(row)
    else parts.push({ direction, rows: [row] })
  }
  return parts
}

/** Zero-flow rows belong to both runs; a reading of 0 Pa to neither, and is refused. */
function bySign(rows: TableRow[], run: RunLayout, collector: Collector, path: string): Part[] {
  const sign = run.sign?.readings
  if (sign === 'without sign')
    refuse(
      'layout-invalid',
      'the layout takes the direction from the sign, but says that pressures have no sign: correct one of the two',
      {
        path,
      },
    )
  const parts: Part[] = []
  for (const row of rows) {
    if (row.role && row.role !== 'reading') continue
    const logged = row.pressure.state === 'value' ? Number(row.pressure.value) : Number.NaN
    const value = sign === 'outside minus inside' ? -logged : logged
    if (value === 0)
      collector.refuse(
        'ambiguous',
        '0 Pa does not show the direction: correct the pressure, or strike the reading through',
        row.pressure.address,
        path,
      )
    const direction: Direction = value < 0 ? 'depressurisation' : 'pressurisation'
    const own = parts.find((one) => one.direction === direction)
    if (own) own.rows.push(row)
    else parts.push({ direction, rows: [row] })
  }
  const zeros = rows.filter(({ role }) => role === 'zero-flow before' || role === 'zero-flow after')
  return parts.map(({ direction, rows: own }) => ({ direction, rows: [...zeros, ...own] }))
}

function addRow(
  row: TableRow,
  draft: DraftRun,
  direction: Direction,
  run: RunLayout,
  path: string,
  collector: Collector,
): void {
  if (row.role === 'zero-flow before' || row.role === 'zero-flow after') {
    const field = row.role === 'zero-flow before' ? 'zeroFlowBefore_Pa' : 'zeroFlowAfter_Pa'
    draft[field] ??= []
    const at = `${path}.${field}[${draft[field].length}]`
    const value = settle(row.pressure, collector, at)
    if (typeof value === 'number') draft[field].push(turned(value, run, row.pressure.address, at, collector))
    return
  }
  const at = `${path}.readings[${draft.readings.length}]`
  const reading: Record<string, number | string> = {}
  const put = (name: string, looked: Looked | undefined) => {
    if (!looked || looked.state === 'blank') return
    const value = settle(looked, collector, `${at}.${name}`)
    if (value !== undefined) reading[name] = value
  }
  put('pressure_Pa', row.pressure)
  put('flow_m3_h', row.flow)
  put('devicePressure_Pa', row.devicePressure)
  put('range', row.range)
  if (typeof reading.pressure_Pa === 'number')
    reading.pressure_Pa = signed(
      reading.pressure_Pa,
      run.sign?.readings,
      direction,
      { cell: row.pressure.address, path: `${at}.pressure_Pa` },
      collector,
    )
  if (run.range && 'value' in run.range && row.devicePressure) {
    reading.range = run.range.value
    collector.tell(tableText('log-constant', { field: 'range', value: run.range.value }), '', `${at}.range`)
  }
  draft.readings.push(reading)
}
