import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import { toRecordUnit } from '../../cells/units.js'
import type { FieldName } from '../fields/classify.js'
import type { FoundField } from '../fields/found-field.js'
import { powerLaw } from '../tables/physics.js'
import type { FoundRun } from '../tables/runs.js'
import { valueText } from './group.js'

/** As many readings as cannot agree by chance. */
const FEWEST = 4

/** Fields that begin another test. */
const OF_A_TEST: readonly FieldName[] = ['volume', 'name', 'address', 'testId', 'date']

export interface Copy {
  readonly run: FoundRun
  readonly of: FoundRun
  /** It stands on the sheet of another house: typed there, or left over from the sheet that was copied. */
  readonly ofOtherHouse?: true
  /** The same readings with zero flow subtracted, or with corrected flows. */
  readonly corrected?: true
}

/**
 * The same readings on several sheets, or twice on one, as on sheets that calculate and report, are one run. Kept is where they were typed;
 * figures that formulas took over come second.
 */
export function copiesIn(runs: readonly FoundRun[], fields: readonly FoundField[]): Copy[] {
  const copies: Copy[] = []
  const flows = new Map(runs.map((run) => [run, flowsOf(run)]))
  const order = [...runs].sort((one, other) => rank(one) - rank(other))
  for (const [index, run] of order.entries()) {
    const of = order
      .slice(0, index)
      .find(
        (one) =>
          !copies.some((copy) => copy.run === one) &&
          (one.hidden === run.hidden || !one.hidden) &&
          !(one.direction && run.direction && one.direction !== run.direction) &&
          (sameFlows(flows.get(one) ?? [], flows.get(run) ?? [], run) ||
            hasColumnOf(one, run, flows.get(one) ?? []) ||
            isOtherUnit(one, run, flows.get(one) ?? [], flows.get(run) ?? []) ||
            isRounded(one, run) ||
            areOfSheet(run, one, flows)) &&
          (one.view.name !== run.view.name || isRepeated(one, run, fields)),
      )
    const measured = of ?? order.find((one) => isCorrectedOf(one, run, flows))
    if (measured)
      copies.push({
        run,
        of: measured,
        ...(isOfOtherHouse(run, measured, fields) ? { ofOtherHouse: true as const } : {}),
        ...(of ? {} : { corrected: true as const }),
      })
  }
  return copies
}

/** Two sheets that both state a volume have none in common: a sheet that reports repeats that of the house. */
function isOfOtherHouse(run: FoundRun, of: FoundRun, fields: readonly FoundField[]): boolean {
  const volumes = ({ view }: FoundRun) =>
    fields.filter((field) => field.name === 'volume' && field.view.name === view.name).map(valueText)
  const [own, others] = [volumes(run), volumes(of)]
  return own.length > 0 && others.length > 0 && !own.some((value) => others.includes(value))
}

/** On one sheet every digit of a copy agrees, and no house or test of its own stands between: at most the same form once more. */
const isRepeated = (one: FoundRun, other: FoundRun, fields: readonly FoundField[]): boolean =>
  fields
    .filter(
      ({ name, view, row }) =>
        OF_A_TEST.includes(name) &&
        view.name === one.view.name &&
        row > Math.min(one.bottom, other.bottom) &&
        row < Math.max(one.top, other.top),
    )
    .every((field) => isSaidAbove(field, Math.min(one.top, other.top), fields)) &&
  one.row === undefined &&
  one.houseColumn === undefined &&
  one.test === other.test &&
  one.readings.length === other.readings.length &&
  one.readings.every(({ pressure }, index) => pressure.value === other.readings[index]?.pressure.value)

const isSaidAbove = (field: FoundField, top: number, fields: readonly FoundField[]): boolean =>
  fields.some(
    ({ name, view, row, ...above }) =>
      name === field.name &&
      view.name === field.view.name &&
      row < top &&
      valueText({ name, view, row, ...above }) === valueText(field),
  )

/** Corrections of a flow for the density of the air stay below this share. Common practice, no source. */
const MOST_CORRECTED = 1.15
/** Rounding of figures with one decimal. */
const ROUNDED = 0.11

/**
 * "Building pressure | flow" and elsewhere "corrected pressure | corrected flow": each pressure less the same zero flow, each flow times the same factor.
 */
function isCorrectedOf(
  one: FoundRun,
  run: FoundRun,
  flows: ReadonlyMap<FoundRun, readonly number[]>,
): boolean {
  const isMeasured = ({ block }: FoundRun) =>
    block.pressure.role !== 'induced' && block.carriers.every(({ role }) => role !== 'corrected')
  if (isMeasured(run) || !isMeasured(one) || run.readings.length < FEWEST) return false
  if (one.readings.length !== run.readings.length || one.hidden !== run.hidden) return false
  if (one.direction && run.direction && one.direction !== run.direction) return false
  const [own, others] = [one, run].map((each) => inUnits(each, flows.get(each) ?? [])) as [number[], number[]]
  const shifts = one.readings.map(
    ({ pressure }, index) => Math.abs(pressure.value) - Math.abs(run.readings[index]?.pressure.value ?? 0),
  )
  const factors = own.map((flow, index) => (others[index] as number) / flow)
  if (Math.max(...shifts) - Math.min(...shifts) > ROUNDED) return false
  if (one.block.carriers.every(({ role }) => role === 'device')) return followsOne(own, others)
  return (
    factors.every((factor) => factor < MOST_CORRECTED && factor > 1 / MOST_CORRECTED) && areAlike(own, others)
  )
}

