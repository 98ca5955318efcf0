import { constantValue } from '../../catalogue/constants.js'
import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'
import { ASSUMED_HUMIDITY } from '../../evaluation/work/air.js'
import type { PlanRequest } from './request.js'
import type { WorkedPlan } from './work-plan.js'

/** Whether the weather forecast lets the method be followed, and what was assumed of the air. */
export function weatherFindings(request: PlanRequest, worked: WorkedPlan): Finding[] {
  return [
    ...wind(request, worked),
    ...temperatures(request, worked),
    ...stack(worked),
    ...assumed(request, worked),
  ]
}

function wind({ plan: { forecast } }: PlanRequest, { method }: WorkedPlan): Finding[] {
  const { windGround_m_s: ground, windMeteorological_m_s: meteorological, beaufort } = method.limits
  const { windSpeed_m_s: speed, windAt, beaufort: force } = forecast ?? {}
  const findings: Finding[] = []
  const remedy = 'choose a calmer day, or the calmest hour of the day'
  if (speed === undefined && force === undefined)
    findings.push({
      rule: 'wind',
      severity: 'note',
      message: 'no wind is forecast in the plan: its limit cannot be judged',
      ...citing(ground.source),
      where: ['plan.forecast.windSpeed_m_s', 'plan.forecast.beaufort'],
      remedy: 'enter the forecast wind speed and where it holds, or the Beaufort force',
    })
  if (speed !== undefined && windAt === undefined)
    findings.push({
      rule: 'wind',
      severity: 'note',
      message: 'where the forecast wind speed holds is not stated: it is judged as wind near the ground',
      ...citing(practiceSource),
      where: ['plan.forecast.windAt'],
      remedy: 'forecasts usually give the meteorological wind; state it',
    })
  const limit = windAt === 'meteorological' ? meteorological : ground
  if (speed !== undefined && speed > limit.value)
    findings.push({
      rule: 'wind',
      severity: 'caution',
      message: `forecast wind ${plain(speed, 1)} m/s ${windAt === 'meteorological' ? 'at the meteorological station' : 'near the ground'}; the method expects at most ${limit.value} m/s`,
      ...citing(limit.source),
      value: speed,
      limit: limit.value,
      where: ['plan.forecast.windSpeed_m_s'],
      remedy,
    })
  if (force !== undefined && force > beaufort.value)
    findings.push({
      rule: 'wind',
      severity: 'caution',
      message: `forecast wind force Beaufort ${force}; the method expects at most ${beaufort.value}`,
      ...citing(beaufort.source),
      value: force,
      limit: beaufort.value,
      where: ['plan.forecast.beaufort'],
      remedy,
    })
  return findings
}

function temperatures({ building, plan }: PlanRequest, { method, stackMeasure }: WorkedPlan): Finding[] {
  const { value: limit, source } = method.limits.heightTemperature_mK
  const paths = ['plan.forecast.indoorTemperature_C', 'plan.forecast.outdoorTemperature_C']
  if (!stackMeasure)
    return [
      {
        rule: 'temperature-height',
        severity: 'note',
        message:
          'building height or forecast temperatures are missing: height times temperature difference and stack pressure cannot be judged',
        ...citing(source),
        limit,
        where: [
          ...(building.height_m === undefined ? ['building.height_m'] : []),
          ...(plan.forecast?.indoorTemperature_C === undefined ? paths.slice(0, 1) : []),
          ...(plan.forecast?.outdoorTemperature_C === undefined ? paths.slice(1) : []),
        ],
        remedy: 'enter them',
      },
    ]
  const value = stackMeasure.value('h_T')
  if (value <= limit) return []
  return [
    {
      rule: 'temperature-height',
      severity: 'caution',
      message: `height times temperature difference will be ${plain(value, 0)} m·K; above ${limit} m·K a steady zero-flow pressure is unlikely`,
      ...citing(source),
      value,
      limit,
      where: ['building.height_m', ...paths],
      remedy: 'choose an hour when the temperatures are closer together',
    },
  ]
}

/** Stack pressure alone may push the zero-flow pressure at the foot past the method's limit. */
function stack({ method, stack: block }: WorkedPlan): Finding[] {
  if (!block) return []
  const value = block.value('dp_foot')
  const { value: limit, source } = method.limits.zeroFlow_Pa
  if (Math.abs(value) <= limit) return []
  return [
    {
      rule: 'stack-pressure',
      severity: 'caution',
      message: `stack pressure alone will put the foot of the building at about ${plain(value, 1)} Pa; the zero-flow pressure must stay within ${limit} Pa`,
      ...citing(source),
      value,
      limit,
      where: ['building.height_m', 'plan.forecast'],
      remedy: 'choose an hour when the temperatures are closer together',
    },
  ]
}

function assumed({ building, plan }: PlanRequest, { air }: WorkedPlan): Finding[] {
  const reference = constantValue('rho_0')
  const findings: Finding[] = []
  if (!air.blocks)
    findings.push({
      rule: 'assumed-densities',
      severity: 'note',
      message: `temperatures are not forecast: air indoors and outdoors is taken at ${reference} kg/m³`,
      ...citing(practiceSource),
      value: reference,
      where: ['plan.forecast.indoorTemperature_C', 'plan.forecast.outdoorTemperature_C'],
      remedy: 'enter the temperatures to expect',
    })
  else {
    findings.push({
      rule: 'assumed-humidity',
      severity: 'note',
      message: `relative humidity is assumed to be ${ASSUMED_HUMIDITY * 100} % (it changes the density by less than 1 %)`,
      ...citing(practiceSource),
      value: ASSUMED_HUMIDITY,
      where: ['plan.forecast'],
      remedy: 'nothing to do for a plan',
    })
    if (building.altitude_m === undefined)
      findings.push({
        rule: 'assumed-pressure',
        severity: 'note',
        message: `the altitude is not known: ${plain(constantValue('p_0'), 0)} Pa is assumed`,
        ...citing({ text: 'US Standard Atmosphere 1976', seen: 'read' }),
        value: constantValue('p_0'),
        where: ['building.altitude_m'],
        remedy: 'enter the altitude of the site',
      })
  }
  const unstated = (plan.devices ?? []).flatMap((device, i) =>
    device.referenceDensity_kg_m3 === undefined &&
    device.ranges?.some((range) => range.coefficient !== undefined)
      ? [`plan.devices[${i}].referenceDensity_kg_m3`]
      : [],
  )
  if (unstated.length > 0)
    findings.push({
      rule: 'assumed-reference-density',
      severity: 'note',
      message: `reference density of a flow device is not given: ${reference} kg/m³ is assumed`,
      ...citing(practiceSource),
      value: reference,
      where: unstated,
      remedy: 'take the density from the calibration certificate',
    })
  return findings
}
