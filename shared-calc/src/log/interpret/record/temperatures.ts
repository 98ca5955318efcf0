import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { questions } from '../../../catalogue/questions.js'
import { unitOfRoom } from '../../cells/likely-unit.js'
import { type KnownUnit, shown, toRecordUnit } from '../../cells/units.js'
import type { Written } from '../../cells/written.js'
import { mean } from '../../mean.js'
import type { FoundField } from '../fields/found-field.js'
import { withMean, withValue } from '../fields/of-moments.js'
import type { FoundRun } from '../tables/runs.js'
import type { FieldScope } from '../tests/scope.js'
import { directionIn, says } from '../words/label.js'
import type { Draft } from './draft.js'
import { agreeing, answeredUnit, meanOfMoments, put } from './put-field.js'

const PATHS = {
  indoor: 'conditions.indoorTemperature_C',
  outdoor: 'conditions.outdoorTemperature_C',
} as const
type Side = keyof typeof PATHS

interface Temperature {
  written: Written
  unit?: KnownUnit
  field: FoundField
}

/** What stands where a temperature is expected and is none. */
export type UnreadTemperature = (side: Side) => { text: string; cell: string } | undefined

/** Both temperatures of a test; one that is missing, or that the log states twice, is asked for. */
export function putTemperatures(
  draft: Draft,
  scope: FieldScope,
  runs: readonly FoundRun[],
  unread: UnreadTemperature,
) {
  const pairs = scope.all('temperatures').flatMap((pair) => ofPair(pair) ?? [])
  const of = (side: Side): Temperature | undefined => {
    const own = scope.all(`${side}Temperature`)
    const columns = own.filter(({ ofReadings }) => ofReadings)
    const single =
      columns.length < own.length ? own.filter((one) => !one.ofReadings) : pairs.map((pair) => pair[side])
    const field =
      besideReadings(draft, single, columns, side) ?? oneOf(draft, [...single, ...columns], side, runs)
    if (field?.content.kind !== 'number') return undefined
    const { written } = field.content
    const unit = written.unit ?? field.unit
    return { written, ...(unit ? { unit } : {}), field }
  }
  const indoor = of('indoor')
  const outdoor = of('outdoor')
  const unit = indoor?.unit ?? outdoor?.unit
  const likely = indoor && unitOfRoom(indoor.written.value)
  putTemperature(draft, 'indoor', indoor, unit ?? likely, unread)
  putTemperature(draft, 'outdoor', outdoor, unit ?? likely, unread)
}

/** A temperature stated for the whole test is that of the test where those beside its readings agree with it, within so much, K. */
const AGREES = 1

/** The temperature of a test that has one for each reading as well. Undefined where there is none, or where the two differ. */
function besideReadings(
  draft: Draft,
  single: readonly FoundField[],
  columns: readonly FoundField[],
  side: Side,
): FoundField | undefined {
  const values = columns.flatMap((field) => numberIn(field) ?? [])
  const [column, ...more] = columns
  if (column?.content.kind !== 'number' || values.length < columns.length) return undefined
  const value = Number((mean(values) as number).toPrecision(6))
  const [stated, ...others] = single
  const cells = columns.flatMap(({ cell, meanWith = [] }) => [cell, ...meanWith])
  if (!stated) return more.length === 0 ? column : withValue(column, column.content, value, cells.slice(1))
  const own = numberIn(stated)
  const unit = unitOfField(column) ?? unitOfField(stated) ?? likelyUnit(own)
  if (own === undefined || others.length > 0 || !unit) return undefined
  const [one, other] = [toRecordUnit(own, unitOfField(stated) ?? unit), toRecordUnit(value, unit)]
  if (Math.abs(one - other) > AGREES) return undefined
  draft.tell(
    fieldText('log-temperature-of-readings', { side, mean: `${value} ${shown(unit.unit)}` }),
    cells,
    PATHS[side],
  )
  return stated
}

const unitOfField = ({ content, unit }: FoundField): KnownUnit | undefined =>
  (content.kind === 'number' ? content.written.unit : undefined) ?? unit

const numberIn = ({ content }: FoundField): number | undefined =>
  content.kind === 'number' ? content.written.value : undefined

/** The two temperatures of "in / out | 20.3 / 5.2 °C". */
function ofPair(pair: FoundField): Record<Side, FoundField> | undefined {
  const numbers = pair.content.kind === 'text' ? pair.content.numbers : undefined
  if (numbers?.length !== 2) return undefined
  const [indoor, outdoor] = numbers.map((own): FoundField => {
    const unit = own.unit ?? numbers[1]?.unit ?? pair.unit
    return { ...pair, content: { kind: 'number', written: own }, ...(unit ? { unit } : {}) }
  }) as [FoundField, FoundField]
  const isOutsideFirst =
    pair.label.padded.search(/ (out|outside|aussen|ext|exterieur|te|ta) /) >= 0 && outsideFirst(pair)
  return isOutsideFirst ? { indoor: outdoor, outdoor: indoor } : { indoor, outdoor }
}

/**
 * The temperature of a test of all that the log states: the only one, or the mean of the values before and after or of each run. Values
 * that nothing tells apart are asked for.
 */
