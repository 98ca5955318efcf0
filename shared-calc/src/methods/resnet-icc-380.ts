import { customary } from '../catalogue/shown-figure.js'
import type { Source } from '../engine/index.js'
import { statedExtension } from '../formulas/repeated-readings.js'
import { astmE779Limits, astmTerms } from './astm-e779.js'
import { onePointFactors } from './curve-chapters.js'
import { type Method, takenOver } from './method.js'

const resnet: Source = { text: 'ANSI/RESNET/ICC 380', seen: 'memory' }

export const resnetIcc380: Method = {
  id: 'ansi-resnet-icc-380',
  title: 'ANSI/RESNET/ICC 380, one-point',
  volumeBasis: 'net',
  volumeBasisSource: resnet,
  limits: {
    ...takenOver(astmE779Limits),
    zeroFlowSamples: { value: 1, source: resnet },
    averagingTime_s: { value: 10, source: resnet },
  },
  formulas: onePointFactors,
  fewestReadings: 1,
  correctsBeyond: {
    altitude_m: 5000 * 0.3048,
    temperatureDifference_K: 30 / 1.8,
    source: { text: 'ANSI/RESNET/ICC 380: above 5 000 ft or 30 °F difference', seen: 'memory' },
  },
  judgesExtended: true,
  takesFlowForReferenceAir: true,
  assumedExponent: { value: 0.65, source: resnet },
  stations: { pressures_Pa: [50], slack: 0.1, repeats: { value: 1, source: resnet } },
  reported: { chapter: statedExtension, at_Pa: 50 },
  official: [
    {
      term: 'corrected air leakage rate at 50 Pa',
      from: { of: 'mean', at_Pa: 50 },
      symbol: 'q_pr',
      unit: 'm3/h',
      customary: customary.cfm,
      source: resnet,
    },
    {
      term: 'air changes an hour at 50 Pa',
      from: { of: 'derived', at_Pa: 50 },
      symbol: 'n_pr',
      unit: '1/h',
      source: resnet,
    },
    {
      term: 'extended air leakage rate at 50 Pa (reduced accuracy)',
      from: 'reported',
      symbol: 'q_ext',
      unit: 'm3/h',
      customary: customary.cfm,
      source: resnet,
    },
    {
      term: 'extended air changes an hour at 50 Pa (reduced accuracy)',
      from: 'reported',
      symbol: 'n_ext',
      unit: '1/h',
      source: resnet,
    },
    {
      term: 'effective leakage area at 4 Pa',
      from: { of: 'mean', at_Pa: 4 },
      symbol: 'A_L',
      unit: 'cm2',
      customary: customary.squareInch,
      source: resnet,
    },
  ],
  terms: astmTerms,
  notes: [
    'The flow is taken as the device shows it for reference air. Above 5 000 ft or 30 °F difference it is corrected by factors for temperature and altitude.',
    'The altitude factor is a straight line and the air is taken as dry: against exact densities the result is within 1.0 % up to 2 400 m, mean of both directions.',
    'A limit is compared with the extended result.',
    'Factors, exponent and extension (1.1) are from memory: check them against the text before you rely on a result.',
  ],
}
