import type { AdjoiningSpaces } from '../../contract/record/index.js'
import { at50, printedLimit, seen, type TargetPreset } from '../target.js'

const tables = seen('National Building Code of Canada 2020, tables 9.36.6.4, as copied in public code files')

/** Tier, air changes an hour at 50 Pa, normalised leakage area at 10 Pa in cm²/m², normalised leakage rate at 50 Pa in L/(s·m²). */
type Tier = readonly [tier: string, ach: number, nla: number, nlr: number]

const guarded: readonly Tier[] = [
  ['AL-1A', 2.5, 1.2, 0.89],
  ['AL-2A', 2.0, 0.96, 0.71],
  ['AL-3A', 1.5, 0.72, 0.53],
  ['AL-4A', 1.0, 0.48, 0.35],
  ['AL-5A', 0.6, 0.29, 0.21],
]

const unguarded: readonly Tier[] = [
  ['AL-1B', 3.0, 1.92, 1.17],
  ['AL-2B', 2.5, 1.6, 0.98],
  ['AL-3B', 2.0, 1.28, 0.78],
  ['AL-4B', 1.5, 0.96, 0.59],
  ['AL-5B', 1.0, 0.64, 0.39],
  ['AL-6B', 0.6, 0.38, 0.23],
]

const canadian =
  (how: AdjoiningSpaces) =>
  ([tier, ach, nla, nlr]: Tier): TargetPreset => ({
    id: `canada-${tier.toLowerCase()}`,
    label: `Canada, ${tier} (${how})`,
    scheme: 'Canada',
    edition: 'NBC 2020',
    directions: 'any',
    // One metric is enough in the British Columbia code; a change proposal drops the air changes.
    satisfiedBy: 'any',
    area: 'enclosure area',
    adjoiningSpaces: { accepted: [how], otherwise: 'invalidates', source: tables },
    limits: [
      at50('n50', ach, tables),
      { quantity: 'aE10', limit: nla, referencePressure_Pa: 10, source: tables },
      printedLimit('qE50', nlr, 'L/(s·m2)', tables),
    ],
    ...(how === 'unguarded' && {
      notes: ['Another public copy of the table has other values for the B tiers.'],
    }),
  })

export const canada: readonly TargetPreset[] = [
  ...guarded.map(canadian('guarded')),
  ...unguarded.map(canadian('unguarded')),
]
