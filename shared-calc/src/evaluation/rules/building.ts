import { finding } from '../../catalogue/findings/finding.js'
import type { Finding } from '../../contract/record/index.js'
import { Calculation, fromRecord } from '../../engine/index.js'
import { buildingShape } from '../../formulas/limits.js'
import { basisOf } from '../work/definite-target.js'
import { inEach, type Rule, silent } from './rule.js'

/** The volume was worked out on the basis that the target (or else the method) asks for. */
export const volumeBasis: Rule = ({ record, method, test }) => {
  const { volume_m3: volume, volumeBasis: basis } = record.building
  if (volume === undefined) return silent
  const where = ['building.volumeBasis']
  const { volumeBasisSource: source } = method
  if (basis === undefined) return [finding('volume-basis/not-stated', { where, source })]
  const target = test.target?.target
  const preset = test.target?.preset
  const asked = target?.volumeBasis
  if (target && asked !== undefined && asked !== basis) {
    // A limit that the volume does not enter is judged all the same.
    const counts = test.criteria.some(({ quantity }) => basisOf(quantity) === 'n')
    return [
      finding(
        'volume-basis/other-than-target',
        {
          where,
          source: preset?.volumeBasisSource ?? { text: target.source, seen: 'read' },
          ...(counts && preset?.otherVolumeBasis && { severity: preset.otherVolumeBasis }),
        },
        { basis, asked, target: target.label },
      ),
    ]
  }
  if (asked === undefined && basis !== method.volumeBasis)
    return [
      finding(
        'volume-basis/other-than-method',
        { where, source },
        { basis, method: method.title, usual: method.volumeBasis },
      ),
    ]
  return silent
}

/** Bases that every evaluation relates the leakage to; the loss area counts only where a target asks for it. */
const bases = [
  { field: 'volume_m3', term: 'internal volume', result: 'air change rate' },
  { field: 'envelopeArea_m2', term: 'envelope area', result: 'specific leakage rate (envelope)' },
  { field: 'floorArea_m2', term: 'floor area', result: 'specific leakage rate (floor)' },
] as const

/** A quantity is not given because its basis is missing. */
export const missingBasis: Rule = ({ record }) =>
  inEach(bases, ({ field, term, result }) =>
    record.building[field] !== undefined
      ? silent
      : [finding('missing-basis', { where: [`building.${field}`] }, { term, result })],
  )

/** How the building was prepared was not logged. */
export const missingPreparation: Rule = ({ record }) => {
  const method = record.test.preparation === undefined
  const openings = (record.test.openings ?? []).length === 0
  if (!method && !openings) return silent
  const where = [...(method ? ['test.preparation'] : []), ...(openings ? ['test.openings'] : [])]
  const missing = method && openings ? 'both' : method ? 'method' : 'openings'
  return [finding('missing-preparation', { where }, { missing })]
}

/** No target was set, so nothing is judged. */
export const missingTarget: Rule = ({ record }) =>
  record.target !== undefined ? silent : [finding('missing-target', { where: ['target'] })]

/** Envelope areas above this many times the smallest possible one belong to no ordinary building. */
const LARGEST_SHARE = 4
/** Mean heights of storeys, m: attics under slopes to halls. All three: common practice, no source. */
const STOREY = { lowest: 1.8, highest: 15 } as const

/** Volume, envelope area and floor area can belong to one building: a slip of the pen in one of them shows here. */
export const volumeShape: Rule = ({ record }) => {
  const { volume_m3: volume, envelopeArea_m2: envelope, floorArea_m2: floor } = record.building
  if (volume === undefined || (envelope === undefined && floor === undefined)) return silent
  const shape = new Calculation().add('shape', 'shape of the building', buildingShape, {
    V: fromRecord('building.volume_m3', volume),
    A_F: floor === undefined ? undefined : fromRecord('building.floorArea_m2', floor),
  })
  const findings: Finding[] = []
  const smallest = shape.value('A_min')
  if (envelope !== undefined && (envelope < smallest || envelope > LARGEST_SHARE * smallest)) {
    const limit = envelope < smallest ? smallest : LARGEST_SHARE * smallest
    const where = ['building.volume_m3', 'building.envelopeArea_m2']
    findings.push(
      finding(
        envelope < smallest ? 'volume-shape/envelope-small' : 'volume-shape/envelope-large',
        { where, value: envelope, limit },
        { envelope, volume, limit },
      ),
    )
  }
  if (floor !== undefined) {
    const value = shape.value('h_m')
    const { lowest, highest } = STOREY
    if (value < lowest || value > highest)
      findings.push(
        finding(
          'volume-shape/storey-height',
          {
            where: ['building.volume_m3', 'building.floorArea_m2'],
            value,
            limit: value < lowest ? lowest : highest,
          },
          { height: value, lowest, highest },
        ),
      )
  }
  return findings
}
