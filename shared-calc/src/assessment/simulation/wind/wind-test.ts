import type { TestRecord } from '../../../contract/record/index.js'
import type { Random } from '../random.js'
import { Gusts, type Wind } from './gusts.js'
import { drawHouse, type WindHouse } from './house.js'
import { insidePressure, outsidePressures } from './inside-pressure.js'

/** A simulated test with the truth it should have found. */
export interface WindTest {
  readonly record: TestRecord
  readonly truth: { readonly q50: number; readonly n50: number; readonly ela4: number }
}

/** Standard uncertainties that the simulated instruments have and their certificates state. */
export const certificates = {
  flowCalibration_relative: 0.015,
  flowReading_relative: 0.005,
  gaugeSpan_relative: 0.005,
  pressureReading_Pa: 0.1,
  indoorTemperature_K: 0.3,
  outdoorTemperature_K: 0.5,
  barometricPressure_Pa: 100,
  relativeHumidity: 0.05,
  volume_relative: 0.02,
} as const

const REFERENCE_DENSITY = 1.2041
const stations_Pa = [60, 54, 48, 42, 36, 30, 25, 20, 16, 12]
const AVERAGING_s = 20
const BETWEEN_STATIONS_s = 15

interface Day {
  readonly house: WindHouse
  readonly random: Random
  readonly gusts: Gusts
  readonly densities: { readonly indoor_kg_m3: number; readonly outdoor_kg_m3: number }
  /** Pressure coefficient at the outdoor end of the gauge's hose, put where the wind is little felt. */
  readonly hoseCoefficient: number
  readonly flowError: number
  readonly spanError: number
}

/** Draws a house, a day and a tester's errors, and runs a test of both directions through gusts. */
export function drawWindTest(windSpeed_m_s: number, random: Random): WindTest {
  const house = drawHouse(random)
  const { normal, uniform } = random
  const [indoor, outdoor, pressure] = [18 + 4 * uniform(), -2 + 22 * uniform(), 99_000 + 3000 * uniform()]
  const day: Day = {
    house,
    random,
    gusts: new Gusts(windSpeed_m_s, random),
    densities: { indoor_kg_m3: dryDensity(indoor, pressure), outdoor_kg_m3: dryDensity(outdoor, pressure) },
    hoseCoefficient: 0.05 * normal(),
    flowError: Math.exp(certificates.flowCalibration_relative * normal()),
    spanError: 1 + certificates.gaugeSpan_relative * normal(),
  }
  const volume = 250 + 400 * uniform()
  const { leakageCoefficient: coefficient, exponent } = house
  const rate = (dp: number) => coefficient * dp ** exponent
  const record: TestRecord = {
    format: 'draughtbook/record@2',
    building: {
      name: 'simulated house',
      volume_m3: volume * (1 + certificates.volume_relative * normal()),
      volumeBasis: 'net',
      height_m: house.height_m,
    },
    test: { date: '2026-10-14', method: 'iso-9972:2015' },
    conditions: {
      indoorTemperature_C: indoor + certificates.indoorTemperature_K * normal(),
      outdoorTemperature_C: outdoor + certificates.outdoorTemperature_K * normal(),
      barometricPressure_Pa: pressure + certificates.barometricPressure_Pa * normal(),
      indoorRelativeHumidity: 0,
      outdoorRelativeHumidity: 0,
      windSpeed_m_s: Math.max(0, windSpeed_m_s * (1 + 0.1 * normal())),
      windAt: 'ground',
    },
    runs: [drawRun(day, 'depressurisation'), drawRun(day, 'pressurisation')],
    uncertainty: { ...certificates },
  }
  return {
    record,
    truth: {
      q50: rate(50),
      n50: rate(50) / volume,
      ela4: (rate(4) / 3600) * Math.sqrt(REFERENCE_DENSITY / (2 * 4)) * 1e4,
    },
  }
}

/** Density of dry air, kg/m³, by the ideal-gas law. */
const dryDensity = (temperature_C: number, pressure_Pa: number): number =>
  pressure_Pa / (287.055 * (temperature_C + 273.15))

function drawRun(day: Day, direction: 'depressurisation' | 'pressurisation'): TestRecord['runs'][number] {
  const { house, random, densities } = day
  const side = direction === 'depressurisation' ? -1 : 1
  const { indoor_kg_m3: indoor, outdoor_kg_m3: outdoor } = densities
  const [inDevice, inLeaks] = side < 0 ? [indoor, outdoor] : [outdoor, indoor]
  // The still-air curve at reference air, carried to the air that goes through the leaks this day.
  const coefficient = house.leakageCoefficient * (REFERENCE_DENSITY / inLeaks) ** (1 - house.exponent)
  const zero = () => Array.from({ length: 10 }, () => gaugeMean(day, coefficient, 0, 3))
  const zeroFlowBefore_Pa = zero()
  const readings = stations_Pa.map((station) => {
    const flow = coefficient * station ** house.exponent
    day.gusts.after(BETWEEN_STATIONS_s)
    const pressure_Pa = gaugeMean(day, coefficient, side * flow, AVERAGING_s)
    const indicated = (flow * inLeaks * day.flowError) / inDevice
    return { pressure_Pa, flow_m3_h: indicated * (1 + certificates.flowReading_relative * random.normal()) }
  })
  return { direction, averagingTime_s: AVERAGING_s, zeroFlowBefore_Pa, readings, zeroFlowAfter_Pa: zero() }
}

/** What the gauge shows as the mean over some seconds, sampled each second. */
function gaugeMean(day: Day, coefficient: number, flow: number, seconds: number): number {
  const { house, gusts, densities, random } = day
  let sum = 0
  let inside = flow === 0 ? 0 : Math.sign(flow) * 30
  for (let second = 0; second < seconds; second += 1) {
    const wind: Wind = gusts.after(1)
    const outside = outsidePressures(house, wind, densities)
    inside = insidePressure(house, outside, coefficient, flow, inside)
    sum += inside - day.hoseCoefficient * 0.5 * densities.outdoor_kg_m3 * wind.speed_m_s ** 2
  }
  return (
    (sum / seconds) * day.spanError +
    certificates.pressureReading_Pa * random.normal() * Math.sqrt(1 / seconds)
  )
}
