/** Maps a range of positive values to pixels, logarithmically. */
export interface LogScale {
  readonly from: number
  readonly to: number
  at(value: number): number
  /** Labelled ticks (1, 2, 5 and decades, thinned to what fits) and unlabelled ones between. */
  readonly ticks: readonly { value: number; labelled: boolean }[]
}

const STEPS = [1, 2, 3, 4, 5, 6, 7, 8, 9]

/**
 * @param values - positive values to be seen, length ≥ 1
 * @param start_px, end_px - where the ends of the axis lie; start may be the larger
 * @param room_px - least distance between two labelled ticks
 */
export function logScale(
  values: readonly number[],
  start_px: number,
  end_px: number,
  room_px: number,
): LogScale {
  const from = stepBelow(Math.min(...values) * 0.97)
  const to = stepAbove(Math.max(...values) * 1.03)
  const span = Math.log10(to / from)
  const at = (value: number): number => start_px + ((end_px - start_px) * Math.log10(value / from)) / span
  const all = steps(from, to)
  const fits = (set: readonly number[]): boolean => {
    const places = all.filter((value) => set.includes(leading(value))).map(at)
    return places.every((place, i) => i === 0 || Math.abs(place - (places[i - 1] ?? 0)) >= room_px)
  }
  const labels = LABELS.find(fits) ?? [1]
  return { from, to, at, ticks: all.map((value) => ({ value, labelled: labels.includes(leading(value)) })) }
}

/** Which steps of a decade are labelled, from all to the decades alone. */
const LABELS = [STEPS, [1, 2, 3, 4, 5, 6, 8], [1, 2, 3, 5, 7], [1, 2, 3, 5], [1, 2, 5], [1, 3], [1]]

const decade = (value: number): number => 10 ** Math.floor(Math.log10(value) + 1e-9)
const leading = (value: number): number => Math.round(value / decade(value))

/** The next of 1, 2, 3 … 9 × 10ᵏ at or below. */
function stepBelow(value: number): number {
  return decade(value) * Math.max(1, Math.floor(value / decade(value) + 1e-9))
}

function stepAbove(value: number): number {
  return decade(value) * Math.ceil(value / decade(value) - 1e-9)
}

function steps(from: number, to: number): number[] {
  const found: number[] = []
  for (let power = decade(from); power <= to * 1.0001; power *= 10)
    for (const step of STEPS)
      if (power * step >= from * 0.9999 && power * step <= to * 1.0001) found.push(power * step)
  return found
}
