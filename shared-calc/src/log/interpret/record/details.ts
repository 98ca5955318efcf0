import { cellText } from '../../../catalogue/findings/log/cells.js'
import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { questions } from '../../../catalogue/questions.js'
import { readDateText } from '../../cells/dates.js'
import { fieldKind } from '../../cells/fields.js'
import { choice } from '../../cells/interpret-words.js'
import type { FoundField } from '../fields/found-field.js'
import { textOf } from '../grid/cell-content.js'
import type { View } from '../grid/view.js'
import type { FieldScope } from '../tests/scope.js'
import { type Label, readLabel, says } from '../words/label.js'
import { withoutUnticked } from '../words/ticked.js'
import type { Draft } from './draft.js'
import { putMethod } from './method.js'
import { put } from './put-field.js'

export interface DetailOptions {
  readonly fileName: string
  /** Day the file was last changed, YYYY-MM-DD, where the log states no date. */
  readonly fileDate?: string | undefined
  readonly american: boolean
  /** The log's language writes the day of a date first. */
  readonly dayFirst: boolean
  readonly key: string
  readonly several: boolean
  /** The key of the test is its name in a list of houses, which has no other column of names. */
  readonly listed: boolean
  readonly views: readonly View[]
}

/** Name, date, method and who was there. What only identifies the test never stops it. */
export function putDetails(draft: Draft, scope: FieldScope, options: DetailOptions) {
  putName(draft, scope, options)
  putDate(draft, scope, options)
  putMethod(draft, scope, options.views)
  for (const [name, path] of [
    ['client', 'test.client'],
    ['tester', 'test.tester'],
    ['testId', 'test.id'],
    ['notes', 'test.notes'],
  ] as const) {
    const field = scope.all(name)[0]
    const given = draft.answered(path)
    if (given !== undefined) draft.put(path, given)
    else if (field) putText(draft, field, path, { most: 300 })
  }
  for (const path of [
    'building.site',
    'building.address',
    'test.stage',
    'test.preparation',
    'test.purpose',
    'test.organisation',
  ]) {
    const given = draft.answered(path)
    if (given !== undefined) draft.put(path, given)
  }
  const [stage] = scope.all('stage')
  if (stage) putChoice(draft, stage, 'test.stage')
  else if (options.several) putStageOfTitle(draft, options.key)
  putChoice(draft, scope.all('volumeBasis')[0], 'building.volumeBasis')
  putPreparation(draft, scope.all('preparation')[0])
}

/** One of the words a field allows, where the log uses one of them. */
function putChoice(draft: Draft, field: FoundField | undefined, path: string): void {
  const kind = fieldKind(path)
  if (field?.content.kind !== 'text' || kind.kind !== 'choice' || draft.answers[path] !== undefined) return
  const read = choice({ kind: 'text', value: withoutUnticked(field.content.text) }, kind.words, false)
  if ('value' in read) put(draft, field, path, read.value)
}

/** "Method 2", or "ISO 9972 method 2, building in use": the one method that the text names. */
function putPreparation(draft: Draft, field: FoundField | undefined): void {
  const path = 'test.preparation'
  const kind = fieldKind(path)
  if (field?.content.kind !== 'text' || kind.kind !== 'choice' || draft.answers[path] !== undefined) return
  const { text } = field.content
  const { padded } = readLabel(withoutUnticked(text))
  const named = new Set(
    Object.entries(kind.words).flatMap(([word, method]) => (padded.includes(` ${word} `) ? [method] : [])),
  )
  const [method] = named
  if (method === undefined || named.size > 1) return
  put(draft, field, path, method)
  if (method !== text) draft.tell(cellText('log-word', { word: text, read: method }), field.cell, path)
}

/** "Acceptance test" over one of several tests says its stage. */
function putStageOfTitle(draft: Draft, title: string): void {
  const path = 'test.stage'
  const kind = fieldKind(path)
  if (kind.kind !== 'choice' || draft.answers[path] !== undefined) return
  const { padded } = readLabel(title)
  const said = Object.entries(kind.words).filter(([word]) => padded.includes(` ${word} `))
  const [first] = said
  if (!first || said.some(([, stage]) => stage !== first[1])) return
  draft.put(path, first[1])
  draft.tell(cellText('log-word', { word: title, read: first[1] }), '', path)
}

