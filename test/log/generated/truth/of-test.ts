import { type Direction, PLATES } from '../house.js'
import type { Recipe } from '../recipe.js'
import { meant } from '../units.js'
import type { WrittenTest } from '../written.js'
import { moistAirDensity, plateFlow } from './air.js'
import { type FittedRun, fitRun } from './fit.js'

export interface TestTruth {
  name: string
  volume_m3: number
  n50_1_h: number
  q50_m3_h: number
  runs: readonly (FittedRun & { readonly zeroFlowValues: readonly [before: number, after: number] })[]
  indoor_C: number
  outdoor_C: number
  barometer_Pa: number
  date: string
}

const STANDARD_BAROMETER_Pa = 101325
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

/** What a careful colleague with a pocket calculator gets from the figures written down. */
export function truthOfTest({ name, fields, date, runs }: WrittenTest, recipe: Recipe): TestTruth {
  const { units, induced, noMinus, missing, table } = recipe
  const air = {
    indoor_C: meant(fields.indoor, units.temperature),
    outdoor_C: meant(fields.outdoor, units.temperature),
    barometer_Pa: missing.includes('barometer')
      ? STANDARD_BAROMETER_Pa
      : meant(fields.barometer, units.barometer),
  }
  const fitted = runs.map(({ direction, before, after, readings }) => {
    const density = moistAirDensity(
      direction === 'pressurisation' ? air.outdoor_C : air.indoor_C,
      air.barometer_Pa,
    )
    const fit = fitRun(
      {
        direction,
        induced,
        zeroFlow_Pa: meant((mean(before) + mean(after)) / 2, units.pressure),
        readings: readings.map(({ pressure, flow, device, plate }) => ({
          pressure_Pa: meant(signed(pressure, direction, noMinus), units.pressure),
          flow_m3_h:
            table.includes('flow') || table.includes('fan1')
              ? meant(flow, units.flow)
              : plateFlow(meant(device, units.pressure), plateOf(plate), density),
        })),
      },
      air,
    )
    return { ...fit, zeroFlowValues: [before.length, after.length] as const }
  })
  const q50 = mean(fitted.map(({ q50_m3_h }) => q50_m3_h))
  const volume_m3 = meant(fields.volume, units.volume)
  return {
    name,
    volume_m3,
    n50_1_h: q50 / volume_m3,
    q50_m3_h: q50,
    runs: fitted,
    ...air,
    date: [date.year, date.month, date.day].map((part) => String(part).padStart(2, '0')).join('-'),
  }
}

function signed(pressure: number, direction: Direction, noMinus: boolean): number {
  return noMinus && direction === 'depressurisation' ? -pressure : pressure
}

function plateOf(label: string) {
  const plate = PLATES.find((one) => one.label === label)
  if (!plate) throw new Error(`no plate ${label}`)
  return plate
}
