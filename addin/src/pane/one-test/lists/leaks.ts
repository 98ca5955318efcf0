import type { ListColumn, ListRow } from './list-column.js'

const same = (values: readonly string[]): readonly (readonly [string, string])[] =>
  values.map((value) => [value, value] as const)

const KINDS = [
  'service penetration',
  'socket or chase',
  'window or door seal',
  'window or door frame',
  'wall to floor',
  'wall to roof',
  'stack or duct',
  'membrane lap',
  'hatch',
  'device opening',
  'other',
]
const FOUND_BY = ['hand', 'smoke', 'anemometer', 'thermal camera', 'listening', 'fog', 'sight', 'other']
const WORDS = ['pinhole', 'pencil', 'finger', 'fist', 'hairline gap', 'card gap', 'pencil gap', 'finger gap']
const isGap = (row: ListRow): boolean =>
  row['size.words']?.endsWith('gap') === true || (row['size.width_mm'] ?? '') !== ''

export const leakColumns: readonly ListColumn[] = [
  { path: 'place', label: 'Place', kind: 'text' },
  { path: 'kind', label: 'Kind', kind: 'choice', options: same(KINDS), start: 'other' },
  { path: 'foundBy', label: 'Found by', kind: 'choice', options: same(FOUND_BY) },
  {
    path: 'seenUnder',
    label: 'Seen under',
    kind: 'choice',
    options: same(['depressurisation', 'pressurisation', 'both']),
  },
  { path: 'size.words', label: 'Size in words', kind: 'choice', options: same(WORDS) },
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
    options: [
      ['yes', 'yes'],
      ['no', 'no'],
    ],
  },
  { path: 'fixedInRound', label: 'In repair round', kind: 'whole', when: (row) => row.fixed === 'yes' },
]

export const earlierColumns: readonly ListColumn[] = [
  { path: 'date', label: 'Date of the earlier test', kind: 'date' },
  { path: 'airLeakageRate50_m3_h', label: 'Its q50', unit: 'm³/h', kind: 'number' },
  { path: 'repairsAfter', label: 'Repairs after it', kind: 'text' },
]