/** Wrapped in its cell or with fixed blanks, a name is the same name, also where tests of one home are brought together. */
const inOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim()

/** What a field says as text, of 200 characters at most. */
function putText(
  draft: Draft,
  field: FoundField,
  path: string,
  { text = textOf(field.content), most = 200 } = {},
): void {
  put(draft, field, path, inOneLine(text).slice(0, most))
  if (field.content.kind === 'number' && field.content.formula !== undefined)
    draft.tell(cellText('log-formula'), field.cell, path)
}

/** "Plot no. | 12" beside "Site | Oak Park": the building is plot 12. */
const PARTS = new Set(
  'plot unit flat apartment apt lot block parzelle wohnung wohneinheit nutzungseinheit logement lot appartement woning kavel appartamento unita piso vivienda byt mieszkanie lejlighed leilighet lagenhet tomt asunto'.split(
    ' ',
  ),
)
const partIn = ({ tokens }: Label): string | undefined => tokens.find((token) => PARTS.has(token))

const isOfSite = ({ tokens }: Label): boolean =>
  tokens.some((token) =>
    /^(?:site|development|project|projekt|bauvorhaben|bv|scheme|estate|baustelle|chantier)$/.test(token),
  )

/** "26-014", "T 7": no word of a name. */
const isCode = (text: string): boolean => /\d/.test(text) && !/\p{L}{3}/u.test(text)

/** A bare number is named with its label: "Plot 12". */
function nameIn({ label, content }: FoundField): string {
  const text = textOf(content)
  const part = partIn(label)
  return part && /^\d{1,4}[a-z]?$/i.test(text) ? `${part[0]?.toUpperCase()}${part.slice(1)} ${text}` : text
}

function putName(draft: Draft, scope: FieldScope, { fileName, key, several, listed }: DetailOptions) {
  const path = 'building.name'
  const given = draft.answered(path)
  if (given !== undefined) return draft.put(path, given)
  if (listed) return draft.put(path, key.slice(0, 200))
  const names = scope.all('name').filter(({ content }) => textOf(content) !== '')
  const part = names.find(({ label }) => partIn(label) !== undefined)
  const address = scope.all('address').find(({ content }) => textOf(content) !== '')
  // "Job | 26-014" beside an address is a number of the firm's.
  const named = names.filter((one) => !address || !isCode(textOf(one.content)))
  const own = part ?? named.find((one) => !isOfSite(one.label)) ?? named[0]
  const site = own && names.find((one) => one !== own && isOfSite(one.label))
  if (site && draft.answers['building.site'] === undefined) putText(draft, site, 'building.site')
  if (address && own) putText(draft, address, 'building.address')
  const field = own ?? address
  if (field) return putText(draft, field, path, { text: nameIn(field) })
  const file = fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '')
  const name = several && !/^\d+$/.test(key) ? key : file
  draft.put(path, name.slice(0, 200) || 'test')
  const of = several && name === key ? 'test' : 'file'
  draft.tell(fieldText('log-name-of-file', { name, of }), '', path)
}

function putDate(draft: Draft, scope: FieldScope, options: DetailOptions) {
  const { fileDate, views } = options
  const path = 'test.date'
  const given = draft.answered(path)
  if (given !== undefined) return draft.put(path, given)
  const [field, ...others] = scope
    .all('date')
    .filter(({ content }) => content.kind === 'date')
    .sort((one, other) => ofTheTest(other.label) - ofTheTest(one.label))
  if (field?.content.kind === 'date') {
    const different = others.filter((one) => isRivalDate(field, one))
    if (different.length === 0) return putDateOf(draft, field, field.content.dates, options)
    const all = [field, ...different]
    const dates = [...new Set(all.flatMap(({ content }) => (content.kind === 'date' ? content.dates : [])))]
    const cells = all.map(({ cell }) => cell)
    return draft.ask({ path, cells, ...questions.whichDate({ dates, monthFirst: false }) })
  }
  const other = otherDate(views)
  const date = other?.date ?? fileDate
  if (date === undefined) return draft.ask({ path, cells: [], ...questions.date() })
  draft.put(path, date, other?.cell)
  draft.tell(
    fieldText(other ? 'log-date-of-file/only' : 'log-date-of-file', { date }),
    other?.cell ?? '',
    path,
  )
}

