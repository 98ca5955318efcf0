import type { TargetDirections, TargetQuantity, VolumeBasis } from '../contract/record/index.js'
import type { Source } from '../engine/index.js'

/** One limit of a target; `when` bounds the internal volume, in m³, for which it counts. */
export interface LimitRule {
  readonly quantity: TargetQuantity
  readonly limit: number
  readonly referencePressure_Pa: number
  readonly when?: { readonly atLeast_m3?: number; readonly above_m3?: number; readonly upTo_m3?: number }
  readonly source: Source
}

export interface TargetPreset {
  readonly id: string
  readonly label: string
  readonly directions: TargetDirections
  readonly volumeBasis?: VolumeBasis
  readonly limits: readonly LimitRule[]
}

const passive: Source = { text: 'passive house criteria', seen: 'read' }
const passiveLarge: Source = { text: 'passive house criteria, large buildings', seen: 'memory' }
const england: Source = { text: 'Approved Document L 2021 (England)', seen: 'read' }
const englandBefore: Source = { text: 'Approved Document L, editions before 2021 (England)', seen: 'read' }
const ireland: Source = { text: 'Technical Guidance Document L 2019 (Ireland)', seen: 'read' }
const germany: Source = { text: 'GEG § 26 (Germany)', seen: 'read' }
const france: Source = { text: 'French building regulation, air permeability', seen: 'read' }
const us: Source = { text: 'US model energy code', seen: 'read' }

const at50 = (
  quantity: TargetQuantity,
  limit: number,
  source: Source,
  when?: LimitRule['when'],
): LimitRule => ({
  quantity,
  limit,
  referencePressure_Pa: 50,
  ...(when && { when }),
  source,
})

const passiveHouse = (id: string, label: string, limit: number): TargetPreset => ({
  id,
  label,
  directions: 'mean',
  volumeBasis: 'net',
  limits: [at50('n50', limit, passive), at50('qE50', 0.6, passiveLarge, { atLeast_m3: 4000 })],
})

const german = (id: string, label: string, n50: number, qE50: number): TargetPreset => ({
  id,
  label,
  directions: 'each',
  volumeBasis: 'net',
  limits: [at50('n50', n50, germany, { upTo_m3: 1500 }), at50('qE50', qE50, germany, { above_m3: 1500 })],
})

const oneEnough = (id: string, label: string, limit: LimitRule): TargetPreset => ({
  id,
  label,
  directions: 'any',
  limits: [limit],
})

/** Limits in use. Local codes decide: check the edition in force where the building stands. Source: calculation reference, section 3. */
export const targetPresets: readonly TargetPreset[] = [
  passiveHouse('passive-house-new', 'Passive house, new', 0.6),
  passiveHouse('passive-house-retrofit', 'Passive house, retrofit', 1.0),
  oneEnough('england-2021', 'England 2021', at50('qE50', 8, england)),
  oneEnough('england-before-2021', 'England, before 2021', at50('qE50', 10, englandBefore)),
  oneEnough('ireland-2019', 'Ireland 2019', at50('qE50', 5, ireland)),
  german('germany-without-ventilation', 'Germany, without ventilation system', 3, 4.5),
  german('germany-with-ventilation', 'Germany, with ventilation system', 1.5, 2.5),
  oneEnough('france-house', 'France, house', {
    quantity: 'qE_pr',
    limit: 0.6,
    referencePressure_Pa: 4,
    source: france,
  }),
  oneEnough('france-flats', 'France, flats', {
    quantity: 'qE_pr',
    limit: 1,
    referencePressure_Pa: 4,
    source: france,
  }),
  oneEnough('us-zones-1-2', 'US model code, zones 1 and 2', at50('n50', 5, us)),
  oneEnough('us-zones-3-8', 'US model code, zones 3 to 8', at50('n50', 3, us)),
]
