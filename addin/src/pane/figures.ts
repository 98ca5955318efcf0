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
