import type { ListColumn, ListRow } from '../lists.js'

const range = (index: number): readonly ListColumn[] => {
  const at = `ranges[${index}]`
  // The next range is asked for once the one before has a name.
  const when = (row: ListRow): boolean => index === 0 || (row[`ranges[${index - 1}].label`] ?? '') !== ''
  const number = `range ${index + 1}`
  return [
    { path: `${at}.label`, label: `Name of ${number}`, kind: 'text', when },
    { path: `${at}.minimumFlow_m3_h`, label: `Lowest flow, ${number}`, unit: 'm³/h', kind: 'number', when },
    { path: `${at}.maximumFlow_m3_h`, label: `Highest flow, ${number}`, unit: 'm³/h', kind: 'number', when },
  ]
}

export const deviceColumns: readonly ListColumn[] = [
  { path: 'name', label: 'Flow device', kind: 'text' },
  { path: 'calibrationDue', label: 'Calibration due', kind: 'date' },
  ...[0, 1, 2, 3].flatMap(range),
]

export const gaugeColumns: readonly ListColumn[] = [
  { path: 'name', label: 'Pressure gauge', kind: 'text' },
  { path: 'calibrationDue', label: 'Calibration due', kind: 'date' },
]
