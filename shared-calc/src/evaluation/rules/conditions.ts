import { finding } from '../../catalogue/findings/finding.js'
import type { Finding } from '../../contract/record/index.js'
import { Calculation, exceeds, fallsBelow, fromRecord } from '../../engine/index.js'
import { standardAtmosphere } from '../../formulas/air.js'
import { type Rule, silent } from './rule.js'

/** Height times temperature difference: the stack pressure stays small. Methods differ in what more of it means. */
export const temperatureHeight: Rule = ({ method, test }) => {
  const { heightTemperature_mK: asked } = method.limits
  if (!asked) return silent
  const { value: limit, source, beyond } = asked
  if (!test.stack)
    return [finding('temperature-height/unknown', { where: ['building.height_m'], source, limit }, { limit })]
  const value = test.stack.value('h_T')
  if (!exceeds(value, limit)) return silent
  const where = ['building.height_m', 'conditions.indoorTemperature_C', 'conditions.outdoorTemperature_C']
  return [
    finding('temperature-height/beyond', { where, source, severity: beyond, value, limit }, { value, limit }),
  ]
}

/** Wind within the method's limits, by speed or by force. */
export const wind: Rule = ({ record, method }) => {
  const { windSpeed_m_s: speed, windAt: at, beaufort: force } = record.conditions
  const { windGround_m_s: ground, windMeteorological_m_s: meteorological, beaufort } = method.limits
  const where = ['conditions.windSpeed_m_s']
  const findings: Finding[] = []
  if (speed === undefined && force === undefined && ground)
    findings.push(
      finding('wind/not-logged', { where: [...where, 'conditions.beaufort'], source: ground.source }),
    )
  if (ground && speed !== undefined && at === undefined)
    findings.push(finding('wind/place-not-logged', { where: ['conditions.windAt'] }))
  const asked = at === 'meteorological' ? meteorological : ground
  if (asked && speed !== undefined && exceeds(speed, asked.value)) {
    const { value: limit, source } = asked
    findings.push(finding('wind/speed', { where, source, value: speed, limit }, { speed, at, limit }))
  }
  if (beaufort && force !== undefined && exceeds(force, beaufort.value))
    findings.push(
      finding(
        'wind/force',
        { where: ['conditions.beaufort'], source: beaufort.source, value: force, limit: beaufort.value },
        { force, limit: beaufort.value },
      ),
    )
  return findings
}

/** The outdoor temperature lies where the method prefers it. */
export const outdoorTemperature: Rule = ({ record, method }) => {
  const { outdoorTemperature_C: preferred } = method.limits
  if (!preferred) return silent
  const { lowest, highest, source } = preferred
  const value = record.conditions.outdoorTemperature_C
  if (!fallsBelow(value, lowest) && !exceeds(value, highest)) return silent
  return [
    finding(
      'outdoor-temperature',
      {
        where: ['conditions.outdoorTemperature_C'],
        source,
        value,
        limit: value < lowest ? lowest : highest,
      },
      { value, lowest, highest },
    ),
  ]
}

/** How far weather moves the barometer from the standard atmosphere, Pa. Common practice, no source. */
const WEATHER_Pa = 5000

/** The barometer stands as it can at the altitude of the site, and not as weather reports reduce it to sea level. */
export const barometerAltitude: Rule = ({ record }) => {
  const { barometricPressure_Pa: value } = record.conditions
  const { altitude_m: altitude } = record.building
  if (value === undefined || altitude === undefined) return silent
  const usual = new Calculation()
    .add('pressure', 'barometric pressure from altitude', standardAtmosphere, {
      h: fromRecord('building.altitude_m', altitude),
    })
    .value('p_h')
  if (!exceeds(Math.abs(value - usual), WEATHER_Pa)) return silent
  return [
    finding(
      'barometer-altitude',
      { where: ['conditions.barometricPressure_Pa', 'building.altitude_m'], value, limit: usual },
      { value, usual, altitude },
    ),
  ]
}
