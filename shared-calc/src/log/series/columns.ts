import { cellText } from '../../catalogue/findings/log/cells.js'
import { seriesText } from '../../catalogue/findings/log/series.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { isTimeFormat, readTimeText } from '../cells/dates.js'
import { plainWord } from '../cells/fields.js'
import { RECORD_UNITS, toRecordUnit } from '../cells/units.js'
import type { Collector } from '../collector.js'
import { addressOf, withSheet } from '../grid/address.js'
import type { Cell } from '../grid/grid.js'
import { likelyOfPressures } from '../layout/list-unit.js'
import { findList, type List } from '../layout/lists.js'
import { type Looked, lookAlong, refuseLooked, unitOfList } from '../layout/look.js'
import type { Layout, SeriesLayout } from '../layout/schema.js'
import type { Scope } from '../layout/scope.js'
import { LIMITS } from '../limits.js'
import { refuse } from '../problem.js'
import type { SeriesCells } from './series.js'
import { stepsOf } from './steps.js'

const DAY_S = 86_400

/**
 * Reads a gauge's time log into columns. Rows end at the first without a time. Samples that are struck through, blank,
 * errors or placeholders are left out with one finding for each kind; times must rise.
 * @throws LogError `series-unusable`, `too-large` and those of the lists
 */
export function readColumns(
  scope: Scope,
  layout: Layout,
  given: SeriesLayout,
  collector: Collector,
  path: string,
): SeriesCells {
  const flowColumn = given.flow ?? given.devicePressure
  if (!flowColumn || (given.flow && given.devicePressure))
    refuse(
      'layout-invalid',
      'a series needs either a flow or a device pressure, not both: correct the layout',
      { path },
    )
  const flowKind = given.flow ? 'flow_m3_h' : 'devicePressure_Pa'
  const time = findList(scope, given.time.at, path)
  const pressureList = findList(scope, given.pressure.at, path)
  const flowList = findList(scope, flowColumn.at, path)
  const pressure = fastColumn(
    scope,
    layout,
    pressureList,
    'pressure_Pa',
    given.pressure.unit,
    collector,
    path,
  )
  const flow = fastColumn(scope, layout, flowList, flowKind, flowColumn.unit, collector, path)
  const marks = given.marks && { list: findList(scope, given.marks.column, path), words: given.marks.words }
  const clock = clockReader(time, given.time.unit, path)
  const steps = given.steps && findList(scope, given.steps, path)
  const markers: (string | undefined)[] = []
  const columns: [number[], number[], number[], number[], number[]] = [[], [], [], [], []]
  const [times, pressures, flows, rows, states] = columns
  for (let index = 0; ; index++) {
    const place = time.place(index)
    const cell = place && time.sheet.at(place.row, place.column)
    if (!place || !cell) break
    if (index >= LIMITS.seriesRows)
      refuse('too-large', `the series has more than ${LIMITS.seriesRows} rows`, { path })
    const state = marks ? markOf(marks.list, index, marks.words) : 0
    if (state === 3) continue
    const p = pressure(index)
    const q = flow(index)
    if (p === undefined || q === undefined) continue
    const t = clock(
      cell,
      withSheet(time.sheet.name, addressOf(place.row, place.column)),
      times.at(-1),
      collector,
    )
    times.push(t)
    pressures.push(p)
    flows.push(q)
    rows.push(place.row)
    states.push(state)
    if (steps) markers.push(textIn(steps, index))
  }
  const step = steps && stepsOf(markers)
  // What lies between the steps is no reading and no zero flow.
  const known =
    marks || step ? states.map((state, index) => (step?.between[index] ? MARKS.skip : state)) : undefined
  return {
    time_s: Float64Array.from(times),
    pressure_Pa: Float64Array.from(pressures),
    flow: Float64Array.from(flows),
    flowKind,
    ...(known ? { marks: Uint8Array.from(known) } : {}),
    ...(step ? { blocks: step.blocks } : {}),
    sheet: time.sheet.name,
    rows: Uint32Array.from(rows),
    column: pressureList.place(0)?.column ?? 0,
    flowColumn: flowList.place(0)?.column ?? 0,
  }
}

