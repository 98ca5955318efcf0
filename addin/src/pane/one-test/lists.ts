import { cautionAnswers, openingStates } from '@draughtbook/shared-calc'
import { earlierColumns, leakColumns } from './lists/leaks.js'
import { choicesOf, type ListColumn, type ListRow } from './lists/list-column.js'
import { deviceColumns, gaugeColumns } from './lists/plan.js'
import { elementColumns, spaceColumns } from './lists/take-off.js'

/** What was found at each stop of the round. Kept with the test; no part of the record, which holds the leaks themselves. */
const roundColumns: readonly ListColumn[] = [
  { path: 'stop', label: 'Stop', kind: 'text' },
  { path: 'found', label: 'Found', kind: 'text' },
  { path: 'note', label: 'Note', kind: 'text' },
  { path: 'photo', label: 'Photo', kind: 'photo' },
]

/** Photos of how the house and the fan were set up, each with what it shows. */
const setUpColumns: readonly ListColumn[] = [
  { path: 'photo', label: 'Photo', kind: 'photo' },
  { path: 'shows', label: 'What it shows', kind: 'text' },
]

const openingColumns: readonly ListColumn[] = [
  { path: 'opening', label: 'Opening', kind: 'text' },
  { path: 'kind', label: 'Kind', kind: 'text' },
  { path: 'state', label: 'State', kind: 'choice', options: choicesOf(openingStates) },
  { path: 'note', label: 'Note', kind: 'text' },
]

const cautionColumns: readonly ListColumn[] = [
  { path: 'caution', label: 'Caution', kind: 'text' },
  {
    path: 'answer',
    label: 'Answer',
    kind: 'choice',
    options: choicesOf(cautionAnswers),
  },
  { path: 'by', label: 'By', kind: 'text' },
  { path: 'on', label: 'On', kind: 'date' },
  { path: 'note', label: 'Note', kind: 'text' },
]

/** Lists of a record, by their path in it; those that begin with `site.` are the page's own. */
export const listColumns = {
  'takeOff.spaces': spaceColumns,
  'takeOff.elements': elementColumns,
  'plan.devices': deviceColumns,
  'plan.gauges': gaugeColumns,
  'test.openings': openingColumns,
  'preparation.cautions': cautionColumns,
  'leaks.list': leakColumns,
  'leaks.earlierTests': earlierColumns,
  'site.round': roundColumns,
  'site.setUp': setUpColumns,
} as const satisfies Readonly<Record<string, readonly ListColumn[]>>

export type { ListColumn, ListRow } from './lists/list-column.js'
export type ListName = keyof typeof listColumns
export type Lists = Readonly<Partial<Record<ListName, readonly ListRow[]>>>

/** A new row, with what its columns start with. */
export const newRow = (list: ListName): ListRow =>
  Object.fromEntries(
    (listColumns[list] as readonly ListColumn[]).flatMap(({ path, start }) =>
      start === undefined ? [] : [[path, start]],
    ),
  )

/** File names of the photos that rows point to. */
export const photosIn = (lists: Lists = {}): string[] =>
  Object.values(lists).flatMap((rows) => rows.flatMap(({ photo }) => (photo ? [photo] : [])))
