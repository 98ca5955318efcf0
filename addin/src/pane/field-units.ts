/** Units people use for a field of the form, by the unit its name ends in; the record's own first. */
const BY_ENDING: readonly (readonly [ending: RegExp, units: readonly string[]])[] = [
  [/barometricPressure_Pa$/, ['Pa', 'hPa', 'mbar', 'kPa', 'inHg', 'mmHg']],
  [/_m3$/, ['m³', 'ft³']],
  [/_m2$/, ['m²', 'ft²']],
  [/Temperature_C$/, ['°C', '°F']],
  [/(height|altitude)_m$/, ['m', 'ft']],
  [/Speed_m_s$/, ['m/s', 'km/h', 'mph', 'kn']],
]
const ASKED = /^(building|conditions|plan\.forecast)\./

/** Units to choose from beside a field's number; fewer than two where there is nothing to choose. */
export const unitsOf = (path: string): readonly string[] =>
  ASKED.test(path) ? (BY_ENDING.find(([ending]) => ending.test(path))?.[1] ?? []) : []
