import type { Building } from '../../contract/record/index.js'
import { type BlockOf, byRule, type Calculation, fromRecord, type Given } from '../../engine/index.js'
import { derivedRates, normalisedLeakageArea } from '../../formulas/derived.js'
import type { AtPressure } from './worked-test.js'

/** What leakage is related to: internal volume, envelope area, floor area. */
export interface Bases {
  readonly V: Given | undefined
  readonly A_E: Given | undefined
  readonly A_F: Given | undefined
  readonly A_T: Given | undefined
}

/** The building's bases, as far as they were recorded. */
export function basesOf({ building }: { readonly building: Partial<Building> }): Bases {
  const { volume_m3: volume, envelopeArea_m2: envelope, floorArea_m2: floor, lossArea_m2: loss } = building
  return {
    V: volume === undefined ? undefined : fromRecord('building.volume_m3', volume),
    A_E: envelope === undefined ? undefined : fromRecord('building.envelopeArea_m2', envelope),
    A_F: floor === undefined ? undefined : fromRecord('building.floorArea_m2', floor),
    A_T: loss === undefined ? undefined : fromRecord('building.lossArea_m2', loss),
  }
}

/** Rates per volume, envelope and floor, as far as the record holds the basis; with the interval's ends where asked. */
export function workDerived(
  calculation: Calculation,
  id: string,
  title: string,
  { V, A_E, A_F, A_T }: Bases,
  rate: AtPressure['rate'],
  withEnds: boolean,
): BlockOf<typeof derivedRates> {
  const hasEnds = withEnds && rate.has('q_lo')
  return calculation.add(id, title, derivedRates, {
    q_pr: rate.ref('q_pr'),
    q_lo: hasEnds ? rate.ref('q_lo') : undefined,
    q_hi: hasEnds ? rate.ref('q_hi') : undefined,
    V,
    A_E,
    A_F,
    A_T,
  })
}

/** The leakage area of a sharp-edged hole over the envelope area, where the record holds that. */
export const workNormalisedArea = (
  calculation: Calculation,
  id: string,
  title: string,
  { A_E }: Bases,
  rate: AtPressure['rate'],
  pressure_Pa: number,
): BlockOf<typeof normalisedLeakageArea> | undefined =>
  A_E &&
  calculation.add(id, title, normalisedLeakageArea, {
    q_pr: rate.ref('q_pr'),
    dp_r: byRule(pressure_Pa, 'reference pressure'),
    A_E,
  })
