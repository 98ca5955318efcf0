import type { Column } from '../../engine/index.js'

/**
 * Which readings belong to the upper of two stations: 1 above the geometric mean of the lowest and the highest
 * pressure, else 0. Only chapters of two-point methods ask for it.
 */
export function upperStation(pressures_Pa: readonly number[]): Column {
  const sizes = pressures_Pa.map(Math.abs)
  const middle = Math.sqrt(Math.min(...sizes) * Math.max(...sizes))
  return {
    values: sizes.map((size) => (size > middle ? 1 : 0)),
    origin: () => ({ kind: 'rule', reason: 'station to which the reading belongs' }),
  }
}
