/** Work that is done when its result is first asked for, and only then. */
export function once<Result>(work: () => Result): () => Result {
  let result: { readonly value: Result } | undefined
  return () => {
    result ??= { value: work() }
    return result.value
  }
}
