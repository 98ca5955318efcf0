import { leakKinds, runDirections, sizesInWords, waysOfFinding } from '@draughtbook/shared-calc'
import { choicesOf, type ListColumn, type ListRow, YES_NO } from './list-column.js'

const isGap = (row: ListRow): boolean =>
  row['size.words']?.endsWith('gap') === true || (row['size.width_mm'] ?? '') !== ''

export const leakColumns: readonly ListColumn[] = [
  { path: 'place', label: 'Place', kind: 'text' },
  { path: 'kind', label: 'Kind', kind: 'choice', options: choicesOf(leakKinds), start: 'other' },
  { path: 'foundBy', label: 'Found by', kind: 'choice', options: choicesOf(waysOfFinding) },
  {
    path: 'seenUnder',
    label: 'Seen under',
    kind: 'choice',
    options: choicesOf([...runDirections, 'both']),
  },
  { path: 'size.words', label: 'Size in words', kind: 'choice', options: choicesOf(sizesInWords) },
  { path: 'size.length_m', label: 'Length of the gap', unit: 'm', kind: 'number', when: isGap },
  { path: 'size.width_mm', label: 'or width of the gap', unit: 'mm', kind: 'number' },
  { path: 'size.diameter_mm', label: 'or diameter', unit: 'mm', kind: 'number' },
  { path: 'size.area_cm2', label: 'or area', unit: 'cm²', kind: 'number' },
  { path: 'count', label: 'How many', kind: 'whole' },
  { path: 'photo', label: 'Photo', kind: 'photo' },
  { path: 'note', label: 'Note', kind: 'text' },
  {
    path: 'fixed',
    label: 'Fixed',
    kind: 'flag',
    start: 'no',
    options: YES_NO,
  },
  { path: 'fixedInRound', label: 'In repair round', kind: 'whole', when: (row) => row.fixed === 'yes' },
]

export const earlierColumns: readonly ListColumn[] = [
  { path: 'date', label: 'Date of the earlier test', kind: 'date' },
  { path: 'airLeakageRate50_m3_h', label: 'Its q50', unit: 'm³/h', kind: 'number' },
  { path: 'repairsAfter', label: 'Repairs after it', kind: 'text' },
]
