import type { Direction, Method, Run } from '@draughtbook/shared-calc'

export interface NextPressure {
  direction: Direction
  /** To set on the gauge, with the sign the run is logged with; undefined when the range is covered. */
  pressure_Pa?: number
  why: string
}

/** Induced pressures a run is best spread over, Pa: above the method's highest, down to its lowest. */
const TOP_PA = 60

/**
 * The pressure to set next: the first gap, from the top down, that the method's spacing leaves open. Common practice,
 * no source, within the limits of the method.
 */
export function nextPressure(run: Run, method: Method, lowest_Pa: number): NextPressure {
  const { limits } = method
  const taken = run.readings.map(({ pressure_Pa }) => Math.abs(pressure_Pa)).toSorted((a, b) => b - a)
  const sign =
    run.readings.filter(({ pressure_Pa }) => pressure_Pa < 0).length * 2 > run.readings.length ? -1 : 1
  const { direction } = run
  const floor = Math.ceil(Math.max(limits.lowestPressure_Pa.value, lowest_Pa))
  const step = limits.readingSpacing_Pa.value
  const set = (value: number, why: string): NextPressure => ({ direction, pressure_Pa: sign * value, why })
  const [highest] = taken
  if (highest === undefined || highest < limits.highestPressure_Pa.value)
    return set(
      TOP_PA,
      `start above ${limits.highestPressure_Pa.value} Pa, at most ${limits.pressureCeiling_Pa.value} Pa`,
    )
  const ends = [...taken.slice(1), floor]
  for (const [index, above] of taken.entries()) {
    const below = ends[index] ?? floor
    const gap = above - below
    const allowed = index === taken.length - 1 ? step / 2 : step + limits.readingSpacingSlack_Pa
    if (gap <= allowed) continue
    const parts = Math.ceil(gap / step)
    return set(
      Math.max(floor, Math.round(above - gap / parts)),
      `no more than ${step} Pa below ${Math.round(above)} Pa`,
    )
  }
  if (taken.length < limits.readingsPerDirection.value)
    return set(
      Math.round(((taken[0] ?? TOP_PA) + (taken[1] ?? floor)) / 2),
      `at least ${limits.readingsPerDirection.value} readings are needed`,
    )
  return { direction, why: `${taken.length} readings from ${Math.round(highest)} Pa down cover the range` }
}
