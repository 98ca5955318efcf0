/** Which calculation version a workbook of several tests was made under, as a sentence on it. */
export const madeUnder = (version: string): string => `Calculation version ${version}.`

/** The version that such a text names, whatever else it says. */
export const versionIn = (text: string): string | undefined =>
  /\bCalculation version (\d{1,4}\.\d{1,4}\.\d{1,4})\./.exec(text)?.[1]
