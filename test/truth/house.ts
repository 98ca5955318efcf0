import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import psychrolib from 'psychrolib'

psychrolib.SetUnitSystem(psychrolib.SI)

/** Dry air of 20 °C and 101 325 Pa, kg/m³: the reference air of the test standards. */
export const REFERENCE_DENSITY = 1.2041

/** Sutherland's law. Source: Roulet 2008, eq. 4.17. */
const viscosity = (celsius: number) => (1.458e-6 * (celsius + 273.15) ** 1.5) / (celsius + 273.15 + 110.4)
const REFERENCE_VISCOSITY = viscosity(20)

/** Hydrostatic equation with a lapse of 6.5 K/km from 288.15 K. Source: US Standard Atmosphere 1976. */
const barometer = (altitude_m: number) =>
  101_325 * (1 - (0.0065 * altitude_m) / 288.15) ** ((9.80665 * 0.0289644) / (8.31432 * 0.0065))

export interface Climate {
  readonly indoor_C: number
  readonly outdoor_C: number
  readonly indoorHumidity: number
  readonly outdoorHumidity: number
}

export const climates = {
  'cold winter': { indoor_C: 21, outdoor_C: -10, indoorHumidity: 0.35, outdoorHumidity: 0.8 },
  'mild spring': { indoor_C: 20, outdoor_C: 10, indoorHumidity: 0.5, outdoorHumidity: 0.7 },
  'humid summer': { indoor_C: 25, outdoor_C: 36, indoorHumidity: 0.55, outdoorHumidity: 0.6 },
} as const satisfies Record<string, Climate>

/** How the flow was written down. */
export const ways = ['device air', 'reference air', 'device pressure', 'two devices'] as const
export type Way = (typeof ways)[number]

/** A house whose leaks follow one known law in reference air: C·Δp^n, m³/h. */
export interface House {
  readonly coefficient: number
  readonly exponent: number
  /** Whether the leaks feel the viscosity of the air too, as the law of ASTM E779 has it, or its density only (ISO 9972). */
  readonly viscous: boolean
}

/** Law of the leaks in other air. Source: Roulet 2008, eq. 4.15–4.18; without viscosity: ISO 9972:2015, 6.2. */
function flowThroughLeaks({ coefficient, exponent, viscous }: House, pressure_Pa: number, air: Air): number {
  const density = (REFERENCE_DENSITY / air.density) ** (1 - exponent)
  const friction = viscous ? (REFERENCE_VISCOSITY / viscosity(air.celsius)) ** (2 * exponent - 1) : 1
  return coefficient * pressure_Pa ** exponent * density * friction
}

interface Air {
  readonly celsius: number
  /** Of moist air, by psychrolib (ASHRAE Fundamentals 2017, ch. 1). */
  readonly density: number
}

function air(celsius: number, humidity: number, pressure_Pa: number): Air {
  const ratio = psychrolib.GetHumRatioFromRelHum(celsius, humidity, pressure_Pa)
  return { celsius, density: psychrolib.GetMoistAirDensity(celsius, ratio, pressure_Pa) }
}

/** A device calibrated at another density than the reference, its ranges invented. */
const DEVICE_DENSITY = 1.19
const range = { label: 'large', coefficient: 95, exponent: 0.49 }

/** What the device shows while a flow passes: its mass comes in equal shares of √ρ·√Δp, whatever the air. */
const shownFor = (flow: number, { density }: Air) => flow * Math.sqrt(density / DEVICE_DENSITY)
const devicePressure = (flow: number, through: Air) =>
  (shownFor(flow, through) / range.coefficient) ** (1 / range.exponent)

/** The test of a house: what a faultless tester writes down. */
export function testOf(
  house: House,
  climate: Climate,
  altitude_m: number,
  way: Way,
  method: string,
  stations_Pa: readonly number[],
): TestRecord {
  const pressure_Pa = barometer(altitude_m)
  const indoor = air(climate.indoor_C, climate.indoorHumidity, pressure_Pa)
  const outdoor = air(climate.outdoor_C, climate.outdoorHumidity, pressure_Pa)
  const run = (direction: 'depressurisation' | 'pressurisation') => {
    const out = direction === 'depressurisation'
    const [device, leaks] = out ? [indoor, outdoor] : [outdoor, indoor]
    const zeroFlow_Pa = out ? -1.3 : -0.9
    const readings = stations_Pa.map((station) => {
      // The mass that passes the leaks passes the device.
      const flow = (flowThroughLeaks(house, station, leaks) * leaks.density) / device.density
      return { pressure_Pa: (out ? -station : station) + zeroFlow_Pa, ...writtenDown(flow, device, way) }
    })
    const zero = Array.from({ length: 10 }, () => zeroFlow_Pa)
    return {
      direction,
      averagingTime_s: 30,
      ...(way !== 'device pressure' && {
        flowStatedAt: way === 'device air' ? 'device air' : 'reference air',
      }),
      zeroFlowBefore_Pa: zero,
      zeroFlowAfter_Pa: zero,
      readings,
    }
  }
  return parseRecord({
    format: 'draughtbook/record@3',
    building: {
      name: 'invented house',
      volume_m3: 500,
      volumeBasis: 'net',
      envelopeArea_m2: 450,
      altitude_m,
    },
    test: { date: '2026-10-14', method },
    conditions: {
      indoorTemperature_C: climate.indoor_C,
      outdoorTemperature_C: climate.outdoor_C,
      barometricPressure_Pa: pressure_Pa,
      indoorRelativeHumidity: climate.indoorHumidity,
      outdoorRelativeHumidity: climate.outdoorHumidity,
    },
    flowDevice: { referenceDensity_kg_m3: DEVICE_DENSITY, ranges: [range] },
    runs: [run('depressurisation'), run('pressurisation')],
  })
}

function writtenDown(flow: number, device: Air, way: Way): object {
  if (way === 'device air') return { flow_m3_h: flow }
  if (way === 'reference air') return { flow_m3_h: shownFor(flow, device) }
  const byPressure = (part: number) => ({
    devicePressure_Pa: devicePressure(part, device),
    range: range.label,
  })
  if (way === 'device pressure') return byPressure(flow)
  return { devices: [{ flow_m3_h: shownFor(0.4 * flow, device) }, byPressure(0.6 * flow)] }
}
