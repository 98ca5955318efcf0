import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { valueReasons } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { unitOfBarometer } from '../../cells/likely-unit.js'
import type { QuantityKind } from '../../cells/units.js'
import { RECORD_UNITS, shown } from '../../cells/units.js'
import type { FoundField } from '../fields/found-field.js'
import type { FoundRun } from '../tables/runs.js'
import type { FieldScope } from '../tests/scope.js'
import { readLabel, says } from '../words/label.js'
import { putBeaufort } from './beaufort.js'
import type { Draft } from './draft.js'
import { agreeing, answeredUnit, put } from './put-field.js'
import { putTemperatures, type UnreadTemperature } from './temperatures.js'

/** "QNH | 1018", "Barometer | 1017 hPa (sea level)". */
const isOfSeaLevel = ({ label, content }: FoundField): boolean =>
  says(label, 'seaLevel') ||
  (content.kind === 'number' && says(readLabel(content.written.note ?? ''), 'seaLevel'))

/** Temperatures, air pressure, humidity and wind. Missing temperatures are asked for. */
export function putConditions(
  draft: Draft,
  scope: FieldScope,
  runs: readonly FoundRun[],
  unread: UnreadTemperature,
) {
  putTemperatures(draft, scope, runs, unread)
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
  putBeaufort(draft, scope)
  for (const path of ['conditions.windAt', 'conditions.beaufort']) {
    const typed = draft.answered(path)
    if (typed !== undefined) draft.put(path, typed)
  }
}

function putBarometer(draft: Draft, scope: FieldScope) {
  const path = 'conditions.barometricPressure_Pa'
  const given = draft.answered(path)
  if (given !== undefined) return draft.put(path, given)
  const fields = scope.all('barometer').filter(({ content }) => content.kind === 'number')
  // Of two air pressures the one at the house counts.
  const atHouse = fields.filter((one) => !isOfSeaLevel(one))
  const field = agreeing(draft, atHouse, path) ?? fields[0]
  if (field?.content.kind !== 'number') return
  if (isOfSeaLevel(field)) {
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
