import { customary } from '../catalogue/shown-figure.js'
import type { Source } from '../engine/index.js'
import { weightedLine } from './curve-chapters.js'
import { iso9972Limits, viscosityNote } from './iso-9972.js'
import { type Method, takenOver } from './method.js'

const cgsb: Source = { text: 'CAN/CGSB-149.10-2019', seen: 'memory' }
const areaPressure: Source = { text: 'CAN/CGSB-149.10: leakage area at 10 Pa', seen: 'read' }

export const cgsb14910: Method = {
  id: 'can-cgsb-149.10-2019',
  title: 'CAN/CGSB-149.10-2019',
  volumeBasis: 'overall internal',
  volumeBasisSource: cgsb,
  limits: {
    ...takenOver(iso9972Limits),
    highestPressure_Pa: { value: 50, source: cgsb },
    topPressure_Pa: {
      value: 60,
      slack_Pa: 2,
      source: { text: 'CAN/CGSB-149.10-2019, multi-point: 60 Pa at most', seen: 'read' },
    },
    zeroFlowSamples: { value: 1, source: cgsb },
    lowestPressure_Pa: { value: 15, source: cgsb },
    exponent: { lowest: 0.5, highest: 1, source: cgsb },
    // The method asks for r ≥ 0.990; findings mention r².
    rSquared: { value: 0.99 ** 2, source: cgsb },
    directions: {
      asked: 'depressurisation',
      source: { text: 'CAN/CGSB-149.10-2019, title and scope', seen: 'read' },
    },
    leakageAreaError: { value: 0.07, at_Pa: 10, source: cgsb },
  },
  formulas: weightedLine,
  normalisedAreaAt_Pa: [10],
  official: [
    {
      term: 'equivalent leakage area at 10 Pa',
      from: { of: 'mean', at_Pa: 10 },
      symbol: 'A_L',
      unit: 'cm2',
      customary: customary.squareInch,
      source: areaPressure,
    },
    {
      term: 'normalised leakage area at 10 Pa',
      from: { of: 'area', at_Pa: 10 },
      symbol: 'A_N',
      unit: 'cm2/m2',
      source: areaPressure,
    },
    {
      term: 'relative standard error of the leakage area at 10 Pa',
      from: { of: 'run', at_Pa: 10 },
      symbol: 'S_y',
      unit: '1',
      source: cgsb,
    },
    { term: 'air flow coefficient C', from: 'standard', symbol: 'C_L', unit: 'm3/(h·Pa^n)', source: cgsb },
    { term: 'flow exponent n', from: 'curve', symbol: 'n', unit: '1', source: cgsb },
    {
      term: 'air changes an hour at 50 Pa',
      from: { of: 'derived', at_Pa: 50 },
      symbol: 'n_pr',
      unit: '1/h',
      source: cgsb,
    },
  ],
  terms: {
    q50: 'air leakage rate at 50 Pa',
    n50: 'air changes an hour at 50 Pa',
    qE50: 'air leakage rate at 50 Pa per envelope area',
    qF50: 'air leakage rate at 50 Pa per floor area',
    ela4: 'equivalent leakage area at 4 Pa (discharge coefficient 0.611)',
    ela10: 'equivalent leakage area at 10 Pa (discharge coefficient 0.611)',
  },
  notes: [
    'State in the report whether the building was as operated or closed up, and whether adjoining spaces were guarded.',
    'Only the multi-point test of the method is calculated, not its one- and two-point tests.',
    viscosityNote,
    'The line is weighted by the square of the flow; leakage areas are those of a sharp-edged hole.',
    'The correction to reference air is taken as in ISO 9972:2015: the text of the method was not at hand. Its limits are from memory.',
  ],
}
