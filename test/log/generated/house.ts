import type { Random } from './random.js'
import { flowAtDevice, moistAirDensity, platePressure } from './truth/air.js'

export type Direction = 'depressurisation' | 'pressurisation'

/** An opening of the flow device that must be changed as the flow falls: q = coefficient · Δp_d^exponent at 1.2041 kg/m³. */
export interface Plate {
  label: string
  coefficient: number
  exponent: number
}

export const PLATES: readonly Plate[] = [
  { label: 'A', coefficient: 212.4, exponent: 0.511 },
  { label: 'B', coefficient: 68.9, exponent: 0.516 },
  { label: 'C', coefficient: 21.7, exponent: 0.508 },
]

export interface House {
  volume_m3: number
  envelopeArea_m2: number
  floorArea_m2: number
  height_m: number
  altitude_m: number
  indoor_C: number
  outdoor_C: number
  barometer_Pa: number
  zeroFlow_Pa: number
  runs: readonly Run[]
}

/** What the instruments showed, before anyone rounds it. */
export interface Run {
  direction: Direction
  /** Every zero-flow value, the mean is what many log. */
  before_Pa: readonly number[]
  after_Pa: readonly number[]
  readings: readonly Shown[]
}

export interface Shown {
  target_Pa: number
  pressure_Pa: number
  /** As the air in the device had it. */
  flow_m3_h: number
  plate: Plate
  devicePressure_Pa: number
}

export interface HouseWish {
  directions?: readonly Direction[]
  readings?: number
  zeroFlowValues?: number
  /** Air changes at 50 Pa; otherwise drawn. */
  n50?: number
  volume_m3?: number
  /** Relative noise of a reading, 0.005 to 0.02; otherwise drawn. */
  noise?: number
  highest_Pa?: number
  zeroFlow_Pa?: number
}

/** An invented house with its test: exact power-law leakage, exact densities, then wind and instruments. */
export function inventHouse(random: Random, wish: HouseWish = {}): House {
  const volume_m3 = wish.volume_m3 ?? random.between(140, 720)
  const indoor_C = random.between(17.5, 22.5)
  const outdoor_C = random.between(-2, 15)
  const barometer_Pa = random.between(98200, 102600)
  const zeroFlow_Pa = wish.zeroFlow_Pa ?? random.between(-2.4, 1.2)
  const n50 = wish.n50 ?? random.pick([0.38, 0.55, 0.72, 0.95, 1.4, 2.6, 3.8]) * random.between(0.95, 1.05)
  const directions = wish.directions ?? ['depressurisation', 'pressurisation']
  const house = {
    volume_m3,
    envelopeArea_m2: 4.9 * volume_m3 ** 0.72,
    floorArea_m2: volume_m3 / random.between(2.4, 2.7),
    height_m: random.between(4.8, 8.5),
    altitude_m: random.whole(20, 420),
    indoor_C,
    outdoor_C,
    barometer_Pa,
    zeroFlow_Pa,
  }
  const inside = moistAirDensity(indoor_C, barometer_Pa)
  const outside = moistAirDensity(outdoor_C, barometer_Pa)
  const noise = wish.noise ?? random.between(0.005, 0.012)
  const runs = directions.map((direction): Run => {
    const exponent = random.between(0.6, 0.7)
    const coefficient = (n50 * volume_m3 * (direction === 'pressurisation' ? 1.06 : 0.96)) / 50 ** exponent
    const shown = (induced_Pa: number, target_Pa: number): Shown => {
      const sign = direction === 'pressurisation' ? 1 : -1
      const envelopeFlow = coefficient * induced_Pa ** exponent * (1 + noise * 0.5 * random.normal())
      const flow_m3_h = flowAtDevice(envelopeFlow, direction, inside, outside)
      const plate = PLATES.find((one) => flow_m3_h > 3.2 * one.coefficient) ?? PLATES[2]
      if (!plate) throw new Error('no plate')
      const density = direction === 'pressurisation' ? outside : inside
      return {
        target_Pa: sign * target_Pa,
        pressure_Pa: sign * induced_Pa * (1 + noise * 0.5 * random.normal()) + zeroFlow_Pa,
        flow_m3_h,
        plate,
        devicePressure_Pa: platePressure(flow_m3_h, plate, density),
      }
    }
    const count = wish.readings ?? random.whole(7, 10)
    const highest = wish.highest_Pa ?? random.between(58, 68)
    return {
      direction,
      before_Pa: zeroFlow(random, zeroFlow_Pa, wish.zeroFlowValues ?? 1),
      after_Pa: zeroFlow(random, zeroFlow_Pa + 0.3 * random.normal(), wish.zeroFlowValues ?? 1),
      readings: Array.from({ length: count }, (_, index) => {
        const target = highest - (index * (highest - 20)) / (count - 1)
        return shown(target + 0.7 * random.normal(), Math.round(target))
      }),
    }
  })
  return { ...house, runs }
}

function zeroFlow(random: Random, mean_Pa: number, count: number): number[] {
  return Array.from({ length: count }, () => mean_Pa + (count > 1 ? 0.5 : 0.15) * random.normal())
}
