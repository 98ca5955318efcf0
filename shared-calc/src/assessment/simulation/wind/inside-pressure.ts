import type { Wind } from './gusts.js'
import type { WindHouse } from './house.js'
import { pressureCoefficient } from './house.js'

const GRAVITY_m_s2 = 9.80665
/** Below this the power law is carried on as a straight line: it has no slope at zero. */
const SMALL_Pa = 0.02

/** Pressure outside each leak, relative to still air at the ground, less what the column of air inside adds, Pa. */
export function outsidePressures(
  { leaks, shelter }: WindHouse,
  wind: Wind,
  densities: { readonly indoor_kg_m3: number; readonly outdoor_kg_m3: number },
): number[] {
  const dynamic = 0.5 * densities.outdoor_kg_m3 * wind.speed_m_s ** 2
  const column = (densities.outdoor_kg_m3 - densities.indoor_kg_m3) * GRAVITY_m_s2
  return leaks.map(
    (leak) => pressureCoefficient(leak, shelter, wind.bearing) * dynamic - column * leak.height_m,
  )
}

/**
 * The pressure indoors at the ground at which the leaks carry what the fan moves.
 * @param flow - flow blown in, m³/h; drawn out negative; 0 with the fan covered
 * @param coefficient - flow coefficient of the whole house in the air of the day, m³/(h·Paⁿ)
 * @param start - a pressure near the answer, Pa
 */
export function insidePressure(
  { leaks, exponent }: WindHouse,
  outside: readonly number[],
  coefficient: number,
  flow: number,
  start: number,
): number {
  let [low, high] = [-400, 400]
  let inside = start
  for (let round = 0; round < 60; round += 1) {
    let leaking = -flow / coefficient
    let slope = 0
    for (let i = 0; i < leaks.length; i += 1) {
      const { share } = leaks[i] as (typeof leaks)[number]
      const difference = inside - (outside[i] as number)
      const size = Math.max(Math.abs(difference), SMALL_Pa)
      const conductance = share * size ** (exponent - 1)
      leaking += conductance * difference
      slope += conductance * (Math.abs(difference) > SMALL_Pa ? exponent : 1)
    }
    if (leaking > 0) high = inside
    else low = inside
    const next = inside - leaking / slope
    const taken = next > low && next < high ? next : (low + high) / 2
    if (Math.abs(taken - inside) < 1e-6) return taken
    inside = taken
  }
  return inside
}
