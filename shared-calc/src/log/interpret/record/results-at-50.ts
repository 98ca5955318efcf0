import { type KnownUnit, shown, toRecordUnit } from '../../cells/units.js'
import { powerLaw } from '../tables/physics.js'
import type { FoundRun } from '../tables/runs.js'
import type { FieldScope } from '../tests/scope.js'
import type { Draft } from './draft.js'

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
}

const unitOf = (unit: string): KnownUnit => ({ kind: 'flow', unit })
const FLOWS = ['m^3/h', 'L/s', 'cuft/minute', 'm^3/s', 'm^3/minute'].map(unitOf)
/** In which firms log flows by hand. */
const USUAL = FLOWS.slice(0, 3)

/** A result agrees so far with the curve through pressures that zero flow is still in, and with flows not yet corrected for air. */
const AGREES = 0.08
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
  const size = { n50: building.volume_m3, qE50: building.envelopeArea_m2 }
  return (['n50', 'qE50', 'q50'] as const).flatMap((name) =>
    scope.all(name).flatMap(({ content, unit, cell, label }): ResultAt50[] => {
      if (content.kind !== 'number') return []
      const { value } = content.written
      const own = content.written.unit ?? unit
      const per = name === 'q50' ? undefined : size[name]
      const flow =
        name !== 'q50' ? per && value * per : own?.kind === 'flow' ? toRecordUnit(value, own) : undefined
      return flow ? [{ flow, value, label: label.text.trim() || name, cell }] : []
    }),
  )
}

/** The only unit with which the readings of a log give a result that it records. */
export function provenUnit(
  runs: readonly FoundRun[],
  results: readonly ResultAt50[],
): { unit: KnownUnit; by: ResultAt50 } | undefined {
  for (const by of results) {
    const fitting = FLOWS.filter((unit) =>
      agrees(
        meanAt50(runs, () => unit),
        by,
      ),
    )
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
): UnitDoubt | undefined {
  const flows = runs.flatMap((run, index) => at50(run, units[index] as KnownUnit) ?? [])
  const mean = meanAt50(runs, (index) => units[index] as KnownUnit)
  if (mean === undefined || flows.length < runs.length) return undefined
  const n50 = volume === undefined ? undefined : mean / volume
  const given = { stated: units.map(({ unit }) => shown(unit)), flows, n50 }
  const distinct = [...new Map(units.map((one) => [one.unit, one])).values()]
  const [first, second] = flows
  if (distinct.length > 1 && first && second && flows.length === 2) {
    const inOne = runs.map((run) => at50(run, M3_H) ?? Number.NaN)
    const apart = (one: number, other: number) => Math.abs(Math.log(one / other))
    const asStated = apart(first, second)
    if (asStated > Math.log(DIRECTIONS) && apart(inOne[0] as number, inOne[1] as number) < asStated)
      return { ...given, cells: [], better: distinct.map(({ unit }) => shown(unit)) }
  }
  if (distinct.length > 1) return undefined
  const others = FLOWS.filter(({ unit }) => unit !== distinct[0]?.unit)
  const isConfirmed = results.some((result) => Math.abs(mean / result.flow - 1) < CONTRADICTS)
  for (const result of isConfirmed ? [] : results) {
    const better = others.filter((unit) =>
      agrees(
        meanAt50(runs, () => unit),
        result,
      ),
    )
    if (better.length > 0)
      return { ...given, cells: [result.cell], better: better.map(({ unit }) => shown(unit)), result }
  }
  if (isConfirmed || n50 === undefined || (n50 >= POSSIBLE.lowest && n50 <= POSSIBLE.highest))
    return undefined
  const better = USUAL.filter((unit) => {
    const other = (meanAt50(runs, () => unit) ?? 0) / (volume as number)
    return unit.unit !== distinct[0]?.unit && other >= LIKELY.lowest && other <= LIKELY.highest
  })
  return better.length > 0
    ? { ...given, cells: [], better: better.map(({ unit }) => shown(unit)) }
    : undefined
}

const M3_H = unitOf('m^3/h')
const PA: KnownUnit = { kind: 'pressure', unit: 'Pa' }

const agrees = (flow: number | undefined, { flow: wanted }: ResultAt50): boolean =>
  flow !== undefined && Math.abs(flow / wanted - 1) < AGREES

/** Mean flow at 50 Pa of all runs, m³/h; undefined where one of them has no curve. */
function meanAt50(runs: readonly FoundRun[], unitOfRun: (index: number) => KnownUnit): number | undefined {
  const flows = runs.map((run, index) => at50(run, unitOfRun(index)))
  return flows.length === 0 || flows.includes(undefined)
    ? undefined
    : (flows as number[]).reduce((sum, one) => sum + one, 0) / flows.length
}

/** Flow of a run at 50 Pa, m³/h, by the curve through its readings as logged. */
function at50({ block, readings }: FoundRun, unit: KnownUnit): number | undefined {
  const rows = readings.filter(({ carriers }) => carriers.some((one) => one))
  const ofPressures = block.pressure.unit?.kind === 'pressure' ? block.pressure.unit : PA
  return powerLaw(
    rows.map(({ pressure }) =>
      toRecordUnit(pressure.value, pressure.unit?.kind === 'pressure' ? pressure.unit : ofPressures),
    ),
    rows.map(({ carriers }) =>
      carriers.reduce(
        (sum, one) =>
          sum + (one ? Math.abs(toRecordUnit(one.value, one.unit?.kind === 'flow' ? one.unit : unit)) : 0),
        0,
      ),
    ),
  )?.at50
}
