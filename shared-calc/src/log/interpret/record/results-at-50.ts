import { type KnownUnit, shown, toRecordUnit } from '../../cells/units.js'
import { powerLaw } from '../tables/physics.js'
import type { FoundRun } from '../tables/runs.js'
import type { FieldScope } from '../tests/scope.js'
import type { Draft } from './draft.js'
import type { RangeOfDevice } from './range-of-device.js'
import { resultsOfLog } from './result-of-log.js'

/** Flow at 50 Pa that a result of the log stands for, m³/h. */
export interface ResultAt50 {
  readonly flow: number
  readonly value: number
  readonly label: string
  readonly cell: string
}

/** The likeliest unit other than those stated, with what speaks for it, as the question says it. */
export interface UnitDoubt {
  readonly cells: readonly string[]
  /** Units as the headings state them and as they are shown, one for each run. */
  readonly stated: readonly string[]
  /** In m³/h at 50 Pa, by the units stated. */
  readonly flows: readonly number[]
  /** Air change rate by the units stated. */
  readonly n50: number | undefined
  /** Units that fit better, as they are shown, the likeliest first. */
  readonly better: readonly string[]
  readonly result?: ResultAt50
  /** What the flow device measures, where no flow is within it. */
  readonly range?: RangeOfDevice
}

const unitOf = (unit: string): KnownUnit => ({ kind: 'flow', unit })
const FLOWS = ['m^3/h', 'L/s', 'cuft/minute', 'm^3/s', 'm^3/minute'].map(unitOf)
/** In which firms log flows by hand. */
const USUAL = FLOWS.slice(0, 3)

/** A result agrees so far with the curve through pressures that zero flow is still in, and with flows not yet corrected for air. */
const AGREES = 0.08
/** The same where a unit is stated and only the result speaks against it. */
const AGREES_WELL = 0.04
/** A result that is off by more contradicts the readings. */
const CONTRADICTS = 0.2
/** Two directions of one house differ less; common practice, no source. */
const DIRECTIONS = 1.25
/** Air changes an hour that no test of a house shows, and those that are usual; common practice, no source. */
const POSSIBLE = { lowest: 0.02, highest: 40 }
const LIKELY = { lowest: 0.1, highest: 15 }

/** The results at 50 Pa that the log records, where the sizes they are related to are known. */
export function resultsAt50(draft: Draft, scope: FieldScope): ResultAt50[] {
  const { building = {} } = draft.record as { building?: { volume_m3?: number; envelopeArea_m2?: number } }
  const size = { n50: building.volume_m3, qE50: building.envelopeArea_m2, q50: 1 }
  return resultsOfLog(scope).flatMap(({ name, value, isSure, label, cell }): ResultAt50[] => {
    const per = size[name]
    return per && isSure ? [{ flow: value * per, value, label, cell }] : []
  })
}

/** The only unit with which the readings of a log give a result that it records. */
export function provenUnit(
  runs: readonly FoundRun[],
  results: readonly ResultAt50[],
): { unit: KnownUnit; by: ResultAt50 } | undefined {
  const mean = results.length > 0 ? meanOf(loggedAt50(runs)) : undefined
  if (mean === undefined) return undefined
  for (const by of results) {
    const fitting = FLOWS.filter((unit) => agrees(toRecordUnit(mean, unit), by, AGREES))
    if (fitting.length === 1) return { unit: fitting[0] as KnownUnit, by }
  }
  return undefined
}

/** Stated units with which the readings contradict each other, the results of the log or what is possible, where others do not. */
export function doubtOfUnits(
  runs: readonly FoundRun[],
  units: readonly KnownUnit[],
  results: readonly ResultAt50[],
  volume: number | undefined,
  rangeOf: () => RangeOfDevice | undefined,
): UnitDoubt | undefined {
  const logged = loggedAt50(runs)
  const flows = logged.map((flow, index) => toRecordUnit(flow, units[index] as KnownUnit))
  const [mean, plain] = [meanOf(flows), meanOf(logged)]
  if (mean === undefined || plain === undefined) return undefined
  const n50 = volume === undefined ? undefined : mean / volume
  const doubt = (better: readonly KnownUnit[], result?: ResultAt50): UnitDoubt | undefined =>
    better.length === 0
      ? undefined
      : {
          stated: units.map(({ unit }) => shown(unit)),
          flows,
          n50,
          cells: result ? [result.cell] : [],
          better: better.map(({ unit }) => shown(unit)),
          ...(result ? { result } : {}),
        }
  const distinct = [...new Map(units.map((one) => [one.unit, one])).values()]
  if (distinct.length > 1)
    return apart(flows) > Math.log(DIRECTIONS) && apart(logged) < apart(flows) ? doubt(distinct) : undefined
  const others = FLOWS.filter(({ unit }) => unit !== distinct[0]?.unit)
  const isNear = (flow: number) => results.some((result) => Math.abs(flow / result.flow - 1) < CONTRADICTS)
  if ([mean, ...flows].some(isNear)) return undefined
  for (const result of results) {
    // The result may be that of one run.
    const better = others.filter((unit) =>
      [plain, ...logged].some((flow) => agrees(toRecordUnit(flow, unit), result, AGREES_WELL)),
    )
    if (better.length > 0) return doubt(better, result)
  }
  // Looked for in every cell, so only where nothing else has told.
  const range = rangeOf()
  if (range) {
    const [stated] = distinct
    const better = USUAL.filter((unit) => others.includes(unit) && isWithin(runs, unit, range))
    const none = stated !== undefined && isBeyond(runs, stated, range) ? doubt(better) : undefined
    if (none) return { ...none, cells: [range.cell], range }
  }
  if (volume === undefined || n50 === undefined || isBetween(n50, POSSIBLE)) return undefined
  return doubt(
    USUAL.filter((unit) => others.includes(unit) && isBetween(toRecordUnit(plain, unit) / volume, LIKELY)),
  )
}

