import { cellText } from '../../../catalogue/findings/log/cells.js'
import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { valueReasons } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { placeWords } from '../../../contract/record/index.js'
import { unitOfBarometer } from '../../cells/likely-unit.js'
import type { KnownUnit, QuantityKind } from '../../cells/units.js'
import { findUnit, RECORD_UNITS, shown } from '../../cells/units.js'
import type { FoundField } from '../fields/found-field.js'
import { withMean } from '../fields/of-moments.js'
import type { FoundRun } from '../tables/runs.js'
import type { FieldScope } from '../tests/scope.js'
import { says } from '../words/label.js'
import type { Draft } from './draft.js'
import { putTemperatures } from './temperatures.js'

/** Temperatures, air pressure, humidity and wind. Missing temperatures are asked for. */
export function putConditions(draft: Draft, scope: FieldScope, runs: readonly FoundRun[]) {
  putTemperatures(draft, scope, runs)
  putBarometer(draft, scope)
  for (const [name, path] of [
    ['indoorHumidity', 'conditions.indoorRelativeHumidity'],
    ['outdoorHumidity', 'conditions.outdoorRelativeHumidity'],
  ] as const)
    putHumidity(draft, scope.all(name)[0], path)
  const given = draft.answered('conditions.windSpeed_m_s')
  const wind = scope.all('windSpeed')[0]
  if (given !== undefined) draft.put('conditions.windSpeed_m_s', given)
  else if (wind?.unit && wind.content.kind === 'number')
    put(
      draft,
      wind,
      'conditions.windSpeed_m_s',
      draft.quantity(wind.content.written, wind.unit, wind.cell, 'conditions.windSpeed_m_s'),
    )
  const force = scope.all('beaufort')[0]
  if (
    force?.content.kind === 'number' &&
    Number.isInteger(force.content.written.value) &&
    force.content.written.value >= 0 &&
    force.content.written.value <= 12
  )
    put(
      draft,
      force,
      'conditions.beaufort',
      draft.plain(force.content.written, force.cell, 'conditions.beaufort'),
    )
  for (const path of ['conditions.windAt', 'conditions.beaufort']) {
    const typed = draft.answered(path)
    if (typed !== undefined) draft.put(path, typed)
  }
}

/** Fields as people call them. */
const NAMES: Record<string, string> = {
  'building.name': 'name of the building',
  'building.address': 'address',
  'building.volume_m3': 'internal volume',
  'building.volumeBasis': 'basis of the volume',
  'building.envelopeArea_m2': 'envelope area',
  'building.floorArea_m2': 'floor area',
  'building.height_m': 'height of the building',
  'building.altitude_m': 'altitude',
  'conditions.indoorTemperature_C': 'indoor temperature',
  'conditions.outdoorTemperature_C': 'outdoor temperature',
  'conditions.barometricPressure_Pa': 'barometric pressure',
  'conditions.indoorRelativeHumidity': 'indoor humidity',
  'conditions.outdoorRelativeHumidity': 'outdoor humidity',
  'conditions.windSpeed_m_s': 'wind speed',
  'conditions.beaufort': 'Beaufort force',
  'test.date': 'date of the test',
  'test.client': 'client',
  'test.tester': 'tester',
  'test.id': 'test number',
  'test.notes': 'notes',
  'test.method': 'test method',
  'test.stage': 'stage',
}

export function put(draft: Draft, field: FoundField, path: string, value: unknown) {
  draft.put(path, value, field.cell)
  draft.use(field.cell, field.label.text, NAMES[path] ?? path, path, `labelled "${field.label.text}"`)
  if (field.meanWith) draft.tell(fieldText('log-mean-of-two'), [field.cell, ...field.meanWith], path)
  if (field.hidden)
    draft.tell(cellText('log-hidden', { what: 'cell', hidden: 'row or column' }), field.cell, path)
}

/** The unit somebody gave in answer to a question; a text that is no such unit is a problem. */
export function answeredUnit(
  draft: Draft,
  path: 'volume.unit' | 'temperature.unit' | 'barometer.unit',
  cell: string,
): KnownUnit | undefined {
  const typed = draft.answers[path]
  if (typed === undefined) return undefined
  const unit = findUnit(typed)
  const kind = { 'volume.unit': 'volume', 'temperature.unit': 'temperature', 'barometer.unit': 'pressure' }[
    path
  ]
  if (unit?.kind === kind) {
    draft.tell(
      fieldText('log-answer', { field: `unit of the ${kind}`, answer: shown(unit.unit) }),
      cell,
      path,
    )
    return unit
  }
  draft.collector.refuse(
    'unknown-unit',
    `${JSON.stringify(typed)} is not a known unit of ${kind}`,
    cell,
    path,
  )
  return undefined
}

