/** How a value found compares with the value expected. */
export type Agreement = 'same' | 'rounding' | 'differs'

/** Largest relative difference of a computed number that rounding on the way can explain; as on sheet Check. */
const COMPUTED = 1e-9
/** The same where another program has recalculated: LibreOffice works the t distribution out to within 6e-9 near a half (measured). */
const RECALCULATED = 1e-8
/** Below this a computed number counts as zero: residuals and margins cancel only so far. */
const ZERO = 1e-12
/** The same where another program has recalculated; far below what any sheet shows, and far above its last digits. */
export const RECALCULATED_ZERO = 1e-9

/** Half a unit of the 15th digit at its largest, with a little slack for the halves themselves. */
const DIGITS_15 = 6e-15

/** A number that was worked out: another spreadsheet program may have recalculated and saved it. */
export function computedAgrees(found: number, expected: number, zero = ZERO): Agreement {
  if (found === expected) return 'same'
  const size = Math.max(Math.abs(found), Math.abs(expected))
  // Only where both are next to nothing: a small number that is shown in full keeps its relative tolerance.
  const tolerance = Math.max(
    size < zero * 1000 || found === 0 || expected === 0 ? zero : 0,
    (zero > ZERO ? RECALCULATED : COMPUTED) * size,
  )
  return Math.abs(found - expected) <= tolerance ? 'rounding' : 'differs'
}

/** A number that was typed or logged: another program may have saved it with 15 digits, but never changes it. */
export function typedAgrees(found: number, expected: number): Agreement {
  if (found === expected) return 'same'
  return Math.abs(found - expected) <= DIGITS_15 * Math.abs(expected) ? 'rounding' : 'differs'
}

/** A printed number against the full one: half a unit of the last place shown. */
export function printedAgrees(found: number, expected: number, decimals: number): Agreement {
  if (found === expected) return 'same'
  // A few parts in 10¹⁵ more, for numbers that end exactly on the half.
  const half = 0.5 * 10 ** -decimals + 1e-15 * Math.abs(expected) * 4
  return Math.abs(found - expected) <= half ? 'rounding' : 'differs'
}
