import { derivedRates } from '../formulas/derived.js'
import type { TestRecord } from '../record/index.js'
import { type Block, type Calculation, fromRecord, type Given } from '../sheet/index.js'

/** The building's bases, as far as they were recorded. */
export function basesOf({ building }: Pick<TestRecord, 'building'>): { V?: Given; A_E?: Given; A_F?: Given } {
  const { volume_m3: volume, envelopeArea_m2: envelope, floorArea_m2: floor } = building
  return {
    ...(volume !== undefined && { V: fromRecord('building.volume_m3', volume) }),
    ...(envelope !== undefined && { A_E: fromRecord('building.envelopeArea_m2', envelope) }),
    ...(floor !== undefined && { A_F: fromRecord('building.floorArea_m2', floor) }),
  }
}

/** Rates per volume, envelope and floor, as far as the record holds the basis; with the interval's ends where asked. */
export function workDerived(
  calculation: Calculation,
  id: string,
  title: string,
  record: TestRecord,
  rate: Block,
  withEnds: boolean,
): Block {
  return calculation.add(id, title, derivedRates, {
    q_pr: rate.ref('q_pr'),
    ...(withEnds && rate.has('q_lo') && { q_lo: rate.ref('q_lo'), q_hi: rate.ref('q_hi') }),
    ...basesOf(record),
  })
}
