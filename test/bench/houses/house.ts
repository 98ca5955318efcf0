import type { Chance } from './chance.js'

/** An opening: its own power law, where it is, and which way it faces (bearing in rad; none for the roof). */
export interface Opening {
  /** Flow at 1 Pa in reference air, m³/h. */
  readonly coefficient: number
  readonly exponent: number
  readonly height_m: number
  readonly bearing?: number
}

/** Pressure coefficient by the angle between wind and wall, rad; `undefined` for the roof. */
export type SurfacePressure = (angle: number | undefined) => number

export interface House {
  readonly openings: readonly Opening[]
  readonly height_m: number
  readonly surfacePressure: SurfacePressure
  /** How wind gusts here: standard deviations as a share of the mean, and how long they last. */
  readonly gusts: {
    readonly gust: number
    readonly gust_s: number
    readonly drift: number
    readonly drift_s: number
    readonly turn_rad: number
    readonly turn_s: number
  }
  /** Pressure coefficient where the outdoor hose of the gauge ends. */
  readonly hoseCoefficient: number
}

/** Density of the reference air: dry, 20 °C, 101 325 Pa, by the ideal-gas law. */
export const REFERENCE_kg_m3 = 101_325 / (287.055 * 293.15)

/** The truth: what the openings pass in still reference air at one pressure, m³/h, and the area of the same flow, cm². */
export const trueFlow = ({ openings }: House, pressure_Pa: number): number =>
  openings.reduce((sum, { coefficient, exponent }) => sum + coefficient * pressure_Pa ** exponent, 0)
export const trueArea = (house: House, pressure_Pa: number): number =>
  (trueFlow(house, pressure_Pa) / 3600 / Math.sqrt((2 * pressure_Pa) / REFERENCE_kg_m3)) * 1e4

export type Family = (chance: Chance) => House

/** Openings with shares at 50 Pa as weighed, for a whole flow at 50 Pa. */
function openingsOf(
  flow50: number,
  places: readonly (Omit<Opening, 'coefficient'> & { readonly weight: number })[],
): Opening[] {
  const total = places.reduce((sum, { weight }) => sum + weight, 0)
  return places.map(({ weight, ...place }) => ({
    ...place,
    coefficient: ((weight / total) * flow50) / 50 ** place.exponent,
  }))
}

const quarter = Math.PI / 2

/**
 * The family that the defaults of the budget were looked at with: four to six openings of unlike exponents, heights and
 * sides, in houses of one or two storeys, exposed to sheltered.
 */
export const known: Family = (chance) => {
  const height = chance.between(4.5, 8)
  const count = Math.floor(chance.between(4, 7))
  const openings = openingsOf(
    Math.exp(chance.between(Math.log(150), Math.log(2500))),
    Array.from({ length: count }, () => {
      const inRoof = chance.between(0, 1) < 0.2
      return {
        weight: chance.between(0.2, 1.2),
        exponent: chance.between(0.52, 0.78),
        height_m: inRoof ? height : chance.between(0.05, 0.95) * height,
        ...(!inRoof && { bearing: chance.oneOf([0, 1, 2, 3]) * quarter }),
      }
    }),
  )
  const exposed = chance.between(0, 1)
  return {
    openings,
    height_m: height,
    surfacePressure: cosines(exposed),
    gusts: {
      gust: chance.between(0.2, 0.35),
      gust_s: chance.between(4, 12),
      drift: chance.between(0.06, 0.14),
      drift_s: chance.between(80, 200),
      turn_rad: 0.22,
      turn_s: 60,
    },
    hoseCoefficient: chance.error(0.05),
  }
}

/** Windward pressed, sides, lee and roof drawn, weaker behind obstacles: a smooth curve through typical low-rise values. */
const cosines = (exposed: number): SurfacePressure => {
  const windward = 0.22 + 0.45 * exposed
  const lee = -0.22 - 0.04 * exposed
  const side = -0.28 - 0.25 * exposed
  const roof = -0.4 - 0.2 * exposed
  return (angle) => {
    if (angle === undefined) return roof
    const along = Math.cos(angle)
    return side + ((along > 0 ? windward : lee) - side) * along * along
  }
}

/**
 * Houses kept back: nothing was adjusted to them. Three large openings or many small ones, orifice-like and
 * crack-like ones together, most at the foot and at the eaves, pressure coefficients by a table of eight sectors for a
 * long house, and wind that gusts otherwise.
 */
export const heldBack: Family = (chance) => {
  const height = chance.oneOf([3.5, 5.5, 8.5])
  const few = chance.between(0, 1) < 0.4
  const count = few ? 3 : Math.floor(chance.between(8, 15))
  const openings = openingsOf(
    Math.exp(chance.between(Math.log(80), Math.log(4000))),
    Array.from({ length: count }, () => {
      const where = chance.between(0, 1)
      const inRoof = where > 0.85
      return {
        weight: few ? chance.between(0.5, 1) : -Math.log(chance.between(0.001, 1)),
        exponent:
          chance.between(0, 1) < 0.45 ? 0.5 + Math.abs(chance.error(0.03)) : chance.between(0.6, 0.75),
        height_m: inRoof ? height : (where < 0.4 ? 0.04 : where < 0.75 ? 0.93 : 0.5) * height,
        ...(!inRoof && { bearing: chance.oneOf([0, 0, 1, 2, 2, 3]) * quarter }),
      }
    }),
  )
  const table = chance.oneOf(sectorTables)
  return {
    openings,
    height_m: height,
    surfacePressure: (angle) => (angle === undefined ? table.roof : bySector(table.walls, angle)),
    gusts: {
      gust: 0.28,
      gust_s: 15,
      drift: 0.09,
      drift_s: 300,
      turn_rad: 0.3,
      turn_s: 40,
    },
    hoseCoefficient: chance.between(-0.08, 0.08),
  }
}

/** Every 45° from straight on; invented, of the order of tables for low-rise houses: exposed, semi-sheltered, sheltered. */
const sectorTables = [
  { walls: [0.5, 0.25, -0.5, -0.8, -0.7, -0.8, -0.5, 0.25], roof: -0.65 },
  { walls: [0.25, 0.06, -0.35, -0.6, -0.5, -0.6, -0.35, 0.06], roof: -0.5 },
  { walls: [0.06, -0.12, -0.2, -0.38, -0.3, -0.38, -0.2, -0.12], roof: -0.42 },
] as const

function bySector(walls: readonly number[], angle: number): number {
  const turn = ((angle / (2 * Math.PI)) % 1) + 1
  const place = (turn % 1) * walls.length
  const sector = Math.floor(place)
  const [from, to] = [walls[sector % walls.length], walls[(sector + 1) % walls.length]]
  return (from ?? 0) + ((to ?? 0) - (from ?? 0)) * (place - sector)
}