/** Reads plain numbers directly and only what is not plain the careful way: a series has 100,000 rows. */
function fastColumn(
  scope: Scope,
  layout: Layout,
  list: List,
  field: 'pressure_Pa' | 'flow_m3_h' | 'devicePressure_Pa',
  stated: string | undefined,
  collector: Collector,
  path: string,
): (index: number) => number | undefined {
  const quantity = field === 'flow_m3_h' ? 'flow' : 'pressure'
  const otherwise =
    field === 'pressure_Pa' && stated === undefined ? () => likelyOfPressures(scope, list) : undefined
  const at = lookAlong(scope, layout, list, field, { unit: stated, otherwise })
  const unit = unitOfList(list, quantity, stated, path)
  const plain = unit === undefined || (unit.kind === quantity && unit.unit === RECORD_UNITS[quantity])
  let checked = false
  return (index) => {
    const place = list.place(index)
    if (!place) return undefined
    const cell = list.sheet.at(place.row, place.column)
    if (
      checked &&
      cell?.kind === 'number' &&
      cell.format === undefined &&
      cell.formula === undefined &&
      !cell.struck &&
      !list.sheet.hidden &&
      !list.sheet.isRowHidden(place.row)
    )
      return plain || !unit ? Number(cell.value) : toRecordUnit(Number(cell.value), unit)
    const looked = at(place.row, place.column)
    checked = true
    return accept(looked, collector, path)
  }
}

function accept(looked: Looked, collector: Collector, path: string): number | undefined {
  for (const remark of looked.remarks) collector.tell(remark, looked.address, path)
  if (looked.state === 'value') return Number(looked.value)
  if (
    looked.state === 'refused' &&
    (looked.code === 'ambiguous-number' ||
      looked.code === 'unknown-unit' ||
      looked.code === 'formula-without-result')
  )
    refuseLooked(looked, collector, path)
  else collector.tell(leftOut(looked), looked.address, path)
  return undefined
}

function leftOut(looked: Exclude<Looked, { state: 'value' }>): Remark {
  if (looked.state === 'refused') return cellText('log-left-out/sample', { why: looked.message })
  return looked.state === 'struck'
    ? cellText('log-struck-through', { what: 'sample' })
    : cellText('log-blank/sample')
}

/** The marker beside a sample. */
function textIn(list: List, index: number): string | undefined {
  const place = list.place(index)
  const text = place && list.sheet.at(place.row, place.column)?.value
  return text === undefined || String(text).trim() === '' ? undefined : String(text).trim()
}

const MARKS = { reading: 1, 'zero-flow': 2, skip: 3 } as const

function markOf(list: List, index: number, words: Readonly<Record<string, keyof typeof MARKS>>): number {
  const place = list.place(index)
  const cell = place && list.sheet.at(place.row, place.column)
  if (!cell) return 0
  const found = Object.entries(words).find(([word]) => plainWord(word) === plainWord(String(cell.value)))?.[1]
  if (!found || !place)
    refuse(
      'unknown-word',
      `${JSON.stringify(String(cell.value))} marks a row, but the layout does not say what it means: add it to "marks" in the layout`,
      {
        cell: place ? withSheet(list.sheet.name, addressOf(place.row, place.column)) : '',
      },
    )
  return MARKS[found]
}

/** Reads times in s: numbers in the stated unit, clock times as part of a day, or text. They must rise; a clock may pass midnight. */
function clockReader(list: List, stated: string | undefined, path: string) {
  const unit = unitOfList(list, 'time', stated, path)
  let days = 0
  return (cell: Cell, address: string, before: number | undefined, collector: Collector): number => {
    const clock = cell.kind === 'text' || isTimeFormat(cell.format)
    const raw =
      cell.kind === 'text'
        ? readTimeText(String(cell.value))
        : cell.kind === 'number'
          ? Number(cell.value) * (clock ? DAY_S : 1)
          : undefined
    if (raw === undefined)
      refuse(
        'series-unusable',
        `${JSON.stringify(String(cell.value))} is not a time: write it as 14:03:07 or in seconds`,
        {
          path,
          cell: address,
        },
      )
    if (!clock && !unit && before === undefined)
      collector.tell(cellText('log-unit-assumed/time'), address, path)
    const seconds = !clock && unit?.kind === 'time' ? toRecordUnit(raw, unit) : raw
    if (clock && before !== undefined && raw + days < before - DAY_S / 2) {
      days += DAY_S
      collector.tell(seriesText('log-midnight'), address, path)
    }
    if (before !== undefined && seconds + days <= before)
      refuse('series-unusable', 'the time is not later than in the row above', { path, cell: address })
    return seconds + days
  }
}
