const PRINTED: Readonly<Record<string, string>> = {
  'm3/h': 'm³/h',
  '1/h': '1/h',
  'm3/(h·m2)': 'm³/(h·m²)',
  cm2: 'cm²',
  m2: 'm²',
  m3: 'm³',
  'm3/(h·Pa^n)': 'm³/(h·Paⁿ)',
}

/** A unit as it is printed. */
export const unitText = (unit: string): string => PRINTED[unit] ?? unit