/** Flows in the unit of the record, where their heading states one. */
function inUnits({ block }: FoundRun, flows: readonly number[]): number[] {
  const unit = block.carriers[0]?.unit
  return flows.map((flow) => (unit?.kind === 'flow' ? toRecordUnit(flow, unit) : flow))
}

/** Flows that follow from the pressures at the flow device by one power, but for rounding. */
function followsOne(pressures: readonly number[], flows: readonly number[]): boolean {
  const law = powerLaw(pressures, flows)
  return (
    law !== undefined &&
    law.exponent > POWERS.least &&
    law.exponent < POWERS.most &&
    law.rSquared > WORKED_OUT
  )
}

/** Exponents of orifices and nozzles: the square root, within what calibrations give. Common practice, no source. */
const POWERS = { least: 0.4, most: 0.65 }
/** r² of flows that were worked out from rounded pressures. */
const WORKED_OUT = 0.9995

/** Flows times one factor, but for rounding to one decimal or to whole numbers. */
const areAlike = (own: readonly number[], others: readonly number[]): boolean => {
  const factor = others.reduce((sum, one) => sum + one, 0) / own.reduce((sum, one) => sum + one, 0)
  return own.every((flow, index) => Math.abs((others[index] as number) - factor * flow) < 0.5 + 0.003 * flow)
}

/** Typed before taken over by formulas, with zero flow of its own before without. */
const rank = (run: FoundRun): number =>
  (run.hidden ? 4 : 0) +
  (isFormula(run) ? 2 : 0) +
  (run.zeroBefore.length + run.zeroAfter.length === 0 ? 1 : 0)

const isFormula = ({ view, block, readings }: FoundRun): boolean =>
  readings.some(({ row }) =>
    [block.pressure, ...block.carriers].some(({ at }) => {
      const content = view.at(row, at)
      return content?.kind === 'number' && content.formula !== undefined
    }),
  )

/** Flows in one proportion throughout are the same flows, in whatever unit. */
function sameFlows(first: readonly number[], second: readonly number[], other: FoundRun): boolean {
  if (first.length < FEWEST || first.length !== second.length) return false
  const share = (second[0] as number) / (first[0] as number)
  return (
    first.every((flow, index) => Math.abs((second[index] as number) / flow / share - 1) < 1e-6) &&
    (share === 1 || isFormula(other))
  )
}

/** A sheet that calculates has the flows of another beside what it makes of them. */
function hasColumnOf(one: FoundRun, run: FoundRun, flows: readonly number[]): boolean {
  if (one.view.name === run.view.name || flows.length < FEWEST || flows.length !== run.readings.length)
    return false
  const { view, block, readings } = run
  return block.segment.columns.some(
    ({ at, role }) =>
      (role === 'flow' || role === 'corrected') &&
      readings.every(({ row }, index) => Math.abs(view.number(row, at) ?? Number.NaN) === flows[index]),
  )
}

/** The same pressures with the same flows in another unit, rounded: "Same in l/s". */
function isOtherUnit(
  one: FoundRun,
  other: FoundRun,
  flows: readonly number[],
  others: readonly number[],
): boolean {
  const [unit, next] = [one, other].map(({ block }) => block.carriers[0]?.unit)
  if (unit?.kind !== 'flow' || next?.kind !== 'flow' || unit.unit === next.unit) return false
  if (flows.length < FEWEST || flows.length !== others.length) return false
  return flows.every(
    (flow, index) =>
      one.readings[index]?.pressure.value === other.readings[index]?.pressure.value &&
      Math.abs(toRecordUnit(others[index] as number, next) / toRecordUnit(flow, unit) - 1) < 1e-3,
  )
}

/** A sheet for printing with the same readings in whole numbers. */
function isRounded(one: FoundRun, other: FoundRun): boolean {
  if (one.view.name === other.view.name || one.readings.length < FEWEST) return false
  if (!other.readings.every(({ pressure }) => Number.isInteger(pressure.value))) return false
  const valuesOf = ({ readings }: FoundRun) =>
    readings.flatMap(({ pressure, carriers }) => [
      pressure.value,
      ...carriers.map((flow) => flow?.value ?? 0),
    ])
  const [whole, rounded] = [valuesOf(one), valuesOf(other)]
  return (
    whole.length === rounded.length &&
    !whole.every(Number.isInteger) &&
    rounded.every(
      (value, index) => Number.isInteger(value) && Math.abs(value - (whole[index] as number)) <= 0.5,
    )
  )
}

/** "Chart data": the flows of both runs of another sheet in one list. */
function areOfSheet(run: FoundRun, one: FoundRun, flows: ReadonlyMap<FoundRun, readonly number[]>): boolean {
  const [first] = flows.get(one) ?? []
  const own = flows.get(run) ?? []
  if (run.view.name === one.view.name || own.length < 2 * FEWEST || !own.includes(first ?? -1)) return false
  const there = [...flows].flatMap(([other, theirs]) => (other.view.name === one.view.name ? theirs : []))
  const shared = own.filter((flow) => flows.get(one)?.includes(flow))
  return shared.length >= FEWEST && own.every((flow) => there.includes(flow))
}

const flowsOf = ({ readings }: FoundRun): number[] =>
  readings.map(({ carriers }) => carriers.reduce((sum, one) => sum + Math.abs(one?.value ?? 0), 0))

/** What was left out as a copy, with where it was read instead. */
export const tellCopies = (copies: readonly Copy[]) =>
  copies.map(({ run, of, corrected }) => {
    const [copy, original] = [run.block.pressure.headingCell, of.block.pressure.headingCell]
    const name = corrected ? 'log-copy/corrected' : 'log-copy'
    return remarkFinding(fileText(name, { copy, original }), [copy, original])
  })