/** Another day on the same sheet, which its label makes as likely that of the test. */
const isRivalDate = (one: FoundField, other: FoundField): boolean =>
  one.content.kind === 'date' &&
  other.content.kind === 'date' &&
  one.view.name === other.view.name &&
  ofTheTest(one.label) === ofTheTest(other.label) &&
  !one.content.dates.some((date) => other.content.kind === 'date' && other.content.dates.includes(date))

/** A date of the measurement goes before a plain one, that before one of something else, and that before one of the report. */
function ofTheTest({ tokens }: Label): number {
  if (
    tokens.some((token) =>
      /^(report|issue|print|ausdruck|bericht|rapport|erstellt|edit|emis|utskrift|wydruk)/.test(token),
    )
  )
    return -1
  if (tokens.every((token) => says(readLabel(token), 'date') || token === 'of' || token === 'the')) return 0.5
  return tokens.some((token) =>
    /^(test|mess|pruf|meas|mesur|essai|meting|badan|pomiar|prova|misur|ensayo|medici|zkous|mereni|mal|mat(?:dat|n)|mittau|prov)/.test(
      token,
    ),
  )
    ? 1
    : 0
}

function putDateOf(
  draft: Draft,
  field: FoundField,
  dates: readonly string[],
  { american, dayFirst, fileDate }: DetailOptions,
) {
  const path = 'test.date'
  const [only] = dates
  if (dates.length === 1 && only) {
    put(draft, field, path, only)
    if (fileDate !== undefined && Date.parse(only) - Date.parse(fileDate) > DAY)
      draft.tell(fieldText('log-date-after-file', { date: only, changed: fileDate }), field.cell, path)
    if (field.content.kind === 'date' && field.content.serial)
      draft.tell(cellText('log-serial-date', { date: only }), field.cell, path)
    if (field.content.kind === 'date' && field.content.shortYear)
      draft.tell(cellText('log-short-year', { year: only.slice(0, 4) }), field.cell, path)
    return
  }
  // Of two figures that could both be the month, the first reading is that with the day first.
  const swapped = only && `${only.slice(8)}-${only.slice(5, 7)}`
  if (dayFirst && only && dates.slice(1).some((date) => date.slice(5) === swapped)) {
    put(draft, field, path, only)
    draft.tell(cellText('log-day-first', { date: only }), field.cell, path)
    return
  }
  draft.ask({ path, cells: [field.cell], ...questions.whichDate({ dates, monthFirst: american }) })
}

/** A day in ms: the log may have been filled in a time zone on the other side of midnight. */
const DAY = 86_400_000

/** The one date that stands anywhere on the visible sheets. */
function otherDate(views: readonly View[]): { date: string; cell: string } | undefined {
  const found = new Map<string, string>()
  for (const view of views)
    for (let row = 0; row < Math.min(view.rows, 200); row++)
      for (let column = 0; column < Math.min(view.columns, 20); column++) {
        const content = view.at(row, column)
        const dates =
          content?.kind === 'date' ? content.dates : content?.kind === 'text' ? datesIn(content.text) : []
        if (dates.length === 1) found.set(dates[0] as string, view.address(row, column))
      }
  const [only] = found
  return found.size === 1 && only ? { date: only[0], cell: only[1] } : undefined
}

/** The day that stands among other words, as in "tested 22/04/2026". */
function datesIn(text: string): readonly string[] {
  if (text.length > 120 || !/\d/.test(text)) return []
  // "Messung vom 3. Juni 2026, Haus 4", "tested on 3 June 2026".
  const named = /(?<!\d)\d{1,2}(?:st|nd|rd|th)?[. ]\s?\p{L}{3,12}[ .,]\s?\d{4}(?!\d)/u.exec(text)
  const spelt = named ? readDateText(named[0]) : undefined
  if (spelt && 'date' in spelt) return [spelt.date]
  for (const word of text.split(/\s+/)) {
    const date = /^\d[\d./-]{5,9}[,;.]?$/.test(word) ? readDateText(word.replace(/[,;.]$/, '')) : undefined
    if (date) return 'ambiguous' in date ? date.ambiguous : [date.date]
  }
  return []
}
