import type { Content } from '../grid/cell-content.js'
import type { FieldScope } from '../tests/scope.js'
import type { Draft } from './draft.js'
import { put } from './put-field.js'

const PATH = 'conditions.beaufort'
const HIGHEST = 12

/** The force of the wind: "Beaufort | 2", "Wind | 2 Bft". A range of forces is none. */
export function putBeaufort(draft: Draft, scope: FieldScope): void {
  const field = scope.all('beaufort').find(({ content }) => forceIn(content) !== undefined)
  if (!field) return
  const { content, cell } = field
  put(
    draft,
    field,
    PATH,
    content.kind === 'number' ? draft.plain(content.written, cell, PATH) : forceIn(content),
  )
}

function forceIn(content: Content): number | undefined {
  if (content.kind === 'number') return inScale(content.written.value)
  if (content.kind !== 'text' || content.text.length > 40) return undefined
  const [, before] = BEFORE.exec(content.text) ?? []
  const [, behind] = BEHIND.exec(content.text) ?? []
  const force = before ?? behind
  const isOnly = (content.text.match(/\d+/g) ?? []).length === 1
  return force === undefined || !isOnly ? undefined : inScale(Number(force))
}

const inScale = (force: number): number | undefined =>
  Number.isInteger(force) && force >= 0 && force <= HIGHEST ? force : undefined

const BEFORE = /(?<![\d.,])(\d{1,2})\s?(?:bft|beaufort|bf)(?!\p{L})/iu
const BEHIND =
  /(?<!\p{L})(?:bft|beaufort|bf|force|windst[äa]rke|vindstyrke|vindstyrka)[\s.:]{0,3}(\d{1,2})(?![\d.,])/iu
