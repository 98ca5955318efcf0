import { cellText } from '../../../catalogue/findings/log/cells.js'
import { questions } from '../../../catalogue/questions.js'
import { placeWords } from '../../../contract/record/index.js'
import { bareUnit } from '../../cells/stated-unit.js'
import type { FoundField } from '../fields/found-field.js'
import { beginsExample } from '../words/example.js'
import { readLabel, says } from '../words/label.js'
import type { Draft } from './draft.js'

/** "412.6 | m³ | wrong, use 398.2": a remark behind a value is named; one that doubts the value makes it a question. */
export function heedRemark(draft: Draft, field: FoundField, path: string): void {
  if (field.content.kind !== 'number') return
  const text = remarkBehind(field)
  if (text === undefined) return
  const label = readLabel(text)
  const isGross = path === 'building.volume_m3' && says(label, 'gross')
  if (!isGross && !DOUBTING.some((concept) => says(label, concept))) {
    draft.tell(cellText('log-remark/beside', { remark: text }), field.cell, path)
    return
  }
  const { value } = field.content.written
  draft.ask({
    path,
    cells: [field.cell],
    ...questions.remarkedValue({ field: placeWords(path, {}), cell: field.cell, remark: text, value }),
  })
}

const DOUBTING = ['wrong', 'leftOut'] as const

/** Words behind a value and its unit that head nothing and are no label of a further value. */
function remarkBehind({ view, row, column }: FoundField): string | undefined {
  const next = view.text(row, column + 1)
  const at = next !== undefined && bareUnit(next) ? column + 2 : column + 1
  const text = view.text(row, at)
  if (text === undefined || !WORD.test(text) || text.includes(':') || view.at(row, at + 1)) return undefined
  const label = readLabel(text)
  const isColumn = [row - 1, row + 1].some((line) => view.number(line, at) !== undefined)
  const isLabel = [...LABELS].some((concept) => says(label, concept)) && view.at(row + 1, at) !== undefined
  return isColumn || isLabel || says(label, 'example') || beginsExample(text) ? undefined : text
}

/** A remark has a word; "% RH" and the like are units. */
const WORD = /^[^%]*\p{L}{3}/u
const LABELS = ['volume', 'area', 'temperature', 'barometer', 'pressure', 'flow', 'zero', 'date'] as const
