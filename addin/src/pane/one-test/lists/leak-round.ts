import type { ListColumn } from './list-column.js'

/** What was found at each stop of the round. Kept with the test; no part of the record, which holds the leaks themselves. */
export const roundColumns: readonly ListColumn[] = [
  { path: 'stop', label: 'Stop', kind: 'text' },
  { path: 'found', label: 'Found', kind: 'text' },
  { path: 'note', label: 'Note', kind: 'text' },
  { path: 'photo', label: 'Photo', kind: 'photo' },
]

/** Photos of how the house and the fan were set up, each with what it shows. */
export const setUpColumns: readonly ListColumn[] = [
  { path: 'photo', label: 'Photo', kind: 'photo' },
  { path: 'shows', label: 'What it shows', kind: 'text' },
]
