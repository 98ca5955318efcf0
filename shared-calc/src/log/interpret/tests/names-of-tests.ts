import type { FieldName } from '../fields/classify.js'
import type { FoundField } from '../fields/found-field.js'
import type { FoundRun } from '../tables/runs.js'
import { readLabel } from '../words/label.js'
import { valueText } from './group.js'
import type { TestGroup } from './test-group.js'

/** Lines at the top of a sheet in which its title stands. */
const TITLE_ROWS = 3

/** "Plot 7" alone in the first lines of sheet "P7", which no other test is on: the list of plots calls the test so. */
export const isTitleOf = (name: string, group: TestGroup, groups: readonly TestGroup[]): boolean => {
  const [first] = group.runs
  const isOwn =
    first !== undefined &&
    groups.length > 1 &&
    groups.every((one) => one === group || one.runs.every(({ view }) => view.name !== first.view.name))
  if (!isOwn) return false
  const { held } = first.view
  return Array.from({ length: TITLE_ROWS }, (_, row) => held(row, 0)).some(
    (content) => content?.kind === 'text' && isSameName(content.text, name),
  )
}

/** "House 1 – depressurisation" is a table of house 1. */
export const beginsWith = (key: string, name: string): boolean =>
  /\p{L}/u.test(name) && readLabel(key).padded.startsWith(readLabel(name).padded)

export const isSameName = (one: string, other: string): boolean =>
  readLabel(one).padded === readLabel(other).padded

/** Two lines of a list name the same house, and no value of the house or day in them differs. */
export function isOfSameTest(one: readonly FoundField[], other: readonly FoundField[]): boolean {
  const of = (fields: readonly FoundField[], name: FieldName) => {
    const field = fields.find((each) => each.name === name)
    return field && valueText(field)
  }
  const names = (['name', 'address'] as const).map((name) => [of(one, name), of(other, name)] as const)
  return (
    names.some(([first]) => first !== undefined) &&
    names.every(([first, second]) => first === second) &&
    (['date', 'volume', 'envelopeArea'] as const).every((name) => of(one, name) === of(other, name))
  )
}

/** The name a row of a list has: its number, or its house. */
export function keyOfRow(fields: readonly FoundField[], run: FoundRun): string | undefined {
  if (run.row === undefined) return undefined
  for (const name of ['testId', 'name', 'address'] as const) {
    const field = fields.find((one) => one.name === name)
    if (field?.content.kind === 'text') return field.content.text
    if (field?.content.kind === 'number') return String(field.content.written.value)
  }
  return undefined
}
