import type { Direction } from '@draughtbook/shared-calc'
import { builtInLayouts, type Grid, type Guess, type ReadLog, readGrid } from '@draughtbook/shared-calc/log'
import { areaAddress, joinReference, parseArea } from '../host/address.js'
import { labelOf } from '../pane/fields.js'
import type { FieldEntry, RunPicks, RunRole } from '../pane/one-test/entries.js'
import { locate } from './read-column.js'

/** What the log reader proposes for this workbook, as entries of the pane that the user can check and change. */
export interface FoundEntries {
  fields: Record<string, FieldEntry>
  runs: Partial<Record<Direction, RunPicks>>
  guesses: GuessShown[]
  missing: string[]
  /** The layout that fits the log, where nothing had to be guessed. */
  layout: string | undefined
}

interface GuessShown {
  what: string
  reference: string
  reason: string
  sure: boolean
}

/** Below this the log reader itself says to look twice. */
const SURE = 0.6

/** Asks the log reader for a layout and turns what it reads by it into picks. Nothing is used that is not shown. */
export function findEntries(grid: Grid): FoundEntries {
  const read = readGrid(grid, { layouts: builtInLayouts, acceptProposal: true })
  const [test, ...others] = read.tests
  const cells = test?.cells ?? {}
  const missing = [...(read.proposal?.notFound ?? []), ...(read.proposal?.questions ?? [])]
  if (!test) missing.unshift('readings')
  if (others.length > 0) missing.push(`${others.length} more tests in this workbook: only the first is taken`)
  if (test?.series.length)
    missing.push('readings: this is a gauge’s time log. Read it under “Raw gauge series” below')
  const fieldsFound = fieldsOf(cells, read)
  return {
    fields: fieldsFound,
    // The stations of a series are averages over many cells; picks are one cell for each reading.
    runs: test?.series.length
      ? {}
      : runsOf(cells, grid, test?.record?.runs.map(({ direction }) => direction) ?? []),
    layout: read.proposal ? undefined : read.layoutUsed?.name,
    guesses: read.proposal ? guessed(read.proposal.guesses) : known(fieldsFound),
    missing,
  }
}

const guessed = (guesses: readonly Guess[]): GuessShown[] =>
  guesses.map(({ path, cells, reason, confidence }) => ({
    what: labelOf(path),
    reference: cells.slice(0, 3).join(', '),
    reason,
    sure: confidence >= SURE,
  }))

const known = (fields: Record<string, FieldEntry>): GuessShown[] =>
  Object.entries(fields).flatMap(([path, entry]) =>
    'cell' in entry ? [{ what: labelOf(path), reference: entry.cell, reason: '', sure: true }] : [],
  )

function fieldsOf(
  cells: Readonly<Record<string, string>>,
  { layoutUsed }: ReadLog,
): Record<string, FieldEntry> {
  const fields: Record<string, FieldEntry> = {}
  for (const [path, value] of Object.entries(layoutUsed?.constants ?? {}))
    fields[path] = { text: String(value) }
  for (const [path, cell] of Object.entries(cells)) {
    if (path === 'runs[0].averagingTime_s') fields.averagingTime_s = { cell }
    if (path.startsWith('runs[')) continue
    const unit = layoutUsed?.fields.find((field) => field.path === path)?.unit
    fields[path] = unit === undefined ? { cell } : { cell, unit }
  }
  return fields
}

const ROLES: readonly (readonly [RunRole | 'ranges', RegExp])[] = [
  ['pressure', /^runs\[(\d)\]\.readings\[\d+\]\.pressure_Pa$/],
  ['flow', /^runs\[(\d)\]\.readings\[\d+\]\.flow_m3_h$/],
  ['devicePressure', /^runs\[(\d)\]\.readings\[\d+\]\.devicePressure_Pa$/],
  ['ranges', /^runs\[(\d)\]\.readings\[\d+\]\.range$/],
  ['zeroFlowBefore', /^runs\[(\d)\]\.zeroFlowBefore_Pa(\[\d+\])?$/],
  ['zeroFlowAfter', /^runs\[(\d)\]\.zeroFlowAfter_Pa(\[\d+\])?$/],
]

function runsOf(
  cells: Readonly<Record<string, string>>,
  grid: Grid,
  directions: readonly Direction[],
): FoundEntries['runs'] {
  const runs: FoundEntries['runs'] = {}
  for (const index of [0, 1]) {
    const picks: RunPicks = {}
    for (const [role, pattern] of ROLES) {
      const own = Object.entries(cells).flatMap(([path, cell]) =>
        pattern.exec(path)?.[1] === String(index) ? [cell] : [],
      )
      const reference = spanOf(own)
      if (reference !== undefined) picks[role] = { reference }
    }
    if (!picks.pressure) continue
    runs[directions[index] ?? directionBySign(grid, picks.pressure.reference)] = picks
  }
  return runs
}

/** The block from the first to the last of the cells; what lies between is read and judged again. */
function spanOf(cells: readonly string[]): string | undefined {
  const areas = cells.flatMap((cell) => parseArea(cell) ?? [])
  const [first] = areas
  if (first?.sheet === undefined) return undefined
  const whole = {
    top: Math.min(...areas.map(({ top }) => top)),
    left: Math.min(...areas.map(({ left }) => left)),
    bottom: Math.max(...areas.map(({ bottom }) => bottom)),
    right: Math.max(...areas.map(({ right }) => right)),
  }
  return joinReference(first.sheet, areaAddress(whole))
}

/** Where no record came about, the sign of the pressures tells the direction (inside minus outside). */
function directionBySign(grid: Grid, reference: string): Direction {
  const located = locate(grid, reference)
  if (!located) return 'depressurisation'
  const { sheet, area } = located
  let negative = 0
  let count = 0
  for (let row = area.top; row <= area.bottom; row++) {
    const value = Number(sheet.at(row - 1, area.left - 1)?.value)
    if (Number.isFinite(value)) count += 1
    if (value < 0) negative += 1
  }
  return negative * 2 >= count ? 'depressurisation' : 'pressurisation'
}
