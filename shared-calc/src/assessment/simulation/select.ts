/**
 * The value that would be at an index if the list were sorted; rearranges the list. Hoare's selection, whose time
 * grows with the length, not with its logarithm too.
 */
export function select(values: Float64Array, index: number): number {
  let from = 0
  let to = values.length - 1
  while (from < to) {
    const pivot = values[(from + to) >> 1] as number
    let low = from
    let high = to
    while (low <= high) {
      while ((values[low] as number) < pivot) low += 1
      while ((values[high] as number) > pivot) high -= 1
      if (low > high) break
      const kept = values[low] as number
      values[low] = values[high] as number
      values[high] = kept
      low += 1
      high -= 1
    }
    if (index <= high) to = high
    else if (index >= low) from = low
    else break
  }
  return values[index] as number
}
