/** Two numbers closer than this share of the larger are taken as equal: what rounding on the way can make of one number. */
export const EQUAL_WITHIN = 1e-9

/**
 * A value as it is compared with a limit: the limit itself where the two are equal, else the value. The one comparison of
 * verdict, decision, rules and re-run.
 */
export const toLimit = (value: number, limit: number): number =>
  Math.abs(value - limit) <= EQUAL_WITHIN * Math.max(Math.abs(value), Math.abs(limit)) ? limit : value

/** The same as a spreadsheet formula, from the formulas of both. */
export const toLimitInSheet = (value: string, limit: string): string =>
  `IF(ABS(${value}-${limit})<=${EQUAL_WITHIN}*MAX(ABS(${value}),ABS(${limit})),${limit},${value})`

/** Whether a value is above a limit and not equal to it. */
export const exceeds = (value: number, limit: number): boolean => toLimit(value, limit) > limit

/** Whether a value is below a limit and not equal to it. */
export const fallsBelow = (value: number, limit: number): boolean => toLimit(value, limit) < limit