/** Air changes an hour at 50 Pa by flows in the units stated, where hardly any building leaks so much or so little and no result of the log agrees. */
export function unusualChange(
  runs: readonly FoundRun[],
  units: readonly KnownUnit[],
  results: readonly ResultAt50[],
  volume: number | undefined,
): number | undefined {
  const flows = loggedAt50(runs).map((flow, index) => toRecordUnit(flow, units[index] as KnownUnit))
  const mean = meanOf(flows)
  if (mean === undefined || !volume || isBetween(mean / volume, LIKELY)) return undefined
  const isNear = (flow: number) => results.some((result) => Math.abs(flow / result.flow - 1) < CONTRADICTS)
  return [mean, ...flows].some(isNear) ? undefined : mean / volume
}

const PA: KnownUnit = { kind: 'pressure', unit: 'Pa' }

const agrees = (flow: number, { flow: wanted }: ResultAt50, within: number): boolean =>
  Math.abs(flow / wanted - 1) < within

const isBetween = (value: number, { lowest, highest }: { lowest: number; highest: number }): boolean =>
  value >= lowest && value <= highest

/** Flows may be a little outside what a device is stated for. */
const ABOUT = 1.1

/** The least and the greatest flow of all readings in a unit, m³/h. */
function extremesIn(runs: readonly FoundRun[], unit: KnownUnit): [number, number] {
  const flows = runs.flatMap(({ readings }) =>
    readings.flatMap(({ carriers }) =>
      carriers.length === 1 && carriers[0] ? toRecordUnit(Math.abs(carriers[0].value), unit) : [],
    ),
  )
  return [Math.min(...flows), Math.max(...flows)]
}

/** Some flow is outside what the device measures. */
function isBeyond(runs: readonly FoundRun[], unit: KnownUnit, { lowest, highest }: RangeOfDevice): boolean {
  const [least, most] = extremesIn(runs, unit)
  return least * ABOUT < lowest || most > highest * ABOUT
}

function isWithin(runs: readonly FoundRun[], unit: KnownUnit, { lowest, highest }: RangeOfDevice): boolean {
  const [least, most] = extremesIn(runs, unit)
  return least * ABOUT > lowest && most < highest * ABOUT
}

/** How far two flows lie apart, as a logarithm. */
const apart = ([first = 1, second = first]: readonly number[]): number => Math.abs(Math.log(first / second))

const meanOf = (flows: readonly number[]): number | undefined =>
  flows.length === 0 ? undefined : flows.reduce((sum, one) => sum + one, 0) / flows.length

/** Flow of each run at 50 Pa by the curve through its readings, in the unit logged; none where one run has no curve. */
function loggedAt50(runs: readonly FoundRun[]): number[] {
  const flows = runs.flatMap(({ block, readings }): number[] => {
    const rows = readings.filter(({ carriers }) => carriers.some((one) => one))
    const own = block.pressure.unit?.kind === 'pressure' ? block.pressure.unit : PA
    // A number with a unit of its own needs none from its heading.
    if (rows.some(({ carriers }) => carriers.some((one) => one?.unit?.kind === 'flow'))) return []
    const isWhole = readings.length === block.walked.rows.filter(({ kind }) => kind === 'reading').length
    if (isWhole && own.unit === 'Pa' && block.law) return [block.law.at50]
    const law = powerLaw(
      rows.map(({ pressure }) =>
        toRecordUnit(pressure.value, pressure.unit?.kind === 'pressure' ? pressure.unit : own),
      ),
      rows.map(({ carriers }) => carriers.reduce((sum, one) => sum + Math.abs(one?.value ?? 0), 0)),
    )
    return law ? [law.at50] : []
  })
  return flows.length === runs.length ? flows : []
}
