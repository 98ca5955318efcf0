/** The command was called in a way that cannot be carried out; ends with exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError'
}
