import { cellText } from '../../catalogue/findings/log/cells.js'
import { tableText } from '../../catalogue/findings/log/tables.js'
import { plainWord } from '../cells/fields.js'
import type { Collector } from '../collector.js'
import { addressOf, withSheet } from '../grid/address.js'
import type { Sheet } from '../grid/grid.js'
import { LIMITS } from '../limits.js'
import { refuse } from '../problem.js'
import { likelyOfPressures, unitOfRun } from './list-unit.js'
import { findList, type List } from './lists.js'
import { type AssumedUnit, type Looked, lookAlong } from './look.js'
import { flowOf, isUsable, type TableRow } from './row-usable.js'
import type { Layout, RunLayout } from './schema.js'
import { type Scope, textOf } from './scope.js'

const COLUMNS = ['pressure', 'flow', 'devicePressure', 'range'] as const
const OTHERS = ['flow', 'devicePressure', 'range'] as const
const PATHS = {
  pressure: 'pressure_Pa',
  flow: 'flow_m3_h',
  devicePressure: 'devicePressure_Pa',
  range: 'range',
}
const SUMMARY =
  /^(mean|average|avg|total|sum|std|st dev|mittel|mittelwert|durchschnitt|summe|moyenne|total|ecart|ecart type)\b/

/**
 * The rows of a table of readings. Left out, each with a finding: struck-through readings, error values, placeholders,
 * rows the layout skips, rows of means below, hidden rows where the layout says so.
 * @param path - where the table is in the record, for findings
 */
export function readTable(
  scope: Scope,
  layout: Layout,
  run: RunLayout,
  collector: Collector,
  path: string,
): TableRow[] {
  const lists = findColumns(scope, run, path)
  const direction =
    typeof run.direction === 'object' && 'column' in run.direction
      ? findList(scope, run.direction.column, path)
      : undefined
  const role = run.role && findList(scope, run.role.column, path)
  const seen = lookers(scope, layout, lists, run)
  const directionAt =
    direction &&
    lookAlong(scope, layout, { sheet: direction.sheet }, 'direction', {
      words: typeof run.direction === 'object' ? run.direction.words : undefined,
    })
  const rows: TableRow[] = []
  let blanks: string[] = []
  for (let index = 0; ; index++) {
    const place = lists.pressure.place(index) ?? beyond(lists, index)
    if (!place) break
    const { sheet, open } = lists.pressure
    if (isSummary(sheet, place.row, lists.pressure, collector, path)) break
    const row: TableRow = { pressure: seen.pressure(index) }
    for (const name of OTHERS) {
      const looked = seen[name]?.(index)
      if (looked) row[name] = looked
    }
    if (run.skipRows?.includes(place.row + 1)) {
      collector.tell(tableText('log-row-skipped'), row.pressure.address, path)
      continue
    }
    if (isBlank(row)) {
      blanks.push(row.pressure.address || (flowOf(row)?.address ?? ''))
      if (open && endsHere(lists, index, collector, path)) break
      continue
    }
    if (!open) for (const cell of blanks) collector.tell(cellText('log-blank', { what: 'row' }), cell, path)
    blanks = []
    if (role && run.role) {
      const found = roleOf(role, index, run.role.words, collector, path)
      if (found === 'skip' || found === undefined) continue
      row.role = found
    }
    if (directionAt) {
      const named = direction?.place(index) ?? place
      row.direction = directionAt(named.row, named.column)
    }
    if (keeps(row, layout, lists, place.row, collector, path)) rows.push(row)
    if (rows.length > LIMITS.readings)
      refuse('too-large', `the table has more than ${LIMITS.readings} readings; is it a raw series?`, {
        path,
      })
  }
  // A form that was not filled in: where its first reading belongs.
  const [empty] = blanks
  if (rows.length === 0 && empty) collector.cells[`${path}.readings`] = empty
  for (const cell of lists.pressure.open ? [] : blanks)
    collector.tell(cellText('log-blank', { what: 'row' }), cell, path)
  return rows
}

type Columns = { pressure: List } & Partial<Record<(typeof COLUMNS)[number], List>>

function findColumns(scope: Scope, run: RunLayout, path: string): Columns {
  const columns: Columns = { pressure: findList(scope, run.pressure.at, `${path}.readings[].pressure_Pa`) }
  if (run.flow) columns.flow = findList(scope, run.flow.at, `${path}.readings[].flow_m3_h`)
  if (run.devicePressure)
    columns.devicePressure = findList(scope, run.devicePressure.at, `${path}.readings[].devicePressure_Pa`)
  if (run.range && 'at' in run.range)
    columns.range = findList(scope, run.range.at, `${path}.readings[].range`)
  return columns
}

