import { cellText } from '../../../catalogue/findings/log/cells.js'
import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { placeWords } from '../../../contract/record/index.js'
import type { KnownUnit } from '../../cells/units.js'
import { findUnit, shown } from '../../cells/units.js'
import type { FoundField } from '../fields/found-field.js'
import { withMean } from '../fields/of-moments.js'
import { says } from '../words/label.js'
import type { Draft } from './draft.js'
import { heedRemark } from './remark-beside.js'

export function put(draft: Draft, field: FoundField, path: string, value: unknown) {
  draft.put(path, value, field.cell)
  draft.use(field.cell, field.label.text, placeWords(path, {}), path)
  if (field.meanWith)
    draft.tell(
      fieldText(field.meanWith.length > 1 ? 'log-mean-of-readings' : 'log-mean-of-two'),
      [field.cell, ...field.meanWith],
      path,
    )
  heedRemark(draft, field, path)
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
