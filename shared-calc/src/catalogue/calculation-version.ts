/** Rises whenever any published figure can change. Written into every evaluation and workbook. */
export const CALCULATION_VERSION = '1.14.0'
