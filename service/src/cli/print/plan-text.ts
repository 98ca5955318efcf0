import {
  dayInWords,
  methodById,
  type PlanRequest,
  type PlanResult,
  withMinus,
} from '@draughtbook/shared-calc'
import { findingsText } from './findings-text.js'

/** A plan in plain words: target, what to set and expect, devices, weather, findings. */
export function planText(request: PlanRequest, plan: PlanResult): string {
  const { target, allowedLeakage, runs, devices, chosenDevice, stackPressure_Pa, lowestPressure_Pa } = plan
  return [
    [request.building.name, plan.day && dayInWords(plan.day), methodById(plan.method).title]
      .filter(Boolean)
      .join(' · '),
    '',
    target && allowedLeakage
      ? `Target           ${target.label}: at most ${allowedLeakage.flow_m3_h.toFixed(1)} m³/h at ${allowedLeakage.referencePressure_Pa} Pa`
      : 'Target           none',
    ...(lowestPressure_Pa === undefined ? [] : [`Lowest pressure  ${lowestPressure_Pa.toFixed(1)} Pa`]),
    ...(chosenDevice ? [`Flow device      ${chosenDevice}`] : []),
    ...(stackPressure_Pa === undefined ? [] : [`Stack pressure   ${stackPressure_Pa.toFixed(1)} Pa`]),
    ...runs.flatMap(({ direction, readings }) => [
      '',
      `${direction}: flows in m³/h for three air flow exponents`,
      '  pressure  gauge shows     n 0.55   0.65   0.75  range',
      ...readings.map(({ pressureDifference_Pa, gaugePressure_Pa, expectedFlows_m3_h, ranges, proposed }) =>
        [
          `${pressureDifference_Pa.toFixed(1)} Pa`.padStart(10),
          withMinus(`${gaugePressure_Pa.toFixed(1)} Pa`).padStart(13),
          ...expectedFlows_m3_h.map(({ flow }, i) => flow.toFixed(0).padStart(i === 0 ? 11 : 7)),
          `  ${proposed ? ranges.join(' or ') : 'out of reach: do not set'}`,
        ].join(''),
      ),
    ]),
    '',
    ...devices.flatMap(({ name, inWords }) => [name, ...inWords.map((words) => `  ${words}`)]),
    '',
    findingsText(plan.findings, request),
  ].join('\n')
}