/** Several values of one field must agree; the first is taken where they do, or where the others are further off. */
export function agreeing(draft: Draft, fields: readonly FoundField[], path: string): FoundField | undefined {
  const numbers = fields.filter(({ content }) => content.kind === 'number')
  const [first] = numbers
  const other = numbers.find(
    (one) =>
      one.content.kind === 'number' &&
      first?.content.kind === 'number' &&
      one.content.written.value !== first.content.written.value &&
      one.view.name === first.view.name,
  )
  const mean = first && other && meanOfMoments(first, other)
  if (mean && numbers.length === 2) return mean
  if (first && other && other.content.kind === 'number')
    draft.tell(
      fieldText('log-several-values', { field: placeWords(path, {}) }),
      [first.cell, other.cell],
      path,
    )
  return first
}

/** "Temperature, start" and "temperature, end": the mean of both is that of the test. */
export function meanOfMoments(first: FoundField, other: FoundField): FoundField | undefined {
  const { content } = first
  if (content.kind !== 'number' || other.content.kind !== 'number') return undefined
  const [one, two] = [first, other].map(({ label }) => says(label, 'before') !== says(label, 'after'))
  const differ = says(first.label, 'before') !== says(other.label, 'before')
  const unit = content.written.unit ?? first.unit
  if (!one || !two || !differ || unit?.unit !== (other.content.written.unit ?? other.unit)?.unit)
    return undefined
  return withMean(first, content, content.written.value, other.content.written.value, [other.cell])
}

function putBarometer(draft: Draft, scope: FieldScope) {
  const path = 'conditions.barometricPressure_Pa'
  const given = draft.answered(path)
  if (given !== undefined) return draft.put(path, given)
  const fields = scope.all('barometer').filter(({ content }) => content.kind === 'number')
  // Of two air pressures the one at the house counts.
  const atHouse = fields.filter(({ label }) => !says(label, 'seaLevel'))
  const field = agreeing(draft, atHouse, path) ?? fields[0]
  if (field?.content.kind !== 'number') return
  if (says(field.label, 'seaLevel')) {
    const isKnown =
      draft.answers['building.altitude_m'] !== undefined ||
      scope.all('altitude').some(({ content, unit }) => content.kind === 'number' && unit?.kind === 'length')
    draft.tell(fieldText(isKnown ? 'log-sea-level/left-out' : 'log-sea-level'), field.cell, path)
    if (isKnown) {
      draft.uses.push({
        cells: field.cell,
        heading: field.label.text,
        ignoredBecause: valueReasons.seaLevel,
      })
      return
    }
  }
  const { value } = field.content.written
  const stated = field.content.written.unit ?? field.unit
  const unit = stated ?? unitOfBarometer(value) ?? answeredUnit(draft, 'barometer.unit', field.cell)
  if (!unit)
    return draft.ask({
      path: 'barometer.unit',
      cells: [field.cell],
      ...questions.barometerUnit({ value }),
    })
  if (!stated && unitOfBarometer(value))
    draft.tell(fieldText('log-unit-likely/barometer', { value, unit: shown(unit.unit) }), field.cell, path)
  put(draft, field, path, draft.quantity(field.content.written, unit, field.cell, path))
}

function putHumidity(draft: Draft, field: FoundField | undefined, path: string) {
  const given = draft.answered(path)
  if (given !== undefined) return draft.put(path, given)
  if (field?.content.kind !== 'number') return
  const { value } = field.content.written
  // "RH (%)" over a fraction: no air is as dry as 1 %.
  const share = field.content.percent || value <= 1
  const base: QuantityKind = 'fraction'
  if (!field.content.percent && (!field.unit || share))
    draft.tell(fieldText('log-unit-likely/humidity', { value, share }), field.cell, path)
  const unit = share ? { kind: base, unit: RECORD_UNITS.fraction } : { kind: base, unit: 'percent' }
  put(draft, field, path, draft.quantity(field.content.written, unit, field.cell, path))
}
