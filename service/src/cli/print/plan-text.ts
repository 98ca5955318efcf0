import type { PlanRequest, PlanResult } from '@draughtbook/shared-calc'
import { findingsText } from './findings-text.js'

/** A plan in plain words: target, what to set and expect, devices, weather, findings. */
export function planText(request: PlanRequest, plan: PlanResult): string {
  const { target, allowedLeakage, runs, devices, chosenDevice, stackPressure_Pa, lowestPressure_Pa } = plan
  return [
    [request.building.name, plan.day, plan.method].filter(Boolean).join(' · '),
    '',
    target && allowedLeakage
      ? `Target     ${target.label}: at most ${allowedLeakage.flow_m3_h.toFixed(1)} m³/h at ${allowedLeakage.referencePressure_Pa} Pa`
      : 'Target     none',
    ...(lowestPressure_Pa === undefined ? [] : [`Lowest     ${lowestPressure_Pa.toFixed(1)} Pa`]),
    ...(chosenDevice ? [`Device     ${chosenDevice}`] : []),
    ...(stackPressure_Pa === undefined ? [] : [`Stack      ${stackPressure_Pa.toFixed(1)} Pa`]),
    ...runs.flatMap(({ direction, readings }) => [
      '',
      direction,
      '  pressure    gauge   flow at n 0.55   0.65   0.75  range',
      ...readings.map(({ pressureDifference_Pa, gaugePressure_Pa, expectedFlows_m3_h, ranges, proposed }) =>
        [
          `${pressureDifference_Pa.toFixed(1)} Pa`.padStart(10),
          `${gaugePressure_Pa.toFixed(1)}`.padStart(9),
          ...expectedFlows_m3_h.map(({ flow }, i) => flow.toFixed(0).padStart(i === 0 ? 17 : 7)),
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
