import type { Direction, House, Run, Shown } from './house.js'
import type { Recipe } from './recipe.js'
import { logged } from './units.js'

/** A test as its log has it: every figure as a person wrote it down, in the log's units. */
export interface WrittenTest {
  name: string
  address: string
  date: { year: number; month: number; day: number }
  fields: {
    volume: number
    envelope: number
    floor: number
    height: number
    indoor: number
    outdoor: number
    barometer: number
  }
  runs: readonly WrittenRunOfLog[]
}

export interface WrittenRunOfLog {
  direction: Direction
  before: readonly number[]
  after: readonly number[]
  readings: readonly WrittenReading[]
}

export interface WrittenReading {
  target: number
  pressure: number
  flow: number
  /** The share of the first of two fans, in the log's unit. */
  fan1: number
  device: number
  plate: string
}

/** What the tester wrote down of what the instruments showed. */
export function writeDown(
  house: House,
  { units, noMinus, induced, table, structure }: Recipe,
  label: Pick<WrittenTest, 'name' | 'address' | 'date'>,
): WrittenTest {
  const zero = { ...units.pressure, digits: Math.max(2, units.pressure.digits) }
  const device = { ...units.pressure, digits: units.pressure.digits }
  const run = ({ direction, before_Pa, after_Pa, readings }: Run): WrittenRunOfLog => {
    const mean = (before_Pa.reduce(sum) / before_Pa.length + after_Pa.reduce(sum) / after_Pa.length) / 2
    const pressure = ({ pressure_Pa }: Shown) => {
      const value = logged(induced ? pressure_Pa - mean : pressure_Pa, units.pressure)
      return noMinus ? Math.abs(value) : value
    }
    const withTotal = table.includes('fan1')
    return {
      direction,
      before: before_Pa.map((value) => logged(value, zero)),
      after: after_Pa.map((value) => logged(value, zero)),
      readings: readings.map((shown) => {
        const fan1 = logged(shown.flow_m3_h * 0.53, units.flow)
        const fan2 = logged(shown.flow_m3_h * 0.47, units.flow)
        const digits = units.flow.digits
        return {
          target: noMinus || induced ? Math.abs(shown.target_Pa) : shown.target_Pa,
          pressure: pressure(shown),
          // A total is the sum of what was written of each fan.
          flow: withTotal ? Number((fan1 + fan2).toFixed(digits)) : logged(shown.flow_m3_h, units.flow),
          fan1,
          device: logged(shown.devicePressure_Pa, device),
          plate: shown.plate.label,
        }
      }),
    }
  }
  const { volume_m3, envelopeArea_m2, floorArea_m2, height_m, indoor_C, outdoor_C, barometer_Pa } = house
  return {
    ...label,
    fields: {
      volume: logged(volume_m3, units.volume),
      envelope: logged(envelopeArea_m2, units.area),
      floor: logged(floorArea_m2, units.area),
      height: logged(height_m, units.length),
      indoor: logged(indoor_C, units.temperature),
      outdoor: logged(outdoor_C, units.temperature),
      barometer: logged(barometer_Pa, units.barometer),
    },
    runs: structure === 'series' ? house.runs.slice(0, 1).map(run) : house.runs.map(run),
  }
}

const sum = (total: number, value: number) => total + value
