import { constantValue } from '../../catalogue/constants.js'
import type { Building, Forecast } from '../../contract/record/index.js'
import { assumed, type BlockOf, type Calculation, fromRecord, type Given } from '../../engine/index.js'
import { ASSUMED_HUMIDITY } from '../../evaluation/work/air.js'
import { moistAir, standardAtmosphere } from '../../formulas/air.js'

/** Densities to expect on the day; both at reference density where a temperature is not forecast. */
export interface ExpectedAir {
  readonly indoor: Given
  readonly outdoor: Given
  /** Present where both temperatures are forecast. */
  readonly blocks?: { readonly indoor: BlockOf<typeof moistAir>; readonly outdoor: BlockOf<typeof moistAir> }
}

/** Works out the air from the forecast. Rule `assumed-densities` says so where it cannot. */
export function workExpectedAir(
  calculation: Calculation,
  building: Building,
  forecast: Forecast | undefined,
): ExpectedAir {
  const { indoorTemperature_C: inside, outdoorTemperature_C: outside } = forecast ?? {}
  if (inside === undefined || outside === undefined) {
    const reference = assumed(constantValue('rho_0'), 'assumed-densities')
    return { indoor: reference, outdoor: reference }
  }
  const pressure =
    building.altitude_m === undefined
      ? assumed(constantValue('p_0'), 'assumed-pressure')
      : calculation
          .add('plan.air.pressure', 'Barometric pressure from altitude', standardAtmosphere, {
            h: fromRecord('building.altitude_m', building.altitude_m),
          })
          .ref('p_h')
  const side = (where: 'indoor' | 'outdoor', temperature: number) =>
    calculation.add(
      `plan.air.${where}`,
      `Air ${where === 'indoor' ? 'indoors' : 'outdoors'}, as forecast`,
      moistAir,
      {
        theta: fromRecord(`plan.forecast.${where}Temperature_C`, temperature),
        phi: assumed(ASSUMED_HUMIDITY, 'assumed-humidity'),
        p_bar: pressure,
      },
    )
  const blocks = { indoor: side('indoor', inside), outdoor: side('outdoor', outside) }
  return { indoor: blocks.indoor.ref('rho'), outdoor: blocks.outdoor.ref('rho'), blocks }
}
