import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { writtenIn } from '../../cells/written.js'
import type { FoundField } from '../fields/found-field.js'
import { textOf } from '../grid/cell-content.js'
import type { FieldScope } from '../tests/scope.js'
import { readLabel, says } from '../words/label.js'
import type { Draft } from './draft.js'
import { put } from './put-field.js'

const PATH = 'target'

/** A limit at 50 Pa as a log states it, in the unit of records. */
export interface StatedTarget {
  readonly quantity: 'n50' | 'qE50' | 'qF50'
  readonly limit: number
}

/** The target that a log states for its test: "Target | n50 ≤ 0.6 1/h". A chosen target goes before it. */
export function putTarget(draft: Draft, scope: FieldScope) {
  const preset = draft.answered('target.preset')
  if (preset !== undefined) return draft.put('target.preset', preset)
  const found = fieldsOf(scope).flatMap((field) => {
    const target = targetOf(field)
    return target ? [{ field, target }] : []
  })
  const [first] = found
  if (!first) return
  const { quantity, limit } = first.target
  const cells = found.map(({ field }) => field.cell)
  if (found.some(({ target }) => target.quantity !== quantity || target.limit !== limit))
    return draft.tell(fieldText('log-target/several'), cells, PATH)
  const isWorkable = quantity === 'n50' || areaOf(draft.record, quantity) !== undefined
  if (!isWorkable) return draft.tell(fieldText('log-target/no-area', { quantity }), cells, PATH)
  put(draft, first.field, PATH, { quantity, limit })
  draft.tell(fieldText('log-target', { quantity, limit }), first.field.cell, PATH)
}

const areaOf = (record: Record<string, unknown>, quantity: StatedTarget['quantity']): unknown => {
  const building = record.building as Record<string, unknown> | undefined
  return building?.[quantity === 'qE50' ? 'envelopeArea_m2' : 'floorArea_m2']
}

/** Values whose label speaks of a target or a limit, on the sheet itself or as the result that it is for. */
const fieldsOf = (scope: FieldScope): FoundField[] =>
  (['target', 'n50', 'qE50', 'q50'] as const).flatMap((name) =>
    scope.all(name).filter(({ label }) => says(label, 'limit') || says(label, 'target')),
  )

function targetOf({ label, content, view, row, column }: FoundField): StatedTarget | undefined {
  const behind = view.text(row, column + 1)
  const unit = behind !== undefined && behind.length <= 20 && isOfUnit(behind) ? behind : ''
  return targetIn(`${label.text} ${textOf(content)} ${unit}`, view.decimal)
}

const isOfUnit = (text: string): boolean => PER_AREA.test(text) || PER_HOUR.test(` ${text}`)

/** "n50", "n₅₀", "q_E50", "ACH50": names of results, whose figures are no limit. */
const NAMES = /(?<!\p{L})(?:n|q|v|w|ach|ap|qe|qf)[_ ]?(?:e|f)?[_ ]?(?:50|₅₀)(?!\d)/giu
const AT_50 = /(?:@|(?<!\p{L})(?:at|bei|à|a|bij|ved|vid|przy|při|pri))?\s?[-−±]?(?<!\d)50\s?Pa(?!\p{L})/giu
/** "m³/(h·m²)", "m3/h.m2", "l/s m²", "m³/h per m²". */
const PER_AREA =
  /(?:m(?:³|3|\^3)\s?\/\s?\(?\s?h|l\s?\/\s?\(?\s?s)\s?(?:[·.*×/ ]|per|pro)?\s?(?:m(?:²|2|\^2))\s?\)?/iu
const LITRES = /(?<!\p{L})l\s?\/\s?\(?\s?s/iu
/** "1/h", "/h", "h-1", "h⁻¹", "ac/h", "per hour". */
const PER_HOUR =
  /(?:(?<![\p{L}\d])1\s?\/\s?h(?!\p{L})|(?<=[\s\d])\/\s?h(?!\p{L})|(?<!\p{L})h\s?\^?\(?(?:-|−|⁻)\s?(?:1|¹)|(?<!\p{L})(?:ac\s?\/\s?h|ach|vol\/h)(?!\p{L}))/iu

/** The quantity and the one number that a text states as a limit; undefined where it leaves either open. */
export function targetIn(text: string, decimal: '.' | ',' | undefined): StatedTarget | undefined {
  const label = readLabel(text)
  const isPerArea = PER_AREA.test(text) || label.padded.includes(' air permeability ')
  const isPerHour = !isPerArea && (/(?<!\p{L})n[_ ]?(?:50|₅₀)/iu.test(text) || PER_HOUR.test(text))
  // At another pressure it is another limit.
  const plain = text.replace(AT_50, ' ')
  if (/\d\s?Pa(?!\p{L})/u.test(plain) || isPerArea === isPerHour) return undefined
  const bare = plain.replace(NAMES, ' ').replace(PER_AREA, ' ').replace(PER_HOUR, ' ')
  const numbers = bare.split(/[^\p{L}\d.,]+/u).filter((word) => /^\d+(?:[.,]\d+)?$/.test(word))
  const [only] = numbers
  const limit =
    only === undefined || numbers.length > 1
      ? undefined
      : writtenIn(only, decimal ?? (only.includes(',') ? ',' : '.'))?.value
  if (limit === undefined || !(limit > 0) || limit > MOST) return undefined
  if (!isPerArea) return { quantity: 'n50', limit }
  const quantity = says(label, 'floor') ? 'qF50' : 'qE50'
  return { quantity, limit: LITRES.test(text) ? limit * 3.6 : limit }
}

/** No scheme allows as much; common practice, no source. */
const MOST = 50