function oneOf(
  draft: Draft,
  fields: readonly FoundField[],
  side: Side,
  runs: readonly FoundRun[],
): FoundField | undefined {
  const path = PATHS[side]
  const stated = fields.flatMap((field) =>
    field.content.kind === 'number'
      ? { field, value: field.content.written.value, unit: field.content.written.unit ?? field.unit }
      : [],
  )
  const [first, second, ...more] = stated
  const unit = stated.find((one) => one.unit?.kind === 'temperature')?.unit ?? likelyUnit(first?.value)
  if (!first || !second || !unit) return agreeing(draft, fields, path)
  const celsius = stated.map((one) => toRecordUnit(one.value, one.unit ?? unit))
  if (stated.every(({ field }, index) => isSame(celsius[0] ?? 0, celsius[index] ?? 0, first.field, field)))
    return first.field
  const whole = meanOfAll(
    stated.map(({ field }) => field),
    celsius,
  )
  if (whole) return whole
  const pair =
    more.length > 0
      ? undefined
      : (meanOfMoments(first.field, second.field) ?? meanOfRuns(first.field, second.field, runs))
  if (pair) return pair
  if (draft.answers[path] === undefined)
    draft.ask({
      path,
      cells: stated.map(({ field }) => field.cell),
      ...questions.whichTemperature({
        side,
        values: stated.map(({ field, value, unit: own }) => ({
          text: `${value} ${shown((own ?? unit).unit)}`,
          label: field.label.text,
          cell: field.cell,
        })),
        mean: `${Number((mean(celsius) as number).toFixed(2))} °C`,
      }),
    })
  return first.field
}

/** "Ground floor 21.5 | first floor 20.5 | mean 21.0": the mean that the log works out of all the others. */
function meanOfAll(fields: readonly FoundField[], celsius: readonly number[]): FoundField | undefined {
  const [at, ...more] = fields.flatMap(({ label }, index) => (says(label, 'mean') ? index : []))
  if (at === undefined || more.length > 0 || fields.length < 3) return undefined
  const others = celsius.filter((_, index) => index !== at)
  if (Math.abs((mean(others) as number) - (celsius[at] as number)) > ROUNDED.here) return undefined
  const also = fields.flatMap(({ cell }, index) => (index === at ? [] : cell))
  return { ...(fields[at] as FoundField), also }
}

const likelyUnit = (value: number | undefined): KnownUnit | undefined =>
  value === undefined ? undefined : unitOfRoom(value)

/** Differences that rounding explains, K: on one sheet, and where another sheet repeats a value in whole degrees. */
const ROUNDED = { here: 0.06, elsewhere: 0.5 }

const isSame = (one: number, other: number, first: FoundField, second: FoundField): boolean =>
  Math.abs(one - other) <=
  (first.view.name !== second.view.name && (Number.isInteger(one) || Number.isInteger(other))
    ? ROUNDED.elsewhere
    : ROUNDED.here)

/** One value for each of two runs: by the words of their labels, or each above its run or on its sheet. */
function meanOfRuns(
  first: FoundField,
  second: FoundField,
  runs: readonly FoundRun[],
): FoundField | undefined {
  const { content } = first
  if (content.kind !== 'number' || second.content.kind !== 'number') return undefined
  if (unitOfField(first)?.unit !== unitOfField(second)?.unit || runs.length !== 2) return undefined
  const named = [first, second].map(({ label }) => directionIn(label))
  const own = [first, second].map((field) => runs.findIndex((run) => standsBefore(field, run)))
  const ofEach = named.every((one) => one)
    ? named[0] !== named[1]
    : own.every((one) => one >= 0) && own[0] !== own[1]
  if (!ofEach) return undefined
  return withMean(first, content, content.written.value, second.content.written.value, [
    ...(first.meanWith ?? []),
    second.cell,
    ...(second.meanWith ?? []),
  ])
}

/** On the sheet of a run, above its first reading and below what is read of another. */
function standsBefore({ view, row }: FoundField, run: FoundRun): boolean {
  if (view.name !== run.view.name) return false
  return !run.view.turned && row < run.top && row >= run.block.segment.head.top - ROWS_ABOVE
}

/** A run has a form of its own over its headings, of so many rows at most. */
const ROWS_ABOVE = 8

const outsideFirst = ({ label }: FoundField): boolean => {
  const { tokens } = label
  const out = tokens.findIndex((token) =>
    /^(out|outside|outdoor|aussen|ext|exterieur|te|ta|buiten)$/.test(token),
  )
  const inside = tokens.findIndex((token) => /^(in|inside|indoor|innen|int|interieur|ti|binnen)$/.test(token))
  return out >= 0 && inside >= 0 && out < inside
}

function putTemperature(
  draft: Draft,
  side: Side,
  found: Temperature | undefined,
  unit: KnownUnit | undefined,
  unreadOf: UnreadTemperature,
) {
  const path = PATHS[side]
  const given = draft.answered(path)
  if (given !== undefined) return draft.put(path, given)
  if (!found) {
    const unstored = draft.unstoredCell(`${side}Temperature`)
    const unread = unstored === undefined ? unreadOf(side) : undefined
    const cell = unstored ?? unread?.cell
    return draft.ask({
      path,
      cells: cell === undefined ? [] : [cell],
      ...questions.temperature({ side, unstored, unread }),
    })
  }
  const { written, field } = found
  const { value } = written
  // "Indoor temperature (°C) | 68 | °F"
  const isTwice = field.rivalUnit?.kind === 'temperature'
  const own =
    (isTwice ? undefined : (found.unit ?? unit)) ?? answeredUnit(draft, 'temperature.unit', field.cell)
  if (!own)
    return draft.ask({
      path: 'temperature.unit',
      cells: [field.cell],
      ...questions.temperatureUnit({ side, value }),
    })
  if (!found.unit && unit)
    draft.tell(
      fieldText('log-unit-likely/temperature', { value, indoors: side === 'indoor', ...scalesOf(own) }),
      field.cell,
      path,
    )
  put(draft, field, path, draft.quantity(written, own, field.cell, path))
}

const scalesOf = ({ unit }: KnownUnit) =>
  unit === 'degC' ? ({ unit: '°C', other: '°F' } as const) : ({ unit: '°F', other: '°C' } as const)
