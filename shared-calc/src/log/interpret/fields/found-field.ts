import { dateOfSerial, readDateText } from '../../cells/dates.js'
import type { KnownUnit } from '../../cells/units.js'
import type { Content } from '../grid/cell-content.js'
import type { View } from '../grid/view.js'
import { directionIn, type Label, readLabel, says } from '../words/label.js'
import { classify, type FieldName } from './classify.js'

/** A single value found by its label. */
export interface FoundField {
  readonly name: FieldName
  readonly view: View
  readonly row: number
  readonly column: number
  /** Cell of the value, and of the label. */
  readonly cell: string
  readonly labelCell: string
  readonly label: Label
  readonly content: Content
  /** The unit stated by cell, cell beside or label. */
  readonly unit?: KnownUnit
  /** Another unit of the same kind, which its label states. */
  readonly rivalUnit?: KnownUnit
  readonly hidden: boolean
  /** Further cells with values that this one stands for. */
  readonly also?: readonly string[]
  /** It is the mean of what stands in its cell and in these. */
  readonly meanWith?: readonly string[]
  /** It is one area of several, and not that of the whole. */
  readonly part?: true
  /** Its values stand beside the readings of a run, one for each. */
  readonly ofReadings?: true
}

/** What a label and the content beside it say together; undefined where nothing here knows it. */
export function made(
  view: View,
  at: { row: number; column: number },
  labelAt: { row: number; column: number },
  label: Label,
  held: Content | undefined,
  beside: KnownUnit | undefined,
): FoundField | undefined {
  // "Previous test | 14 February 2025": not of the test of this log.
  if (says(label, 'former')) return undefined
  const content = (beside ? undefined : asDate(view, label, held)) ?? held
  if (!content || content.kind === 'time' || content.kind === 'struck' || content.kind === 'error')
    return undefined
  // Beside a label brackets may say "roughly" or "not sure" as well as "negative".
  if (content.kind === 'number' && content.written.bracketed) return undefined
  const unit =
    (content.kind === 'number' ? content.written.unit : undefined) ??
    beside ??
    (label.loose ? looseUnit(label) : label.unit)
  // "Name | Value | Unit" heads a list.
  if (content.kind === 'text' && HEADS_VALUES.test(readLabel(content.text).padded.trim())) return undefined
  const value = content.kind === 'number' ? content.written.value : undefined
  const kind = content.kind === 'text' && content.numbers ? 'numbers' : content.kind
  const name =
    classify(label, kind, unit, value) ??
    (kind === 'numbers' ? classify(label, 'text', undefined, undefined) : undefined)
  if (!name) return undefined
  if (name === 'testId' && content.kind === 'text' && !isNumberOfTest(label, content.text)) return undefined
  return {
    name,
    view,
    ...at,
    cell: view.address(at.row, at.column),
    labelCell: view.address(labelAt.row, labelAt.column),
    label,
    content,
    ...(unit ? { unit } : {}),
    ...(label.unit && !label.loose && label.unit.kind === unit?.kind && label.unit.unit !== unit.unit
      ? { rivalUnit: label.unit }
      : {}),
    hidden: view.hidden(at.row, at.column),
  }
}

/** "Test 1: depressurisation" names a run, "Suction test: zero flow" what follows, "Airtightness test record | Sheet 1 of 1" is a title. */
function isNumberOfTest(label: Label, text: string): boolean {
  const value = readLabel(text)
  if (directionIn(value) || says(value, 'zero')) return false
  return label.tokens.length <= 2 || label.tokens.some((token) => OF_A_NUMBER.test(token))
}
const OF_A_NUMBER =
  /^(?:no|nr|n|id|ref|reference|referenz|referencia|riferimento|num|number|nummer|numero|numer|cislo|#)$/

/** What stands over the values of a list, in all languages read here. */
const HEADS_VALUES =
  /^(?:values?|wert|werte|valeurs?|waarden?|valor|valores|valore|valori|wartosc|wartosci|hodnota|hodnoty|vaerdi|vaerdier|verdi|verdier|varde|varden|arvo|arvot|results?|entry|entries|eintrag|units?|einheit|unite|eenheid|unidad|unita|jednostka|jednotka|enhed|enhet|yksikko)$/

/** "Date | 20260603", "Date | 46176": a day written without its signs, or a count of days that lost its format. */
function asDate(view: View, label: Label, content: Content | undefined): Content | undefined {
  if (content?.kind !== 'number' || !says(label, 'date') || content.written.unit) return undefined
  // "Volume of air tested (ft³) | 33040" has a word of a day, and is none.
  if ((label.unit && !label.loose) || OF_NUMBERS.some((one) => says(label, one))) return undefined
  const { value } = content.written
  const [, year, month, day] = /^(20\d\d)(\d\d)(\d\d)$/.exec(String(value)) ?? []
  const written = year ? readDateText(`${year}-${month}-${day}`) : undefined
  if (written && 'date' in written) return { kind: 'date', dates: [written.date], shortYear: false }
  const counted = value > 30_000 && value < 80_000 ? dateOfSerial(value, view.date1904) : undefined
  return counted ? { kind: 'date', dates: [counted], shortYear: false, serial: true } : undefined
}

const OF_NUMBERS = ['volume', 'area', 'temperature', 'pressure', 'flow'] as const

/** A bare last letter is a unit only where the words ask for one of its kind. */
function looseUnit(label: Label): KnownUnit | undefined {
  const { unit } = label
  if (unit?.kind === 'temperature')
    return says(label, 'temperature') || says(label, 'inside') || says(label, 'outside') ? unit : undefined
  if (unit?.kind === 'length') return says(label, 'height') || says(label, 'altitude') ? unit : undefined
  if (unit?.kind === 'time') return undefined
  return unit
}
