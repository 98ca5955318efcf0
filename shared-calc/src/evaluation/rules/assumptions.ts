import { constantValue } from '../../catalogue/constants.js'
import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'
import { ASSUMED_HUMIDITY } from '../work/air.js'
import { loggedSign } from '../work/work-readings.js'
import type { Rule } from './rule.js'

/** Humidity taken as 50 % where it was not logged. */
export const assumedHumidity: Rule = ({ record }) => {
  const missing = (['indoorRelativeHumidity', 'outdoorRelativeHumidity'] as const).filter(
    (field) => record.conditions[field] === undefined,
  )
  if (missing.length === 0) return []
  return [
    {
      rule: 'assumed-humidity',
      severity: 'note',
      message: `relative humidity ${missing.length === 2 ? 'was' : missing[0]?.startsWith('indoor') ? 'indoors was' : 'outdoors was'} not logged: ${ASSUMED_HUMIDITY * 100} % is assumed (it changes the density by less than 1 %)`,
      ...citing(practiceSource),
      value: ASSUMED_HUMIDITY,
      where: missing.map((field) => `conditions.${field}`),
      remedy: 'log the humidity, or accept the assumption',
    },
  ]
}

/** Barometric pressure taken from the altitude, or as standard, where no barometer was read. */
export const assumedPressure: Rule = ({ record, test }) => {
  if (record.conditions.barometricPressure_Pa !== undefined) return []
  const altitude = record.building.altitude_m
  const value = test.calculation.find('air.pressure')?.value('p_h') ?? constantValue('p_0')
  return [
    {
      rule: 'assumed-pressure',
      severity: 'caution',
      message:
        altitude === undefined
          ? `barometric pressure was not logged, nor the altitude: ${plain(value, 0)} Pa is assumed`
          : `barometric pressure was not logged: ${plain(value, 0)} Pa is taken for ${plain(altitude, 0)} m above sea level`,
      ...citing({ text: 'US Standard Atmosphere 1976', seen: 'read' }),
      value,
      where:
        altitude === undefined
          ? ['conditions.barometricPressure_Pa', 'building.altitude_m']
          : ['conditions.barometricPressure_Pa'],
      remedy: 'log the barometric pressure at the site (station pressure, not reduced to sea level)',
    },
  ]
}

/** Reference density of the device taken as standard where its certificate's value was not given. */
export const assumedReferenceDensity: Rule = ({ record, test }) => {
  if (record.flowDevice?.referenceDensity_kg_m3 !== undefined || !test.runs.some((run) => run.device))
    return []
  const value = constantValue('rho_0')
  return [
    {
      rule: 'assumed-reference-density',
      severity: 'note',
      message: `reference density of the flow device was not given: ${value} kg/m³ is assumed`,
      ...citing(practiceSource),
      value,
      where: ['flowDevice.referenceDensity_kg_m3'],
      remedy: 'take the density from the calibration certificate',
    },
  ]
}

/** Pressures logged with the sign opposite to the direction: read as the same convention throughout the run. */
export const signConvention: Rule = ({ record }) =>
  record.runs.flatMap((run, i) => {
    const expected = run.direction === 'depressurisation' ? -1 : 1
    if (loggedSign(run) === expected) return []
    const zeroFlow = [...(run.zeroFlowBefore_Pa ?? []), ...(run.zeroFlowAfter_Pa ?? [])].some(
      (value) => value !== 0,
    )
    return [
      {
        rule: 'sign-convention',
        severity: 'note',
        message: `${run.direction} was logged with ${expected < 0 ? 'positive' : 'negative'} pressures; the zero-flow pressures are read with the same convention`,
        ...citing(practiceSource),
        where: [
          `runs[${i}].readings`,
          ...(zeroFlow ? [`runs[${i}].zeroFlowBefore_Pa`, `runs[${i}].zeroFlowAfter_Pa`] : []),
        ],
        remedy: zeroFlow
          ? 'make sure that readings and zero-flow pressures were logged with the same sign convention'
          : 'nothing to do: the direction decides',
      } satisfies Finding,
    ]
  })
