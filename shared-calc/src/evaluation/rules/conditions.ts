import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'
import type { Rule } from './rule.js'

/** Height times temperature difference: the stack pressure stays small. Methods differ in what more of it means. */
export const temperatureHeight: Rule = ({ method, test }) => {
  const { value: limit, source, beyond } = method.limits.heightTemperature_mK
  if (!test.stack)
    return [
      {
        rule: 'temperature-height',
        severity: 'note',
        message: 'building height was not logged: height times temperature difference cannot be judged',
        ...citing(source),
        limit,
        where: ['building.height_m'],
        remedy: 'add the height of the building',
      },
    ]
  const value = test.stack.value('h_T')
  if (value <= limit) return []
  return [
    {
      rule: 'temperature-height',
      severity: beyond,
      message: `height times temperature difference is ${plain(value, 0)} m·K; above ${limit} m·K a steady zero-flow pressure is unlikely`,
      ...citing(source),
      value,
      limit,
      where: ['building.height_m', 'conditions.indoorTemperature_C', 'conditions.outdoorTemperature_C'],
      remedy: 'test when the temperatures are closer together',
    },
  ]
}

/** Wind within the method's limits, by speed or by force. */
export const wind: Rule = ({ record, method }) => {
  const { windSpeed_m_s: speed, windAt, beaufort } = record.conditions
  const { windGround_m_s: ground, windMeteorological_m_s: meteorological, beaufort: force } = method.limits
  const findings: Finding[] = []
  const remedy = 'wait for calmer weather, or say in the report how the readings stayed steady'
  if (speed === undefined && beaufort === undefined)
    findings.push({
      rule: 'wind',
      severity: 'caution',
      message: 'wind was not logged: its limit cannot be judged',
      ...citing(ground.source),
      where: ['conditions.windSpeed_m_s', 'conditions.beaufort'],
      remedy: 'log the wind speed and where it was taken, or the Beaufort force',
    })
  if (speed !== undefined && windAt === undefined)
    findings.push({
      rule: 'wind',
      severity: 'note',
      message: 'where the wind speed was taken was not logged: it is judged as wind near the ground',
      ...citing(practiceSource),
      where: ['conditions.windAt'],
      remedy: 'state "ground" or "meteorological"',
    })
  const limit = windAt === 'meteorological' ? meteorological : ground
  if (speed !== undefined && speed > limit.value)
    findings.push({
      rule: 'wind',
      severity: 'caution',
      message: `wind ${plain(speed, 1)} m/s ${windAt === 'meteorological' ? 'at the meteorological station' : 'near the ground'}; at most ${limit.value} m/s is expected`,
      ...citing(limit.source),
      value: speed,
      limit: limit.value,
      where: ['conditions.windSpeed_m_s'],
      remedy,
    })
  if (beaufort !== undefined && beaufort > force.value)
    findings.push({
      rule: 'wind',
      severity: 'caution',
      message: `wind force Beaufort ${beaufort}; at most ${force.value} is expected`,
      ...citing(force.source),
      value: beaufort,
      limit: force.value,
      where: ['conditions.beaufort'],
      remedy,
    })
  return findings
}
