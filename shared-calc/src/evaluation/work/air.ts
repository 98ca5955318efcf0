import { constantValue } from '../../catalogue/constants.js'
import type { TestRecord } from '../../contract/record/index.js'
import { assumed, type BlockOf, type Calculation, fromRecord, type Given } from '../../engine/index.js'
import { moistAir, standardAtmosphere } from '../../formulas/air.js'

/** Relative humidity taken where none was logged; rule `assumed-humidity` says so. */
export const ASSUMED_HUMIDITY = 0.5

/** The air on both sides of the envelope. */
export interface AirOfTest {
  readonly indoor: BlockOf<typeof moistAir>
  readonly outdoor: BlockOf<typeof moistAir>
}

/** Densities of the air indoors and outdoors. What was not logged is assumed, and a finding names it. */
export function workAir(calculation: Calculation, record: TestRecord): AirOfTest {
  const { conditions } = record
  const pressure = barometer(calculation, record)
  const side = (where: 'indoor' | 'outdoor') => {
    const humidity = conditions[`${where}RelativeHumidity`]
    return calculation.add(`air.${where}`, `Air ${where === 'indoor' ? 'indoors' : 'outdoors'}`, moistAir, {
      theta: fromRecord(`conditions.${where}Temperature_C`, conditions[`${where}Temperature_C`]),
      phi:
        humidity === undefined
          ? assumed(ASSUMED_HUMIDITY, 'assumed-humidity')
          : fromRecord(`conditions.${where}RelativeHumidity`, humidity),
      p_bar: pressure,
    })
  }
  return { indoor: side('indoor'), outdoor: side('outdoor') }
}

function barometer(calculation: Calculation, { conditions, building }: TestRecord): Given {
  const read = conditions.barometricPressure_Pa
  if (read !== undefined) return fromRecord('conditions.barometricPressure_Pa', read)
  const altitude = building.altitude_m
  if (altitude === undefined) return assumed(constantValue('p_0'), 'assumed-pressure')
  return calculation
    .add('air.pressure', 'Barometric pressure from altitude', standardAtmosphere, {
      h: fromRecord('building.altitude_m', altitude),
    })
    .ref('p_h')
}
