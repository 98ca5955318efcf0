import { at50, remembered, seen, type TargetPreset } from '../target.js'

const geg = seen('GEG § 26 (Germany)')
const gegLarge = remembered('GEG § 26 (Germany), above 1 500 m³, with ventilation system')

const german = (id: string, label: string, n50: number, qE50: number): TargetPreset => ({
  id,
  label,
  scheme: 'Germany',
  edition: 'GEG as of 16 October 2023',
  directions: 'each',
  satisfiedBy: 'all',
  volumeBasis: 'net',
  volumeBasisSource: geg,
  otherVolumeBasis: 'invalidates',
  area: 'envelope area, floor to the ground included',
  limits: [
    at50('n50', n50, geg, { upTo_m3: 1500 }),
    at50('qE50', qE50, qE50 === 2.5 ? gegLarge : geg, { above_m3: 1500 }),
  ],
  notes: [
    'Preparation follows the national annex to DIN EN ISO 9972:2018-12, for which the record has no entry.',
  ],
})

const oib = seen('OIB-RL 6:2019, 4.10 (Austria)')
const austrian = (id: string, label: string, n50: number): TargetPreset => ({
  id,
  label,
  scheme: 'Austria',
  edition: 'OIB-RL 6:2019',
  directions: 'mean',
  satisfiedBy: 'all',
  preparation: { accepted: ['method 1'], otherwise: 'invalidates', source: seen('ÖNORM B 9972: method 1') },
  limits: [at50('n50', n50, oib)],
  notes: ['Each flat is tested by itself; flats are not averaged.'],
})

const directive = seen('RiLuMi 2022.1 (Switzerland)')
const minergie = (id: string, label: string, limit: number): TargetPreset => ({
  id,
  label,
  scheme: 'Minergie (Switzerland)',
  edition: 'RiLuMi 2022.1',
  directions: 'mean',
  satisfiedBy: 'all',
  decimalPlaces: 1,
  area: 'envelope area, floor to the ground included',
  limits: [at50('qE50', limit, directive)],
})

const sia = seen('SIA 180:2014 (Switzerland), as restated in RiLuMi 2022.1')
const swiss = (id: string, label: string, limit: number): TargetPreset => ({
  id,
  label,
  scheme: 'Switzerland',
  edition: 'SIA 180:2014',
  directions: 'mean',
  satisfiedBy: 'all',
  area: 'envelope area, floor to the ground included',
  limits: [at50('qE50', limit, sia)],
})

export const germanSpeaking: readonly TargetPreset[] = [
  german('germany-without-ventilation', 'Germany, without ventilation system', 3, 4.5),
  german('germany-with-ventilation', 'Germany, with ventilation system', 1.5, 2.5),
  austrian('austria-natural', 'Austria, without mechanical ventilation', 3),
  austrian('austria-mechanical', 'Austria, with mechanical ventilation', 1.5),
  minergie('minergie-new', 'Minergie, new', 1.2),
  minergie('minergie-p-new', 'Minergie-P and -A, new', 0.8),
  minergie('minergie-renewal', 'Minergie, renewal', 1.6),
  swiss('sia-180-new-natural', 'SIA 180, new, natural ventilation', 2.4),
  swiss('sia-180-new-mechanical', 'SIA 180, new, mechanical ventilation', 1.6),
  swiss('sia-180-new-aim', 'SIA 180, new, recommended value', 0.6),
  swiss('sia-180-altered-natural', 'SIA 180, altered, natural ventilation', 3.6),
  swiss('sia-180-altered-mechanical', 'SIA 180, altered, mechanical ventilation', 2.4),
  swiss('sia-180-altered-aim', 'SIA 180, altered, recommended value', 1.2),
]
