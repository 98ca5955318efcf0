import { constantValue } from '../../catalogue/constants.js'
import { finding } from '../../catalogue/findings/finding.js'
import type { Finding } from '../../contract/record/index.js'
import { exceeds } from '../../engine/index.js'
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
  const { windSpeed_m_s: speed, windAt: at, beaufort: force } = forecast ?? {}
  const where = ['plan.forecast.windSpeed_m_s']
  const findings: Finding[] = []
  if (ground && speed === undefined && force === undefined)
    findings.push(
      finding('wind/forecast-missing', {
        where: [...where, 'plan.forecast.beaufort'],
        source: ground.source,
      }),
    )
  if (ground && speed !== undefined && at === undefined)
    findings.push(finding('wind/forecast-place', { where: ['plan.forecast.windAt'] }))
  const asked = at === 'meteorological' ? meteorological : ground
  if (asked && speed !== undefined && exceeds(speed, asked.value)) {
    const { value: limit, source } = asked
    findings.push(
      finding('wind/forecast-speed', { where, source, value: speed, limit }, { speed, at, limit }),
    )
  }
  if (beaufort && force !== undefined && exceeds(force, beaufort.value))
    findings.push(
      finding(
        'wind/forecast-force',
        {
          where: ['plan.forecast.beaufort'],
          source: beaufort.source,
          value: force,
          limit: beaufort.value,
        },
        { force, limit: beaufort.value },
      ),
    )
  return findings
}

function temperatures({ building, plan }: PlanRequest, { method, stackMeasure }: WorkedPlan): Finding[] {
  const { heightTemperature_mK: asked } = method.limits
  if (!asked) return []
  const { value: limit, source } = asked
  const indoor = 'plan.forecast.indoorTemperature_C'
  const outdoor = 'plan.forecast.outdoorTemperature_C'
  if (!stackMeasure) {
    const height = building.height_m === undefined
    const unknown = [
      ...(plan.forecast?.indoorTemperature_C === undefined ? [indoor] : []),
      ...(plan.forecast?.outdoorTemperature_C === undefined ? [outdoor] : []),
    ]
    const missing = height ? (unknown.length > 0 ? 'both' : 'height') : 'temperatures'
    const where = [...(height ? ['building.height_m'] : []), ...unknown]
    return [finding('temperature-height/forecast-missing', { where, source, limit }, { missing, limit })]
  }
  const value = stackMeasure.value('h_T')
  if (value <= limit) return []
  const where = ['building.height_m', indoor, outdoor]
  return [finding('temperature-height/forecast', { where, source, value, limit }, { value, limit })]
}

/** Stack pressure alone may push the zero-flow pressure at the foot past the method's limit. */
function stack({ method, stack: block }: WorkedPlan): Finding[] {
  if (!block) return []
  const pressure = block.value('dp_foot')
  const { value: limit, source } = method.limits.zeroFlow_Pa
  if (Math.abs(pressure) <= limit) return []
  const where = ['building.height_m', 'plan.forecast']
  return [finding('stack-pressure', { where, source, value: pressure, limit }, { pressure, limit })]
}

function assumed({ building, plan }: PlanRequest, { air }: WorkedPlan): Finding[] {
  const density_kg_m3 = constantValue('rho_0')
  const unstated = (plan.devices ?? []).flatMap((device, i) =>
    device.referenceDensity_kg_m3 === undefined &&
    device.ranges?.some((range) => range.coefficient !== undefined)
      ? [`plan.devices[${i}].referenceDensity_kg_m3`]
      : [],
  )
  return [
    ...(air.blocks ? assumedAir(building.altitude_m) : assumedDensities(density_kg_m3)),
    ...(unstated.length === 0
      ? []
      : [finding('assumed-reference-density', { where: unstated, value: density_kg_m3 }, { density_kg_m3 })]),
  ]
}

const assumedDensities = (density_kg_m3: number): Finding[] => [
  finding(
    'assumed-densities',
    {
      where: ['plan.forecast.indoorTemperature_C', 'plan.forecast.outdoorTemperature_C'],
      value: density_kg_m3,
    },
    { density_kg_m3 },
  ),
]

function assumedAir(altitude_m: number | undefined): Finding[] {
  const pressure_Pa = constantValue('p_0')
  return [
    finding(
      'assumed-humidity/plan',
      { where: ['plan.forecast'], value: ASSUMED_HUMIDITY },
      { assumed: ASSUMED_HUMIDITY },
    ),
    ...(altitude_m === undefined
      ? [
          finding(
            'assumed-pressure/plan',
            { where: ['building.altitude_m'], value: pressure_Pa },
            { pressure_Pa },
          ),
        ]
      : []),
  ]
}
