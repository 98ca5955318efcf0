import { columnReasons } from '../../../catalogue/findings/log/runs.js'
import { toRecordUnit } from '../../cells/units.js'
import { says } from '../words/label.js'
import type { Doubt, KnownColumn, Segment } from './columns.js'
import { exchangedColumns } from './exchanged-columns.js'
import { PLAIN_CURVE, type PowerLaw, PRESSURES, physicsScore, powerLaw } from './physics.js'
import { flowPrior, pressurePrior } from './priors.js'
import { walkRows } from './rows.js'
import type { Preferred } from './segments.js'
import { areSamples, type ColumnOfOthers, distinctFans, meanOf, totalOf } from './several-flows.js'
import type { Figure, WalkedRows } from './table-row.js'
import { unheadedRivals, withUnnamed } from './unnamed-columns.js'

/** A block of readings with the columns that make it. */
export interface Block {
  readonly segment: Segment
  readonly pressure: KnownColumn
  /** Flows or device pressures; several of them add up. */
  readonly carriers: readonly KnownColumn[]
  readonly ranges: readonly (KnownColumn | undefined)[]
  readonly walked: WalkedRows
  readonly law: PowerLaw | undefined
  readonly doubts: readonly Doubt[]
  /** Other columns of the block, with why they were left out. */
  readonly ignored: readonly { column: KnownColumn; why: string }[]
  /** A total column that parts add up to, for the note. */
  readonly total?: ColumnOfOthers
  /** Every pressure and flow that were tried together, the best first. */
  readonly tried: readonly Tried[]
  /** Columns without a heading that only the curve through them names. */
  readonly unnamed: readonly KnownColumn[]
}

/** A pressure and flows that may be the readings, with their curve. */
export interface Tried {
  readonly pressure: KnownColumn
  readonly carriers: readonly KnownColumn[]
  readonly law: PowerLaw | undefined
}

interface Carrier {
  columns: readonly KnownColumn[]
  prior: number
  madeOf?: ColumnOfOthers
}

interface Candidate {
  pressure: KnownColumn
  carrier: Carrier
  walked: WalkedRows
  law: PowerLaw | undefined
  score: number
}

/** Answer for flows that are to be added up. */
export const TOGETHER = 'together'

/** Whether somebody named this column by its heading or the cell of it. */
const isNamed = ({ label, headingCell }: KnownColumn, name: string | undefined): boolean =>
  name !== undefined && (name === headingCell || name === label.text)

/** "Depressurisation – final readings" over 61 Pa: no zero flow is as large, so the word is that of the readings. */
const isBeyondZero = ({ view, head, columns }: Segment, at: number): boolean =>
  columns.filter(({ role }) => role === 'pressure').length === 1 &&
  [0, 1, 2].some((step) => Math.abs(view.number(head.first + step, at) ?? 0) > PRESSURES.reached)

/** Columns of one kind that are tried against each other; a block of readings has two or three. */
const MOST_PRESSURES = 5
const MOST_CARRIERS = 8

/** How many points apart two candidates must be for the better to be taken without asking. */
const CLEAR = 0.9
/** The same of two pressures that both follow the curve: a word such as "house" or "actual" alone does not decide between two gauges. */
const CLEAR_OF_GAUGES = 2.6
/** Columns that give the same flow at 50 Pa within this lead to the same figures. */
const SAME_FIGURE = 0.003

/**
 * Chooses pressure and flow of a block: words, units, shape of the numbers and the leakage curve together.
 * @param preferred - heading cells somebody has named in answer to a question
 * @returns undefined where the block holds no readings
 */