/** Where a shorter list of pressures has ended: numbers beside it are not lost, but lack their pressure. */
function beyond({ pressure, flow, devicePressure }: Columns, index: number) {
  if (pressure.open) return undefined
  const longer = [flow, devicePressure].find((list) => list && !list.open && list.place(index))
  return longer?.place(index)
}

type Looker = (index: number) => Looked

/** What is in the nth row of each column. */
function lookers(
  scope: Scope,
  layout: Layout,
  lists: Columns,
  run: RunLayout,
): { pressure: Looker } & Partial<Record<(typeof COLUMNS)[number], Looker>> {
  const assumed: Partial<Record<(typeof COLUMNS)[number], () => AssumedUnit | undefined>> = {
    pressure: () => likelyOfPressures(scope, lists.pressure),
    devicePressure: () => unitOfRun(scope, run, PATHS.devicePressure),
  }
  const along = (list: List, name: (typeof COLUMNS)[number]): Looker => {
    const column = run[name]
    const unit = column && 'at' in column ? column.unit : undefined
    const at = lookAlong(scope, layout, list, PATHS[name], { unit, otherwise: assumed[name] })
    return (index) => {
      const place = list.place(index)
      return place ? at(place.row, place.column) : { state: 'blank', address: '', remarks: [] }
    }
  }
  return {
    pressure: along(lists.pressure, 'pressure'),
    ...Object.fromEntries(
      OTHERS.flatMap((name) => {
        const list = lists[name]
        return list ? [[name, along(list, name)]] : []
      }),
    ),
  }
}

function isBlank(row: TableRow): boolean {
  return row.pressure.state === 'blank' && (flowOf(row)?.state ?? 'blank') === 'blank'
}

/** An open table ends at its first blank row. Numbers within the three rows below it are reported, never silently lost. */
function endsHere(lists: Columns, index: number, collector: Collector, path: string): boolean {
  for (let ahead = 1; ahead <= 3; ahead++) {
    const place = lists.pressure.place(index + ahead)
    const cell = place && lists.pressure.sheet.at(place.row, place.column)
    if (!place || cell?.kind === 'text') break
    if (cell?.kind === 'number') {
      const address = withSheet(lists.pressure.sheet.name, addressOf(place.row, place.column))
      collector.tell(tableText('log-gap'), address, path)
      break
    }
  }
  return true
}

/** A row of means below the readings is not a reading. */
function isSummary(sheet: Sheet, row: number, list: List, collector: Collector, path: string): boolean {
  if (!list.open) return false
  const last = (list.place(0)?.column ?? 0) + 1
  for (let column = Math.max(0, last - 20); column <= last; column++) {
    const text = textOf(sheet.at(row, column))
    if (text === undefined || !SUMMARY.test(plainWord(text))) continue
    const address = withSheet(sheet.name, addressOf(row, column))
    collector.tell(tableText('log-summary-row', { mark: text.trim() }), address, path)
    return true
  }
  return false
}

function roleOf(
  list: List,
  index: number,
  words: Readonly<Record<string, 'reading' | 'zero-flow before' | 'zero-flow after' | 'skip'>>,
  collector: Collector,
  path: string,
): 'reading' | 'zero-flow before' | 'zero-flow after' | 'skip' | undefined {
  const place = list.place(index)
  const text = place && textOf(list.sheet.at(place.row, place.column))
  const address = place && withSheet(list.sheet.name, addressOf(place.row, place.column))
  const found = Object.entries(words).find(([word]) => plainWord(word) === plainWord(text ?? ''))?.[1]
  if (found === undefined)
    collector.refuse(
      'unknown-word',
      `${JSON.stringify(text ?? '')} does not say what the row is: add it to "role" in the layout`,
      address,
      path,
    )
  if (found === 'skip' && address)
    collector.tell(tableText('log-row-skipped/marked', { mark: text ?? '' }), address, path)
  return found
}

function keeps(
  row: TableRow,
  layout: Layout,
  lists: Columns,
  sheetRow: number,
  collector: Collector,
  path: string,
): boolean {
  const cells = COLUMNS.flatMap((name) => row[name] ?? [])
  if (layout.hiddenRows === 'leave out' && lists.pressure.sheet.isRowHidden(sheetRow)) {
    for (const { address } of cells.slice(0, 1))
      collector.tell(cellText('log-hidden/by-layout'), address, path)
    return false
  }
  return isUsable(row, lists.pressure.open, collector, path)
}
