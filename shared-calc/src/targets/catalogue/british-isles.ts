import { at50, seen, type TargetPreset } from '../target.js'

const perEnvelope = (
  id: string,
  label: string,
  scheme: string,
  edition: string,
  limit: number,
  source: string,
): TargetPreset => ({
  id,
  label,
  scheme,
  edition,
  directions: 'any',
  satisfiedBy: 'all',
  area: 'envelope area, floor to the ground included',
  limits: [at50('qE50', limit, seen(source))],
})

export const britishIsles: readonly TargetPreset[] = [
  perEnvelope('england-2021', 'England 2021', 'England', '2021', 8, 'Approved Document L 2021 (England)'),
  perEnvelope(
    'england-before-2021',
    'England, before 2021',
    'England',
    'before 2021',
    10,
    'Approved Document L, editions before 2021 (England)',
  ),
  perEnvelope(
    'ireland-2019',
    'Ireland 2019',
    'Ireland',
    '2019',
    5,
    'Technical Guidance Document L 2019 (Ireland)',
  ),
  perEnvelope(
    'ireland-2011',
    'Ireland 2011',
    'Ireland',
    '2011',
    7,
    'Technical Guidance Document L 2011 (Ireland)',
  ),
]
