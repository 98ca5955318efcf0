import type { ListColumn, ListRow } from './list-column.js'

/** A range by its curve, as the firm's library holds it; asked for only where something stands there. */
const curveOf = (at: string, number: string): readonly ListColumn[] =>
  (
    [
      ['coefficient', 'Coefficient', 'm³/(h·Paᵐ)'],
      ['exponent', 'Exponent', ''],
      ['minimumPressure_Pa', 'Lowest device pressure', 'Pa'],
      ['maximumPressure_Pa', 'Highest device pressure', 'Pa'],
    ] as const
  ).map(([key, label, unit]) => ({
    path: `${at}.${key}`,
    label: `${label}, ${number}`,
    unit,
    kind: 'number',
    when: stands(`${at}.${key}`),
  }))

const stands =
  (path: string) =>
  (row: ListRow): boolean =>
    (row[path] ?? '') !== ''

const range = (index: number): readonly ListColumn[] => {
  const at = `ranges[${index}]`
  // The next range is asked for once the one before has a name.
  const when = (row: ListRow): boolean => index === 0 || (row[`ranges[${index - 1}].label`] ?? '') !== ''
  const number = `range ${index + 1}`
  return [
    { path: `${at}.label`, label: `Name of ${number}`, kind: 'text', when },
    { path: `${at}.minimumFlow_m3_h`, label: `Lowest flow, ${number}`, unit: 'm³/h', kind: 'number', when },
    { path: `${at}.maximumFlow_m3_h`, label: `Highest flow, ${number}`, unit: 'm³/h', kind: 'number', when },
    ...curveOf(at, number),
  ]
}

export const deviceColumns: readonly ListColumn[] = [
  { path: 'name', label: 'Flow device', kind: 'text' },
  { path: 'calibrationDue', label: 'Calibration due', kind: 'date' },
  { path: 'serial', label: 'Serial number', kind: 'text', when: stands('serial') },
  {
    path: 'referenceDensity_kg_m3',
    label: 'Reference density',
    unit: 'kg/m³',
    kind: 'number',
    when: stands('referenceDensity_kg_m3'),
  },
  ...[0, 1, 2, 3, 4, 5, 6, 7].flatMap(range),
]

export const gaugeColumns: readonly ListColumn[] = [
  { path: 'name', label: 'Pressure gauge', kind: 'text' },
  { path: 'serial', label: 'Serial number', kind: 'text', when: stands('serial') },
  { path: 'calibrationDue', label: 'Calibration due', kind: 'date' },
]