export function chooseColumns(given: Segment, preferred: Preferred = {}): Block | undefined {
  const { segment, unnamed } = withUnnamed(given)
  // "Before (Pa)" and "After (Pa)" are lists of zero-flow values, whatever stands over them; Dutch "voor" is also "for".
  const named = segment.columns.filter(
    ({ role, label, at }) =>
      role === 'induced' ||
      (role === 'pressure' &&
        (says(label, 'before') === says(label, 'after') ||
          says(label, 'former') ||
          isBeyondZero(segment, at))),
  )
  // "Diff. (Pa)" is a deviation beside a pressure, and the pressure itself where there is no other.
  if (named.length === 0)
    named.push(...segment.columns.filter(({ role, unit }) => role === 'derived' && unit?.kind === 'pressure'))
  // Of one pressure in two units that in pascals is the finer.
  const pressures = named.filter(
    (one) =>
      !named.some(
        (other) =>
          other !== one &&
          other.unit?.unit === 'Pa' &&
          one.unit?.unit !== 'Pa' &&
          sameInOtherUnit(segment, other, one),
      ),
  )
  const devices = segment.columns.filter(({ role }) => role === 'device')
  const carriers = carriersOf(segment, pressures.length > 0 ? devices : [])
  const flows = segment.columns.filter(({ role, numbers }) => role === 'flow' && numbers > 0)
  if (preferred.flow === TOGETHER && flows.length > 1) carriers.push({ columns: flows, prior: 30 })
  const meanPressure = meanOf(segment, pressures)?.column
  const tried: Candidate[] = []
  for (const pressure of (pressures.length === 0 ? devices : pressures).slice(0, MOST_PRESSURES))
    for (const carrier of carriers.slice(0, MOST_CARRIERS)) {
      if (carrier.columns.includes(pressure)) continue
      const walked = walkRows(segment, pressure, carrier.columns)
      const readings = walked.rows.filter(({ kind }) => kind === 'reading')
      if (readings.length === 0) continue
      const law = lawOf(pressure, carrier, walked)
      const named =
        (isNamed(pressure, preferred.pressure) ? 20 : 0) +
        (carrier.columns.some((column) => isNamed(column, preferred.flow)) ? 20 : 0)
      const physics = readings.length >= 3 ? physicsScore(law) : 0
      tried.push({
        pressure,
        carrier,
        walked,
        law,
        score:
          pressurePrior(pressure, walked) -
          HIDDEN * [pressure, ...carrier.columns].filter((column) => isHidden(segment, column)).length +
          (pressure === meanPressure ? 3 : 0) +
          carrier.prior +
          physics +
          named,
      })
    }
  tried.sort((one, other) => other.score - one.score)
  // A single reading is a run only where no columns hold more.
  const best =
    tried.find(({ walked: { rows } }) => rows.filter(({ kind }) => kind === 'reading').length > 1) ?? tried[0]
  if (!best) return undefined
  // Without words only the curve says what a column is.
  if (unnamed.length > 0 && (best.law === undefined || physicsScore(best.law) < PLAIN_CURVE)) return undefined
  const exchanged = exchangedColumns(segment, best)
  if (exchanged && isNamed(exchanged.pressure, preferred.pressure))
    return chooseColumns(exchanged.segment, { ...preferred, pressure: exchanged.pressure.headingCell })
  const block = asBlock(segment, best, tried)
  if (!exchanged) return { ...block, unnamed }
  return {
    ...block,
    unnamed,
    doubts: [{ about: 'pressure', columns: [exchanged.pressure, best.pressure], exchanged: true }],
  }
}

/** Points that a hidden column is worth less than one that is shown. */
const HIDDEN = 1.5

const isHidden = ({ view, head }: Segment, { at }: KnownColumn): boolean =>
  view.hidden(head.first, at) && head.columns.some((one) => !view.hidden(head.first, one.at))

function lawOf(pressure: KnownColumn, { columns }: Carrier, { rows }: WalkedRows): PowerLaw | undefined {
  const readings = rows.filter(({ kind, carriers }) => kind === 'reading' && carriers.every((one) => one))
  const zeros = rows.filter(({ kind }) => kind === 'zero').map((row) => row.pressure.value)
  const middle =
    zeros.length > 0 && pressure.role !== 'induced' ? zeros.reduce((a, b) => a + b) / zeros.length : 0
  const bySign = (sign: number) => readings.filter((row) => Math.sign(row.pressure.value) === sign)
  const own = bySign(-1).length >= 3 ? bySign(-1) : bySign(1)
  return powerLaw(
    own.map((row) => row.pressure.value - middle),
    own.map(({ carriers }) =>
      carriers.slice(0, columns.length).reduce((sum, one) => sum + Math.abs((one as Figure).value), 0),
    ),
  )
}

