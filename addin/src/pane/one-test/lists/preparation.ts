import { cautionAnswers, openingStates } from '@draughtbook/shared-calc'
import { choicesOf, type ListColumn } from './list-column.js'

export const openingColumns: readonly ListColumn[] = [
  { path: 'opening', label: 'Opening', kind: 'text' },
  { path: 'kind', label: 'Kind', kind: 'text' },
  { path: 'state', label: 'State', kind: 'choice', options: choicesOf(openingStates) },
  { path: 'note', label: 'Note', kind: 'text' },
]

export const cautionColumns: readonly ListColumn[] = [
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
