import { z } from 'zod'
import { plain } from '../../catalogue/words.js'
import type { Method, Stations } from '../../methods/method.js'
import { ABOVE_NEEDED_PA } from '../plan/pressures.js'

/** The next pressure to set; without one when the range is covered. */
export const NextReading = z.strictObject({
  /** Induced pressure difference, Pa. */
  pressureDifference_Pa: z.number().optional(),
  /** What the gauge will show then, with the sign the run is logged with, Pa. */
  gaugePressure_Pa: z.number().optional(),
  why: z.string(),
})
export type NextReading = z.infer<typeof NextReading>

/** State of a run: the readings, and what the method allows. Pressures in Pa, induced, above zero. */
export interface Standing {
  readonly taken: readonly number[]
  readonly lowest: number
  readonly zeroFlow: number
  readonly sign: 1 | -1
}

/**
 * The pressure to set next: first the highest, then the first gap from the top, then down to the lowest, then more readings.
 * Never below what the method allows, nor with the gauge above its ceiling. Source: common practice, no source.
 */
export function nextReading(standing: Standing, { limits, stations }: Method): NextReading {
  const { taken, lowest, zeroFlow, sign } = standing
  const { readingSpacing_Pa: spacing, readingSpacingSlack_Pa: slack } = limits
  const ceiling = limits.pressureCeiling_Pa.value - Math.abs(zeroFlow)
  const set = (value: number, why: string): NextReading => {
    const pressure = Math.min(ceiling, Math.max(lowest, value))
    return { pressureDifference_Pa: pressure, gaugePressure_Pa: sign * pressure + zeroFlow, why }
  }
  if (stations) return nextAtStation(standing, stations, set)
  const sorted = [...taken].sort((a, b) => b - a)
  const [highest] = sorted
  if (highest === undefined || highest < limits.highestPressure_Pa.value)
    return set(
      limits.highestPressure_Pa.value + ABOVE_NEEDED_PA,
      `A reading of at least ${limits.highestPressure_Pa.value} Pa is needed.`,
    )
  const gaps = sorted.slice(1).map((below, i) => ({ above: sorted[i] as number, below }))
  const open = gaps.find(({ above, below }) => above - below > spacing.value + slack)
  if (open) {
    const size = open.above - open.below
    return set(
      open.above - size / Math.ceil(size / spacing.value),
      `There is a gap between ${plain(open.below, 0)} and ${plain(open.above, 0)} Pa.`,
    )
  }
  const last = sorted.at(-1) ?? highest
  if (last - lowest > spacing.value + slack)
    return set(
      last - spacing.value,
      `Readings are at most ${spacing.value} Pa apart; the last was at ${plain(last, 0)} Pa.`,
    )
  if (taken.length < limits.readingsPerDirection.value)
    return set(
      (highest + (sorted[1] ?? lowest)) / 2,
      `At least ${limits.readingsPerDirection.value} readings are needed.`,
    )
  return {
    why: `${taken.length} readings from ${plain(highest, 0)} to ${plain(last, 0)} Pa cover the range.`,
  }
}

/** Methods that repeat their readings: the first station that still lacks some. */
function nextAtStation(
  { taken, lowest }: Standing,
  { pressures_Pa, slack, repeats }: Stations,
  set: (value: number, why: string) => NextReading,
): NextReading {
  for (const station of pressures_Pa) {
    const there = taken.filter((pressure) => Math.abs(pressure - station) <= slack * station).length
    if (there >= repeats.value) continue
    if (station < lowest)
      return {
        why: `${plain(station)} Pa is below the lowest usable pressure of ${plain(lowest, 1)} Pa.`,
      }
    return set(station, `${there} of ${repeats.value} readings at ${plain(station)} Pa so far.`)
  }
  return { why: `All ${repeats.value} readings at each pressure are taken.` }
}
