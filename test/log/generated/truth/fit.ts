import type { Direction } from '../house.js'
import { flowThroughEnvelope, moistAirDensity, REFERENCE_DENSITY } from './air.js'

/** A run as the log states it, in Pa and m³/h at the device. */
export interface WrittenRun {
  direction: Direction
  zeroFlow_Pa: number
  /** Pressures as logged; already without the zero-flow pressure where `induced`. */
  readings: readonly { pressure_Pa: number; flow_m3_h: number }[]
  induced?: boolean
}

export interface WrittenAir {
  indoor_C: number
  outdoor_C: number
  barometer_Pa: number
}

export interface FittedRun {
  direction: Direction
  exponent: number
  /** Leakage at 50 Pa and reference conditions, m³/h. */
  q50_m3_h: number
  readings: number
}

/**
 * One run by ordinary least squares of ln q on ln Δp, then to reference conditions and 50 Pa. Source: the chain of ISO 9972
 * as in C.-A. Roulet, Ventilation and Airflow in Buildings (2008), pp. 64 and 148; correction to reference air: value from memory.
 */
export function fitRun(run: WrittenRun, air: WrittenAir): FittedRun {
  const inside = moistAirDensity(air.indoor_C, air.barometer_Pa)
  const outside = moistAirDensity(air.outdoor_C, air.barometer_Pa)
  const points = run.readings.map(({ pressure_Pa, flow_m3_h }) => {
    const induced = Math.abs(run.induced ? pressure_Pa : pressure_Pa - run.zeroFlow_Pa)
    return [
      Math.log(induced),
      Math.log(flowThroughEnvelope(flow_m3_h, run.direction, inside, outside)),
    ] as const
  })
  const mean = (index: 0 | 1) => points.reduce((sum, point) => sum + point[index], 0) / points.length
  const [x, y] = [mean(0), mean(1)]
  const exponent =
    points.reduce((sum, [px, py]) => sum + (px - x) * (py - y), 0) /
    points.reduce((sum, [px]) => sum + (px - x) ** 2, 0)
  const throughLeaks = run.direction === 'depressurisation' ? outside : inside
  const coefficient = Math.exp(y - exponent * x) * (throughLeaks / REFERENCE_DENSITY) ** (1 - exponent)
  return {
    direction: run.direction,
    exponent,
    q50_m3_h: coefficient * 50 ** exponent,
    readings: points.length,
  }
}
