/** Mean of a list of numbers; undefined for an empty list. */
export const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((a, b) => a + b) / values.length
