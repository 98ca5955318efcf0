import { toRecordUnit } from '../../cells/units.js'
import type { FoundField } from '../fields/found-field.js'
import type { FieldScope } from '../tests/scope.js'
import { readLabel, says } from '../words/label.js'

/** A result at 50 Pa that the log records of its own readings. */
export interface ResultOfLog {
  /** Air changes an hour, flow in m³/h, or flow for each square metre of envelope in m³/(h·m²). */
  readonly name: 'n50' | 'q50' | 'qE50'
  readonly value: number
  /** A flow whose unit is stated. */
  readonly isSure: boolean
  readonly label: string
  readonly cell: string
}

/** The results at 50 Pa among the values of a test, each in the unit that the readings give it in. */
export const resultsOfLog = (scope: FieldScope): ResultOfLog[] =>
  (['n50', 'qE50', 'q50'] as const).flatMap((name) =>
    scope.all(name).flatMap((field) => resultIn(field, name) ?? []),
  )

/** "m³/(h·m²)", "l/s per m²" behind the value or in its label. */
const SQUARE_METRES = /m(?:²|2|\^2)(?![\p{L}\d])/u
const LITRES_A_SECOND = /(?<!\p{L})l\s?\/\s?\(?\s?s(?!\p{L})/iu

function resultIn(field: FoundField, name: ResultOfLog['name']): ResultOfLog | undefined {
  const { content, unit, cell, label, view, row, column } = field
  if (content.kind !== 'number' || !(content.written.value > 0) || !isOwnResult(field)) return undefined
  const { value } = content.written
  const units = `${label.text} ${view.text(row, column + 1) ?? ''}`
  const said = { label: label.text.trim() || name, cell }
  const isPerArea = name === 'qE50' || (name === 'q50' && SQUARE_METRES.test(units))
  // Air permeability is in m³/(h·m²) unless litres are named.
  if (isPerArea)
    return { name: 'qE50', value: LITRES_A_SECOND.test(units) ? value * 3.6 : value, isSure: true, ...said }
  const own = content.written.unit ?? unit
  const isFlow = name === 'q50' && own?.kind === 'flow'
  return { name, value: isFlow ? toRecordUnit(value, own) : value, isSure: name === 'n50' || isFlow, ...said }
}

/** "Limit for n50", "n50 last year": nothing that the readings of this test should give. */
const isOwnResult = ({ label, view, row }: FoundField): boolean =>
  ![label, readLabel(view.text(row, 0) ?? '')].some((one) =>
    (['limit', 'target', 'former'] as const).some((concept) => says(one, concept)),
  )
