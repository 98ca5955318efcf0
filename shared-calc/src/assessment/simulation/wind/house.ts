import type { Random } from '../random.js'

/** One leak of the simulated house: its share of the whole, the way it faces, and its height. */
export interface Leak {
  readonly share: number
  /** Bearing the leak faces, rad; undefined for the roof. */
  readonly faces?: number
  readonly height_m: number
}

/** A house whose leaks all follow one power law in still air: the curve a perfect test would find. */
export interface WindHouse {
  readonly leaks: readonly Leak[]
  /** Air leakage coefficient at reference air, m³/(h·Paⁿ), and exponent: the truth. */
  readonly leakageCoefficient: number
  readonly exponent: number
  /** 0 fully exposed to 1 sheltered by obstacles as high as the house. */
  readonly shelter: number
  readonly height_m: number
}

const walls = [0, 0.5, 1, 1.5].map((turn) => turn * Math.PI)

/** A house with leaks low and high on four walls and in the roof, unevenly spread. */
export function drawHouse(random: Random): WindHouse {
  const height = 5 + random.uniform()
  const places: Omit<Leak, 'share'>[] = [
    ...walls.flatMap((faces) => [
      { faces, height_m: 0.3 * height },
      { faces, height_m: 0.75 * height },
    ]),
    { height_m: height },
  ]
  const weights = places.map(() => 0.3 + random.uniform())
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const exponent = Math.min(0.8, Math.max(0.52, 0.646 + 0.057 * random.normal()))
  return {
    leaks: places.map((place, i) => ({ ...place, share: (weights[i] as number) / total })),
    leakageCoefficient: 30 * Math.exp(0.6 * random.normal()),
    exponent,
    shelter: random.uniform(),
    height_m: height,
  }
}

/**
 * Surface pressure coefficient of a leak for wind from a bearing. Windward, side, lee and roof values lie between those
 * of an exposed house and one among houses of its own height. Source: order of the tables for low-rise buildings in the
 * AIVC guide to energy-efficient ventilation, 1996 (values from memory).
 */
export function pressureCoefficient({ faces }: Leak, shelter: number, bearing: number): number {
  const between = ([exposed, sheltered]: readonly [number, number]) =>
    exposed + (sheltered - exposed) * shelter
  if (faces === undefined) return between(coefficients.roof)
  const along = Math.cos(bearing - faces)
  const side = between(coefficients.side)
  const end = along > 0 ? between(coefficients.windward) : between(coefficients.lee)
  return side + (end - side) * along * along
}

const coefficients = {
  windward: [0.7, 0.2],
  side: [-0.5, -0.25],
  lee: [-0.2, -0.25],
  roof: [-0.6, -0.45],
} as const
