import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { valueReasons } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { placeWords } from '../../../contract/record/index.js'
import { shown, toRecordUnit } from '../../cells/units.js'
import type { FoundField } from '../fields/found-field.js'
import { says } from '../words/label.js'
import type { Draft } from './draft.js'

/** Words for one part of a building's areas, which is neither the floor area nor the envelope. */
const PART =
  / (?:ground|first|second|third|upper|top|lower|basement|cellar|attic|loft|garage|roof|ceiling|walls?|windows?|glazing|doors?|slab|bodenplatte|eg|og|dg|ug|kg|dach|wand|wande|fenster|rdc|etage|toiture|murs?|tetto|pareti|finestre|cubierta|ventanas|tak|vagg|vindu|vinduer) /

/** Elements of the envelope. */
const SHELL =
  / (?:roof|ceiling|walls?|windows?|glazing|doors?|slab|dach|wand|wande|fenster|bodenplatte|toiture|murs?|tetto|pareti|finestre|cubierta|ventanas|tak|vagg|vindu|vinduer) /

interface Area {
  readonly field: FoundField
  readonly area_m2: number
}

/** Of several areas that of the whole, the net one where one is gross; two that nothing tells apart are asked about. */
export function areaOf(
  draft: Draft,
  fields: readonly FoundField[],
  name: 'envelopeArea' | 'floorArea',
  path: string,
): FoundField | undefined {
  const isPart = ({ label, part }: FoundField) => part || (PART.test(label.padded) && !says(label, 'total'))
  const whole = fields.filter((one) => !isPart(one))
  // Several parts are no whole, and which of them to take nothing says; nor is the slab alone the floor area.
  const isOfShell = fields.every(({ label }) => SHELL.test(label.padded))
  if (whole.length === 0 && (fields.length > 1 || (fields.length === 1 && isOfShell))) {
    for (const { cell, label } of fields)
      draft.uses.push({ cells: cell, heading: label.text, ignoredBecause: valueReasons.partOfArea })
    draft.tell(
      fieldText('log-parts-of-area', { field: placeWords(path, {}) }),
      fields.map(({ cell }) => cell),
      path,
    )
    return undefined
  }
  return settled(draft, sumOf(whole) ?? (whole.length > 0 ? whole : fields), name, path)
}

function settled(
  draft: Draft,
  fields: readonly FoundField[],
  name: 'envelopeArea' | 'floorArea',
  path: string,
): FoundField | undefined {
  const most = Math.max(...fields.map(rank))
  const own = fields.filter((one) => rank(one) === most)
  const [first, ...others] = own.flatMap((field) => areaIn(field) ?? [])
  const different = others.filter(
    ({ area_m2, field }) =>
      field.view.name === first?.field.view.name && Math.abs(area_m2 / (first?.area_m2 ?? 0) - 1) > ROUNDED,
  )
  if (first && different.length > 0) {
    const all = [first, ...different]
    draft.ask({
      path,
      cells: all.map(({ field }) => field.cell),
      ...questions.whichArea({
        name,
        areas: all.map(({ field, area_m2 }) => ({
          area_m2: Number(area_m2.toPrecision(10)),
          text: textOf(field),
          label: field.label.text,
          cell: field.cell,
        })),
      }),
    })
    return undefined
  }
  for (const { cell, label } of fields.filter((one) => rank(one) < most))
    draft.uses.push({
      cells: cell,
      heading: label.text,
      ignoredBecause: valueReasons.otherArea(own[0]?.label.text ?? '', placeWords(path, {})),
    })
  return first?.field ?? own[0]
}

/** An area in square metres and the same rounded, or converted to another unit, differ by less. */
const ROUNDED = 0.005

/** Standards relate leakage to the net floor area. */
const rank = ({ label }: FoundField): number =>
  says(label, 'net') || TREATED.test(label.padded) ? 2 : says(label, 'gross') ? 0 : 1

const TREATED = / (?:treated|tfa|ebf|nia|usable|habitable) /

function areaIn(field: FoundField): Area | undefined {
  const { content } = field
  if (content.kind !== 'number') return undefined
  const unit = content.written.unit ?? field.unit
  return unit?.kind === 'area' ? { field, area_m2: toRecordUnit(content.written.value, unit) } : undefined
}

const textOf = ({ content, unit }: FoundField): string => {
  const written = content.kind === 'number' ? content.written : undefined
  const own = written?.unit ?? unit
  return `${written?.value}${own ? ` ${shown(own.unit)}` : ''}`
}

/** "GF 82 | 1F 70.5 | 2F 28 | total 180.5": of areas in one unit the one that is the sum of the others. */
function sumOf(fields: readonly FoundField[]): FoundField[] | undefined {
  const values = fields.map(({ content }) => (content.kind === 'number' ? content.written.value : 0))
  const whole = values.reduce((sum, value) => sum + value, 0) / 2
  const found = fields.filter((_, index) => Math.abs((values[index] as number) / whole - 1) < 0.002)
  return fields.length > 2 && found.length === 1 ? found : undefined
}