/** Flows that may carry the readings: single columns, a total of parts, or fans that add up. */
function carriersOf(segment: Segment, devices: readonly KnownColumn[]): Carrier[] {
  const logged = segment.columns
    .filter(({ role, numbers }) => role === 'flow' && numbers > 0)
    .slice(0, MOST_CARRIERS)
  // Of one flow in two units the first column is as good as the second.
  const flows = logged.filter(
    (flow, index) => !logged.slice(0, index).some((one) => sameInOtherUnit(segment, one, flow)),
  )
  const corrected = segment.columns.filter(({ role, numbers }) => role === 'corrected' && numbers > 0)
  const found: Carrier[] = []
  const total = totalOf(segment, flows) ?? meanOf(segment, flows)
  if (total) found.push({ columns: [total.column], prior: 5, madeOf: total })
  // Beside their mean, flows that differ by a number are samples of one flow.
  const isMeant = logged.some(({ label }) => says(label, 'average'))
  const fans = total || isMeant || areSamples(segment, flows) ? [] : distinctFans(flows)
  if (fans.length > 1) found.push({ columns: fans, prior: 4 })
  for (const flow of flows)
    if (!total?.parts.includes(flow) && flow !== total?.column && !fans.includes(flow))
      found.push({ columns: [flow], prior: flowPrior(flow) })
  for (const flow of corrected) found.push({ columns: [flow], prior: flowPrior(flow) - 2 })
  if (devices.length > 0) {
    const several = distinctFans(devices)
    if (several.length > 1) found.push({ columns: several, prior: 1.2 })
    else for (const device of devices) found.push({ columns: [device], prior: 0.2 })
  }
  return found
}

function asBlock(segment: Segment, best: Candidate, tried: readonly Candidate[]): Omit<Block, 'unnamed'> {
  const { pressure, carrier } = best
  const ranges = carrier.columns.map((column, index) =>
    rangeFor(segment, column, index, carrier.columns.length),
  )
  const walked = ranges.some((range) => range)
    ? walkRows(segment, pressure, carrier.columns, ranges)
    : best.walked
  const doubts: Doubt[] = []
  const near = tried.filter((one) => one !== best && isNear(one, best))
  const ofCarrier = near.filter((one) => one.carrier === carrier)
  const rivals = ofCarrier.filter(
    (one) => one.pressure.role === pressure.role || one.pressure.role === 'pressure',
  )
  if (rivals.length > 0)
    doubts.push({ about: 'pressure', ...asDoubt([best, ...rivals], ({ pressure: one }) => [one]) })
  const flows = near.filter(
    (one) =>
      one.pressure === pressure &&
      one.carrier.columns.some(
        (column) =>
          !carrier.columns.includes(column) &&
          !sameInOtherUnit(segment, carrier.columns[0] as KnownColumn, column) &&
          !sameValues(segment, carrier.columns[0] as KnownColumn, column),
      ),
  )
  if (flows.length > 0)
    doubts.push(
      flowDoubt(
        segment,
        asDoubt([best, ...flows], (one) => one.carrier.columns),
      ),
    )
  if (doubts.length === 0) doubts.push(...unheadedRivals(segment, pressure, carrier.columns, walked.rows))
  const used = new Set<KnownColumn>([
    pressure,
    ...carrier.columns,
    ...ranges.filter((one) => one !== undefined),
  ])
  const ignored = segment.columns
    .filter((column) => !used.has(column) && !walked.rows.some(({ meanOf }) => meanOf?.steps === column))
    .flatMap((column) => {
      const why = whyIgnored(segment, column, best)
      return why ? [{ column, why }] : []
    })
  return {
    segment,
    pressure,
    carriers: carrier.columns,
    ranges,
    walked,
    law: best.law,
    tried: tried.map((one) => ({ pressure: one.pressure, carriers: one.carrier.columns, law: one.law })),
    doubts,
    ignored,
    ...(carrier.madeOf ? { total: carrier.madeOf } : {}),
  }
}

/** Which of several flows is meant; of one flow in two units, under the headings of each other, in which it is. */
function flowDoubt(segment: Segment, doubt: Pick<Doubt, 'columns' | 'at50'>): Doubt {
  const [one, other, ...more] = doubt.columns
  if (!one?.unit || !other?.unit || more.length > 0) return { about: 'flow', ...doubt }
  const isSwapped = sameInOtherUnit(segment, { ...one, unit: other.unit }, { ...other, unit: one.unit })
  return { about: 'flow', ...doubt, ...(isSwapped ? { unitsExchanged: true as const } : {}) }
}

