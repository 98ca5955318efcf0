import { type Direction, type Method, nextReading, type Run } from '@draughtbook/shared-calc'

export interface NextPressure {
  direction: Direction
  /** To set on the gauge, with the sign the run is logged with; undefined when the range is covered. */
  pressure_Pa?: number
  why: string
}

/** The pressure to set next, in whole pascals. The rule itself is in shared-calc. */
export function nextPressure(run: Run, method: Method, lowest_Pa: number): NextPressure {
  const { direction, readings } = run
  const negative =
    readings.length === 0
      ? direction === 'depressurisation'
      : readings.filter(({ pressure_Pa }) => pressure_Pa < 0).length * 2 > readings.length
  const { gaugePressure_Pa, why } = nextReading(
    {
      taken: readings.map(({ pressure_Pa }) => Math.abs(pressure_Pa)),
      lowest: Math.max(method.limits.lowestPressure_Pa.value, lowest_Pa),
      zeroFlow: 0,
      sign: negative ? -1 : 1,
    },
    method,
  )
  return gaugePressure_Pa === undefined
    ? { direction, why }
    : { direction, pressure_Pa: Math.round(gaugePressure_Pa), why }
}
