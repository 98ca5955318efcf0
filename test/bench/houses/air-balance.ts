import { type House, REFERENCE_kg_m3 } from './house.js'

export interface Air {
  readonly indoor_kg_m3: number
  readonly outdoor_kg_m3: number
}

/** A fan whose flow falls as the pressure against it rises. */
export interface Fan {
  /** Blows in (+1) or draws out (−1). */
  readonly side: 1 | -1
  /** Flow of the air that goes through the fan at its working pressure, m³/h. */
  readonly flow_m3_h: number
  readonly pressure_Pa: number
  /** Share of the flow lost for a share of the pressure more. */
  readonly fall: number
}

const GRAVITY = 9.80665
/** Below this the power laws go on as straight lines, which have a slope at zero. */
const STRAIGHT_BELOW_Pa = 0.01

/** Flow of the air that goes through the fan at a pressure across the door, m³/h. */
export const fanFlow = ({ side, flow_m3_h, pressure_Pa, fall }: Fan, door_Pa: number): number =>
  flow_m3_h * Math.max(0, 1 - fall * ((side * door_Pa) / pressure_Pa - 1))

/**
 * Balances the mass of the air: finds the pressure indoors, at the ground, at which what leaks out equals what is blown
 * in. Each opening has its own law, wind pressure and height in the two columns of air.
 */
export class AirBalance {
  private readonly coefficients: { readonly out: number[]; readonly in: number[] }
  private readonly outside: Float64Array

  constructor(
    private readonly house: House,
    private readonly air: Air,
  ) {
    // Through an opening of exponent n, the flow at one pressure goes with density to the power n − 1, the mass with n.
    const massAtOnePascal = (density: number) =>
      house.openings.map(
        ({ coefficient, exponent }) => coefficient * (REFERENCE_kg_m3 / density) ** (1 - exponent) * density,
      )
    this.coefficients = { out: massAtOnePascal(air.indoor_kg_m3), in: massAtOnePascal(air.outdoor_kg_m3) }
    this.outside = new Float64Array(house.openings.length)
  }

  /** Pressure indoors at the ground, against still air outdoors at the ground, Pa. `near` is a guess. */
  indoor(wind: { readonly speed_m_s: number; readonly bearing: number }, near: number, fan?: Fan): number {
    const { house, air, outside } = this
    const dynamic = 0.5 * air.outdoor_kg_m3 * wind.speed_m_s ** 2
    for (const [i, { height_m, bearing }] of house.openings.entries()) {
      const angle = bearing === undefined ? undefined : wind.bearing - bearing
      const stack = (air.indoor_kg_m3 - air.outdoor_kg_m3) * GRAVITY * height_m
      outside[i] = (dynamic === 0 ? 0 : dynamic * house.surfacePressure(angle)) + stack
    }
    let [low, high] = [-1000, 1000]
    let pressure = near
    for (let round = 0; round < 80; round += 1) {
      const [excess, slope] = this.excess(pressure, fan)
      if (excess > 0) high = pressure
      else low = pressure
      const newton = pressure - excess / slope
      const next = newton > low && newton < high ? newton : (low + high) / 2
      if (Math.abs(next - pressure) < 1e-5) return next
      pressure = next
    }
    return pressure
  }

  /** Mass that leaks out less what is blown in, and its slope. */
  private excess(pressure: number, fan: Fan | undefined): [number, number] {
    let excess = 0
    let slope = 0
    const { openings } = this.house
    for (let i = 0; i < openings.length; i += 1) {
      const { exponent } = openings[i] as (typeof openings)[number]
      const across = pressure - (this.outside[i] as number)
      const size = Math.abs(across)
      const mass = (across > 0 ? this.coefficients.out : this.coefficients.in)[i] as number
      if (size < STRAIGHT_BELOW_Pa) {
        const straight = mass * STRAIGHT_BELOW_Pa ** (exponent - 1)
        excess += straight * across
        slope += straight
      } else {
        const flow = mass * size ** exponent
        excess += across > 0 ? flow : -flow
        slope += (exponent * flow) / size
      }
    }
    if (fan) {
      const density = fan.side > 0 ? this.air.outdoor_kg_m3 : this.air.indoor_kg_m3
      excess -= fan.side * density * fanFlow(fan, pressure)
      slope += (density * fan.flow_m3_h * fan.fall) / fan.pressure_Pa
    }
    return [excess, slope]
  }
}