/** Whether a candidate is so good that words do not decide between it and the best, and gives other figures. */
function isNear(one: Candidate, best: Candidate): boolean {
  const gap = best.score - one.score
  const isGauge =
    one.carrier === best.carrier &&
    one.pressure.role === 'pressure' &&
    best.pressure.role === 'pressure' &&
    !says(one.pressure.label, 'zero') &&
    physicsScore(one.law) >= PLAIN_CURVE
  if (gap >= (isGauge ? CLEAR_OF_GAUGES : CLEAR)) return false
  return !one.law || !best.law || Math.abs(one.law.at50 / best.law.at50 - 1) > SAME_FIGURE
}

/** The columns of candidates, each once, with the flow at 50 Pa that each gives. */
function asDoubt(
  candidates: readonly Candidate[],
  columnsOf: (one: Candidate) => readonly KnownColumn[],
): Pick<Doubt, 'columns' | 'at50'> {
  const found = new Map<KnownColumn, number | undefined>()
  for (const one of candidates)
    for (const column of columnsOf(one))
      if (!found.has(column)) found.set(column, columnsOf(one).length === 1 ? one.law?.at50 : undefined)
  return { columns: [...found.keys()], at50: [...found.values()] }
}

/** The column of rings or plates nearest to a device pressure. */
function rangeFor(
  { columns }: Segment,
  carrier: KnownColumn,
  index: number,
  of: number,
): KnownColumn | undefined {
  if (carrier.role !== 'device') return undefined
  const ranges = columns.filter(({ role }) => role === 'range')
  if (of > 1 && ranges.length === of) return ranges[index]
  return ranges.sort((a, b) => Math.abs(a.at - carrier.at) - Math.abs(b.at - carrier.at))[0]
}

/** The same flow or pressure in another unit, as m³/h beside l/s; pressures are rounded more coarsely. */
function sameInOtherUnit({ view, head }: Segment, one: KnownColumn, other: KnownColumn): boolean {
  const [first, second] = [one.unit, other.unit]
  const kind = first?.kind
  if (!first || !second || kind !== second.kind || first.unit === second.unit) return false
  if (kind !== 'flow' && kind !== 'pressure') return false
  const tolerance = kind === 'flow' ? 0.02 : 0.04
  let checked = 0
  for (let row = head.first; row < head.first + 30; row++) {
    const a = view.number(row, one.at)
    const b = view.number(row, other.at)
    if (a === undefined || b === undefined || a === 0) continue
    if (Math.abs(toRecordUnit(b, second) / toRecordUnit(a, first) - 1) > tolerance) return false
    checked++
  }
  return checked >= 3
}

function sameValues({ view, head }: Segment, one: KnownColumn, other: KnownColumn): boolean {
  let checked = 0
  for (let row = head.first; row < head.first + 30; row++) {
    const a = view.number(row, one.at)
    const b = view.number(row, other.at)
    if (a === undefined || b === undefined) continue
    if (a !== b) return false
    checked++
  }
  return checked >= 3 && one.unit?.unit === other.unit?.unit
}

function whyIgnored(
  segment: Segment,
  column: KnownColumn,
  { pressure, carrier }: Candidate,
): string | undefined {
  const first = carrier.columns[0] as KnownColumn
  switch (column.role) {
    case 'target':
      return columnReasons.target
    case 'device':
      return first.role === 'device' ? columnReasons.otherDevicePressure : columnReasons.fanPressure
    case 'induced':
      return columnReasons.induced
    case 'corrected':
      return columnReasons.corrected
    case 'flow':
      if (carrier.madeOf?.parts.includes(column))
        return carrier.madeOf.as === 'mean'
          ? columnReasons.sampleOfMean(first.headingCell)
          : columnReasons.partOfTotal(first.headingCell)
      return sameInOtherUnit(segment, first, column)
        ? columnReasons.sameFlow
        : columnReasons.betterFlow(first.headingCell)
    case 'pressure':
      if (sameInOtherUnit(segment, pressure, column)) return columnReasons.samePressure
      return columnReasons.betterPressure(pressure.headingCell)
    case 'derived':
      return columnReasons.derived
    case 'speed':
      return columnReasons.fanSpeed
    case 'time':
      return columnReasons.time
    case 'index':
      return columnReasons.number
    case 'range':
      return columnReasons.flowIsLogged
    case 'other':
      return column.numbers + column.texts > 0 ? columnReasons.notNeeded : undefined
    default:
      return undefined
  }
}
