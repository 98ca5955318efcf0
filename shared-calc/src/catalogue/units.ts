/** Units of published figures: as data spells them → as people print them. */
const printed: Readonly<Record<string, string>> = {
  '1': '',
  'm3/h': 'm³/h',
  'm3/(h·m2)': 'm³/(h·m²)',
  'm3/(h·Pa^n)': 'm³/(h·Paⁿ)',
  m2: 'm²',
  m3: 'm³',
  cm2: 'cm²',
  in2: 'in²',
  ft2: 'ft²',
  ft3: 'ft³',
  'cfm/ft2': 'cfm/ft²',
  'L/(s·m2)': 'L/(s·m²)',
  'cm2/m2': 'cm²/m²',
}

/** A unit as people print it; nothing for a pure number. */
export const unitText = (unit: string): string => printed[unit] ?? unit
