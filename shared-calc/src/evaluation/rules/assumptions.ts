import { constantValue } from '../../catalogue/constants.js'
import { finding } from '../../catalogue/findings/finding.js'
import { ASSUMED_HUMIDITY } from '../work/air.js'
import { loggedSign } from '../work/work-readings.js'
import { inEach, type Rule, silent } from './rule.js'

const humidities = ['indoorRelativeHumidity', 'outdoorRelativeHumidity'] as const

/** Humidity taken as 50 % where it was not logged. */
export const assumedHumidity: Rule = ({ record }) => {
  const missing = humidities.filter((field) => record.conditions[field] === undefined)
  if (missing.length === 0) return silent
  const where = missing.map((field) => `conditions.${field}`)
  return [
    finding(
      'assumed-humidity',
      { where, value: ASSUMED_HUMIDITY },
      {
        missing:
          missing.length === 2 ? 'both' : missing[0] === 'indoorRelativeHumidity' ? 'indoors' : 'outdoors',
        assumed: ASSUMED_HUMIDITY,
      },
    ),
  ]
}

/** Barometric pressure taken from the altitude, or as standard, where no barometer was read. */
export const assumedPressure: Rule = ({ record, test }) => {
  if (record.conditions.barometricPressure_Pa !== undefined) return silent
  const altitude_m = record.building.altitude_m
  const pressure_Pa = test.calculation.find('air.pressure')?.value('p_h') ?? constantValue('p_0')
  const where = ['conditions.barometricPressure_Pa']
  if (altitude_m !== undefined)
    return [
      finding('assumed-pressure/from-altitude', { where, value: pressure_Pa }, { pressure_Pa, altitude_m }),
    ]
  return [
    finding(
      'assumed-pressure/sea-level',
      { where: [...where, 'building.altitude_m'], value: pressure_Pa },
      { pressure_Pa },
    ),
  ]
}

/** Reference density of the device taken as standard where its certificate's value was not given. */
export const assumedReferenceDensity: Rule = ({ record, test }) => {
  if (
    record.flowDevice?.referenceDensity_kg_m3 !== undefined ||
    !test.runs.some(({ flows }) => flows.usesReferenceDensity)
  )
    return silent
  const value = constantValue('rho_0')
  const where = ['flowDevice.referenceDensity_kg_m3']
  return [finding('assumed-reference-density', { where, value }, { density_kg_m3: value })]
}

/** Nobody said whether typed flows are of the air in the device or for reference air. */
export const flowStatedAt: Rule = ({ method, test }) => {
  if (test.runs.every(({ flows }) => flows.otherMeaning === undefined)) return silent
  const open = test.runs.flatMap(({ flows: { otherMeaning }, direction, index }) =>
    otherMeaning ? [{ direction, change: otherMeaning.value, where: `runs[${index}].flowStatedAt` }] : [],
  )
  const value = open
    .map(({ change }) => change)
    .reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most))
  const taken = method.takesFlowForReferenceAir === true ? 'reference air' : 'device air'
  return [
    finding(
      'flow-stated-at/not-logged',
      { where: open.map(({ where }) => where), value },
      { taken, changes: open },
    ),
  ]
}

/** Pressures logged with the sign opposite to the direction: read as the same convention throughout the run. */
export const signConvention: Rule = ({ record }) =>
  inEach(record.runs, (run, i) => {
    const { direction } = run
    const expected = direction === 'depressurisation' ? -1 : 1
    if (loggedSign(run) === expected) return silent
    const zeroFlow = [...(run.zeroFlowBefore_Pa ?? []), ...(run.zeroFlowAfter_Pa ?? [])].some(
      (value) => value !== 0,
    )
    const where = [
      `runs[${i}].readings`,
      ...(zeroFlow ? [`runs[${i}].zeroFlowBefore_Pa`, `runs[${i}].zeroFlowAfter_Pa`] : []),
    ]
    return [finding('sign-convention', { where }, { direction, zeroFlow })]
  })
