import type { ListColumn } from './list-column.js'

const STATES = ['closed', 'sealed', 'filled', 'off', 'open', 'not present'] as const

export const openingColumns: readonly ListColumn[] = [
  { path: 'opening', label: 'Opening', kind: 'text' },
  { path: 'kind', label: 'Kind', kind: 'text' },
  { path: 'state', label: 'State', kind: 'choice', options: STATES.map((state) => [state, state] as const) },
  { path: 'note', label: 'Note', kind: 'text' },
]

export const cautionColumns: readonly ListColumn[] = [
  { path: 'caution', label: 'Caution', kind: 'text' },
  {
    path: 'answer',
    label: 'Answer',
    kind: 'choice',
    options: [
      ['taken care of', 'taken care of'],
      ['does not apply', 'does not apply'],
    ],
  },
  { path: 'by', label: 'By', kind: 'text' },
  { path: 'on', label: 'On', kind: 'date' },
  { path: 'note', label: 'Note', kind: 'text' },
]
