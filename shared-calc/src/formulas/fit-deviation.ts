import { chapter, definition } from './chapter.js'

/** How far each reading lies from the fitted curve, as the report lists it. */
export const fitDeviation = chapter({
  title: 'Deviation from the fitted curve',
  inputs: [
    { symbol: 'q_env', name: 'air flow through the envelope', unit: 'm³/h', rows: true },
    { symbol: 'q_fit', name: 'flow on the fitted curve', unit: 'm³/h', rows: true },
  ],
  formulas: [
    {
      symbol: 'd_fit',
      name: 'deviation from the fitted curve',
      unit: '1',
      expression: 'q_env ./ q_fit - 1',
      source: definition('share of the flow on the curve'),
    },
  ],
})
