import { remembered, seen, type TargetPreset } from '../target.js'

const faq = seen('French building regulation, FAQ RE2020 nos. 128 and 134')

const french = (id: string, label: string, limit: number): TargetPreset => ({
  id,
  label,
  scheme: 'France',
  edition: 'RE2020, limits as in RT 2012',
  directions: 'any',
  satisfiedBy: 'all',
  area: 'loss area without the lowest floor',
  preparation: {
    accepted: ['method 3'],
    otherwise: 'caution',
    source: remembered('French guide to ISO 9972: method 3'),
  },
  sampling: {
    factor: 1.2,
    source: seen('French trade pages on RE2020: 1.2 times the weighted mean of the sample'),
    sizes: [{ upToHomes: 30, tests: 3 }, { tests: 6 }],
    sizeSource: remembered('FD P50-784: 3 homes of up to 30, 6 of more'),
  },
  noLargeBuildingException: seen(
    'Cerema FAQ: a highest pressure below 50 Pa is not usable, even above 4 000 m³',
  ),
  limits: [{ quantity: 'qT_pr', limit, referencePressure_Pa: 4, standIn: 'qE_pr', source: faq }],
  notes: ['Flats tested as a sample: enter the area-weighted mean, and mark it as a sample.'],
})

export const france: readonly TargetPreset[] = [
  french('france-house', 'France, house', 0.6),
  french('france-flats', 'France, flats', 1),
]
