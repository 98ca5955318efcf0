import type { TestRecord } from '@draughtbook/shared-calc'
import { type Air, AirBalance, type Fan, fanFlow } from './air-balance.js'
import type { Chance } from './chance.js'
import { type Family, type House, trueArea, trueFlow } from './house.js'
import type { Instruments } from './instruments.js'
import { WindAtHouse } from './wind.js'

export interface Weather {
  readonly wind_m_s: number
  /** Still, cold air: stack pressure at its largest. */
  readonly cold?: boolean
}

/** A simulated test of both directions, and what a perfect one would have found. */
export interface SimulatedTest {
  readonly record: TestRecord
  readonly truth: { readonly q50: number; readonly ela4: number }
}

const AVERAGING_s = 20
const BETWEEN_s = 12
const GAS_CONSTANT = 287.055
const DEVICE_EXPONENT = 0.5
const CALIBRATION_AIR_kg_m3 = 1.2

/** Everything of one test day that all its readings share. */
interface Day {
  readonly house: House
  readonly chance: Chance
  readonly air: Air
  readonly balance: AirBalance
  readonly wind: WindAtHouse
  readonly instruments: Instruments
  /** Errors of this device and this gauge. */
  readonly flowFactor: number
  readonly spanFactor: number
  readonly offset_Pa: number
  readonly deviceCoefficient: number
  readonly asPressure: boolean
  readonly stations_Pa: readonly number[]
  readonly fall: number
}

/** Draws a house of a family, a day, a tester's errors, and runs a test of both directions second by second. */
export function simulatedTest(
  family: Family,
  weather: Weather,
  instruments: Instruments,
  chance: Chance,
): SimulatedTest {
  const { between, error } = chance
  const house = family(chance)
  const inside_C = between(18, 23)
  const outside_C = weather.cold ? between(-12, -2) : between(-3, 22)
  const barometer = between(97_000, 103_000)
  const density = (celsius: number) => barometer / (GAS_CONSTANT * (celsius + 273.15))
  const air = { indoor_kg_m3: density(inside_C), outdoor_kg_m3: density(outside_C) }
  const volume = between(200, 900)
  const count = Math.floor(between(7, 11))
  const [top, bottom] = [between(58, 68), between(10, 15)]
  const day: Day = {
    house,
    chance,
    air,
    balance: new AirBalance(house, air),
    wind: new WindAtHouse(weather.wind_m_s, house.gusts, chance),
    instruments,
    flowFactor: Math.exp(error(instruments.flowCalibration)),
    spanFactor: 1 + error(instruments.gaugeSpan),
    offset_Pa: error(instruments.gaugeOffset_Pa),
    deviceCoefficient: trueFlow(house, 60) / 90 ** DEVICE_EXPONENT,
    asPressure: between(0, 1) < 0.5,
    stations_Pa: Array.from({ length: count }, (_, i) => top - ((top - bottom) * i) / (count - 1)),
    fall: between(0.2, 0.8),
  }
  return {
    record: {
      format: 'draughtbook/record@3',
      building: {
        name: 'simulated house',
        volume_m3: volume * (1 + error(instruments.volume)),
        volumeBasis: 'net',
        height_m: house.height_m,
      },
      test: { date: '2026-10-14', method: 'iso-9972:2015' },
      conditions: {
        indoorTemperature_C: inside_C + error(instruments.temperature_K),
        outdoorTemperature_C: outside_C + error(instruments.temperature_K),
        barometricPressure_Pa: barometer + error(instruments.barometer_Pa),
        indoorRelativeHumidity: 0,
        outdoorRelativeHumidity: 0,
        windSpeed_m_s: Math.max(0, weather.wind_m_s * (1 + error(0.1))),
        windAt: 'ground',
      },
      flowDevice: {
        referenceDensity_kg_m3: CALIBRATION_AIR_kg_m3,
        ranges: [{ label: 'one', coefficient: day.deviceCoefficient, exponent: DEVICE_EXPONENT }],
      },
      runs: [run(day, 'depressurisation'), run(day, 'pressurisation')],
      uncertainty: { ...instruments.told },
    },
    truth: { q50: trueFlow(house, 50), ela4: trueArea(house, 4) },
  }
}

function run(day: Day, direction: 'depressurisation' | 'pressurisation'): TestRecord['runs'][number] {
  const side = direction === 'depressurisation' ? -1 : 1
  const zero = () => Array.from({ length: 10 }, () => gauge(day, 3).pressure)
  day.wind.pass(60)
  const zeroFlowBefore_Pa = zero()
  const readings = day.stations_Pa.map((station) => {
    day.wind.pass(BETWEEN_s)
    return reading(day, side, station)
  })
  day.wind.pass(30)
  return {
    direction,
    flowStatedAt: 'device air',
    averagingTime_s: AVERAGING_s,
    zeroFlowBefore_Pa,
    readings,
    zeroFlowAfter_Pa: zero(),
  }
}

/** Sets the fan for a pressure that in still air would be the station's, and averages what gauge and device show. */
function reading(day: Day, side: 1 | -1, station: number): TestRecord['runs'][number]['readings'][number] {
  const { air, house, chance, instruments, deviceCoefficient } = day
  const [throughDevice, throughLeaks] =
    side > 0 ? [air.outdoor_kg_m3, air.indoor_kg_m3] : [air.indoor_kg_m3, air.outdoor_kg_m3]
  const fan: Fan = {
    side,
    flow_m3_h: (trueFlow(house, station) * throughLeaks) / throughDevice,
    pressure_Pa: station,
    fall: day.fall,
  }
  const shown = gauge(day, AVERAGING_s, fan)
  const scatter = 1 + chance.error(instruments.flowReading)
  if (!day.asPressure)
    return { pressure_Pa: shown.pressure, flow_m3_h: shown.flow * day.flowFactor * scatter }
  // q = c·Δp^m·√(ρ of calibration/ρ in the device): the pressure that the device makes of its flow.
  const factor = deviceCoefficient * Math.sqrt(CALIBRATION_AIR_kg_m3 / throughDevice)
  const devicePressure_Pa = ((shown.flow * day.flowFactor * scatter) / factor) ** (1 / DEVICE_EXPONENT)
  return { pressure_Pa: shown.pressure, devicePressure_Pa, range: 'one' }
}

/** Means over some seconds of what gauge (Pa) and device (m³/h of the air in it) stand at. */
function gauge(day: Day, seconds: number, fan?: Fan): { pressure: number; flow: number } {
  const { wind, balance, house, air, chance, instruments } = day
  let [pressure, flow] = [0, 0]
  let inside = fan ? fan.side * fan.pressure_Pa : 0
  // Without wind every second is like the first.
  const samples = wind.speed_m_s === 0 ? 1 : seconds
  for (let second = 0; second < samples; second += 1) {
    wind.pass(1)
    inside = balance.indoor(wind, inside, fan)
    pressure += inside - 0.5 * air.outdoor_kg_m3 * wind.speed_m_s ** 2 * house.hoseCoefficient
    if (fan) flow += fanFlow(fan, inside)
  }
  const noise = chance.error(instruments.pressureReading_Pa * Math.sqrt(fan ? 1 : 1))
  return { pressure: (pressure / samples) * day.spanFactor + day.offset_Pa + noise, flow: flow / samples }
}
