/** A number with so many significant figures, never in powers of ten within everyday sizes. */
export function figure(value: number, significant = 3): string {
  if (!Number.isFinite(value)) return '–'
  if (value === 0) return '0'
  const digits = Math.max(0, significant - 1 - Math.floor(Math.log10(Math.abs(value))))
  return withMinus(value.toFixed(Math.min(digits, 8)))
}

/** A number with its sign and so many decimal places. */
export function signed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals)
  if (Number(text) === 0) return text
  return value < 0 ? `−${text}` : `+${text}`
}

/** A true minus sign, as wide as a figure. */
export const withMinus = (text: string): string => text.replace(/^-/, '−')

const UNITS: Record<string, string> = {
  '1/h': '1/h',
  'm3/h': 'm³/h',
  'm3/(h·m2)': 'm³/(h·m²)',
  cm2: 'cm²',
  'm3/(h·Pa^n)': 'm³/(h·Paⁿ)',
  '1': '',
}

/** A unit as people print it. */
export const unitText = (unit: string): string => UNITS[unit] ?? unit
