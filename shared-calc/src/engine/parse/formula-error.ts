/** A fault in a formula's definition: found when the program loads, never caused by a user's input. */
export class FormulaError extends Error {
  override readonly name = 'FormulaError'
}
