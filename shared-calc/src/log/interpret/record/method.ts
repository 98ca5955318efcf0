import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { methods } from '../../../methods/index.js'
import { fieldKind } from '../../cells/fields.js'
import { choice } from '../../cells/interpret-words.js'
import { textOf } from '../grid/cell-content.js'
import { formPlaces, type View } from '../grid/view.js'
import type { Answers } from '../interpretation.js'
import type { FieldScope } from '../tests/scope.js'
import { withoutUnticked } from '../words/ticked.js'
import type { Draft } from './draft.js'
import { put } from './put-field.js'

const PATH = 'test.method'

/** Standards by the number people write, with what else must be said where a standard has several methods. */
const STANDARDS: { id: string; says: readonly RegExp[] }[] = [
  { id: 'iso-9972:2015', says: [/9972/] },
  { id: 'en-13829:2001', says: [/13829/] },
  { id: 'astm-e779-19', says: [/e779/i] },
  { id: 'astm-e3158-18', says: [/e3158/i] },
  { id: 'can-cgsb-149.10-2019', says: [/149\.10/] },
  { id: 'astm-e1827-22-one-point', says: [/e1827/i, /\b(?:one|single|1)[ -]point/i] },
  { id: 'astm-e1827-22-two-point', says: [/e1827/i, /\b(?:two|2)[ -]point/i] },
]

/** The method of the test: answered, labelled, named anywhere in the log, or else assumed and said so. */
export function putMethod(draft: Draft, scope: FieldScope, views: readonly View[]) {
  const given = draft.answered(PATH)
  if (given !== undefined) return draft.put(PATH, given)
  const field = scope.all('method')[0]
  const named = field && methodIn(textOf(field.content))
  if (field && named) return put(draft, field, PATH, named)
  const anywhere = methodNamed(views)
  if (anywhere) {
    draft.put(PATH, anywhere.id, anywhere.cell)
    const method = methods.find(({ id }) => id === anywhere.id)?.title ?? anywhere.id
    draft.tell(fieldText('log-method/named', { method }), anywhere.cell, PATH)
    return
  }
  draft.put(PATH, 'iso-9972:2015')
  draft.tell(fieldText('log-method/assumed'), '', PATH)
}

/** The method a log is read by, as far as it can be known before its tests are: answered, or the first that is named. */
export const methodOfLog = (answers: Answers, views: readonly View[]) => {
  const answer = answers[PATH]
  const id = answer === undefined ? methodNamed(views)?.id : methodIn(answer)
  return methods.find((method) => method.id === id)
}

/** The method a text names by its id, a word people use for it, or the number of its standard. */
function methodIn(given: string): string | undefined {
  const kind = fieldKind(PATH)
  const text = withoutUnticked(given)
  const word = kind.kind === 'choice' ? choice({ kind: 'text', value: text }, kind.words, false) : undefined
  if (word && 'value' in word) return String(word.value)
  return (
    methods.find(({ id }) => id === text.trim())?.id ??
    STANDARDS.find(({ says }) => says.every((pattern) => pattern.test(text)))?.id
  )
}

/** Looked for once, however many tests the log holds. */
const standards = new WeakMap<readonly View[], { found: NamedMethod | undefined }>()

type NamedMethod = { id: string; cell: string }

function methodNamed(views: readonly View[]): NamedMethod | undefined {
  const known = standards.get(views) ?? { found: firstNamed(views) }
  standards.set(views, known)
  return known.found
}

/** The first number of each standard: most texts hold none, and need not be looked at further. */
const NUMBER_OF_STANDARD = /9972|13829|779|3158|149|1827/

/** A method is named near the beginning of a sheet. */
const TITLE = { rows: 120, columns: 30 }

function firstNamed(views: readonly View[]): NamedMethod | undefined {
  for (const view of views)
    for (const [row, column] of formPlaces(view, TITLE)) {
      const text = view.text(row, column)
      const words = text !== undefined && NUMBER_OF_STANDARD.test(text) ? withoutUnticked(text) : undefined
      const id =
        words === undefined
          ? undefined
          : STANDARDS.find(({ says }) => says.every((pattern) => pattern.test(words)))?.id
      if (id) return { id, cell: view.address(row, column) }
    }
  return undefined
}
