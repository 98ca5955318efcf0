import type { Direction, Reading, Run } from '@draughtbook/shared-calc'
import { findUnit, type Grid, pageText, withSheet } from '@draughtbook/shared-calc/log'
import { areaAddress, parseArea } from '../host/address.js'
import type { RunPicks, RunRole } from '../pane/one-test/entries.js'
import { locate, type Place, readColumn } from './read-column.js'
import { takenRun } from './taken-run.js'
import type { Told } from './told.js'

interface RunSource {
  direction: Direction
  /** Place of the run in the record. */
  index: number
  picks: RunPicks
  /** Undefined where no workbook is open: only figures taken over before are read then. */
  grid: Grid | undefined
  /** Takes the cell of every value read, by field path. */
  cells: Record<string, string>
  told: Told
}

interface RunRead {
  run: Run
  /** The cell of a reading that still lacks its other half. */
  waiting?: string
}

/** One run from its picks. Undefined where neither pressures nor flows are picked. */
export function readRun(source: RunSource): RunRead | undefined {
  const { direction, picks } = source
  if (picks.stations) return { run: { direction, ...takenRun(picks.stations, source) } }
  const pressures = column(source, 'pressure')
  const flows = column(source, 'flow')
  const field = flows ? 'flow_m3_h' : 'devicePressure_Pa'
  const seconds = flows ?? column(source, 'devicePressure')
  if (!pressures && !seconds) return undefined
  const before = zeroFlow(source, 'zeroFlowBefore')
  const paired = pairs(pressures ?? [], seconds ?? [], picks)
  const { readings, waiting } = readingsOf(source, paired, field)
  const run: Run = { direction, ...before, readings, ...zeroFlow(source, 'zeroFlowAfter') }
  return waiting === undefined ? { run } : { run, waiting }
}

function column({ picks, grid, told }: RunSource, role: RunRole): Place[] | undefined {
  const pick = picks[role]
  if (!pick || !grid) return undefined
  if (pick.unit !== undefined && !findUnit(pick.unit))
    told.problem(pick.reference, `“${pick.unit}” is not a known unit.`)
  return readColumn(grid, pick, role === 'flow' ? 'flow' : 'pressure', told)
}

function zeroFlow(source: RunSource, role: 'zeroFlowBefore' | 'zeroFlowAfter'): Partial<Run> {
  const values: number[] = []
  for (const place of column(source, role) ?? [])
    if ('value' in place) {
      source.cells[`runs[${source.index}].${role}_Pa[${values.length}]`] = place.cell
      values.push(place.value)
    }
  return values.length > 0 ? { [`${role}_Pa`]: values } : {}
}

type Pair = [pressure: Place | undefined, second: Place | undefined]

/**
 * Pressures with flows: row by row where both stand in columns beside each other (a heading more or less then moves
 * nothing), else place by place.
 */
function pairs(pressures: readonly Place[], seconds: readonly Place[], picks: RunPicks): Pair[] {
  const second = picks.flow ?? picks.devicePressure
  const [a, b] = [picks.pressure, second].map((pick) => (pick ? parseArea(pick.reference) : undefined))
  const beside =
    a &&
    b &&
    a.sheet === b.sheet &&
    a.left === a.right &&
    b.left === b.right &&
    a.top <= b.bottom &&
    b.top <= a.bottom
  if (!beside)
    return Array.from({ length: Math.max(pressures.length, seconds.length) }, (_, place) => [
      pressures[place],
      seconds[place],
    ])
  const rows = new Map<number, Pair>()
  for (const place of pressures) rows.set(rowOf(place), [place, undefined])
  for (const place of seconds) rows.set(rowOf(place), [rows.get(rowOf(place))?.[0], place])
  return [...rows].toSorted(([one], [other]) => one - other).map(([, pair]) => pair)
}

const rowOf = ({ cell }: Place): number => parseArea(cell)?.top ?? 0

/** Both blank: no reading. One missing: not a reading yet where it is the last, else a fault. */
function readingsOf(
  { index, picks, grid, cells, told }: RunSource,
  paired: readonly Pair[],
  field: 'flow_m3_h' | 'devicePressure_Pa',
): { readings: Reading[]; waiting?: string } {
  const readings: Reading[] = []
  let waiting: string | undefined
  const last = paired.findLastIndex((pair) => pair.some((place) => place && 'value' in place))
  for (const [place, [pressure, second]] of paired.entries()) {
    if (pressure && second && 'value' in pressure && 'value' in second) {
      const path = `runs[${index}].readings[${readings.length}]`
      cells[`${path}.pressure_Pa`] = pressure.cell
      cells[`${path}.${field}`] = second.cell
      const range = field === 'devicePressure_Pa' ? rangeOf(picks, grid, pressure.cell) : undefined
      if (range?.cell !== undefined) cells[`${path}.range`] = range.cell
      readings.push({
        pressure_Pa: pressure.value,
        [field]: second.value,
        ...(range && { range: range.label }),
      })
      continue
    }
    const [present, absent] = pressure && 'value' in pressure ? [pressure, second] : [second, pressure]
    if (!present || !('value' in present) || (absent && 'leftOut' in absent)) continue
    const what = present === pressure ? (field === 'flow_m3_h' ? 'flow' : 'device pressure') : 'pressure'
    if (place === last) {
      waiting = present.cell
      told.tell(pageText('reading-unfinished/last', { lacks: what }), present.cell)
    } else told.problem(present.cell, `This reading has no ${what}.`)
  }
  return waiting === undefined ? { readings } : { readings, waiting }
}

/** The device's range of a reading: the word in its row or column of the picked cells, else the one typed for all. */
function rangeOf(
  { range, ranges }: RunPicks,
  grid: Grid | undefined,
  pressureCell: string,
): { label: string; cell?: string } | undefined {
  const located = ranges && grid && locate(grid, ranges.reference)
  const place = parseArea(pressureCell)
  if (located && place) {
    const { sheet, area } = located
    const upright = area.left === area.right
    const [row, columnAt] = upright ? [place.top, area.left] : [area.top, place.left]
    const cell = sheet.at(row - 1, columnAt - 1)
    if (cell)
      return {
        label: String(cell.value).trim(),
        cell: withSheet(sheet.name, areaAddress({ top: row, bottom: row, left: columnAt, right: columnAt })),
      }
  }
  return range ? { label: range } : undefined
}
