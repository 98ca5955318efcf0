import { at50, printedLimit, seen, type TargetPreset } from '../target.js'

const danish = (id: string, label: string, edition: string, limit: number): TargetPreset => ({
  id,
  label,
  scheme: 'Denmark',
  edition,
  directions: 'mean',
  satisfiedBy: 'all',
  area: 'heated floor area',
  limits: [printedLimit('qF50', limit, 'L/(s·m2)', seen('Danish trade page on the building regulations'))],
})

export const nordic: readonly TargetPreset[] = [
  danish('denmark-2010', 'Denmark 2010', '2010', 1.5),
  danish('denmark-2015', 'Denmark 2015', '2015', 1),
  {
    id: 'norway-tek17',
    label: 'Norway TEK17, route by measures',
    scheme: 'Norway',
    edition: 'TEK17',
    directions: 'any',
    satisfiedBy: 'all',
    limits: [at50('n50', 0.6, seen('Norwegian trade page on TEK17'))],
  },
]
