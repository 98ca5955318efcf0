import { powerLaw, run } from '../support/records'
import { describeRules, type RuleCase } from './support'

type Change = RuleCase[1]
const basis =
  (value: 'net' | 'overall internal' | undefined, target?: object, method = 'iso-9972:2015'): Change =>
  (r) => {
    if (value === undefined) delete r.building.volumeBasis
    else r.building.volumeBasis = value
    if (target) r.target = { quantity: 'n50', limit: 1, ...target }
    r.test.method = method
  }
const where = ['building.volumeBasis']
const shape =
  (volume: number, envelope: number, floor: number): Change =>
  (r) => {
    Object.assign(r.building, { volume_m3: volume, envelopeArea_m2: envelope, floorArea_m2: floor })
  }
/** Pressurisation with flows in this ratio to depressurisation. */
const other =
  (ratio: number): Change =>
  (r) => {
    run(r, 1).readings = powerLaw([60, 50, 40, 30, 20, 10], 20 * ratio, 0.65)
  }

describeRules({
  'volume-basis': [
    ['net, as the target counts it', basis('net')],
    [
      'overall internal for a target that counts net volume',
      basis('overall internal'),
      { severity: 'invalidates', where },
    ],
    ['not stated', basis(undefined), { severity: 'caution', where }],
    ['overall internal, as ISO 9972 takes it, for a target without a basis', basis('overall internal', {})],
    ['net, for a target without a basis, by ISO 9972', basis('net', {}), { severity: 'note', where }],
    ['net, for a target without a basis, by EN 13829', basis('net', {}, 'en-13829:2001')],
    ['net, for a target of one’s own that counts net volume', basis('net', { volumeBasis: 'net' })],
    [
      'net, for one that counts overall volume',
      basis('net', { volumeBasis: 'overall internal' }),
      { severity: 'caution', where },
    ],
  ],
  // A sphere of 212 m³ has the radius ∛(3·212/(4π)) = 3.6993 m and the surface 4π·3.6993² = 171.93 m².
  'volume-shape': [
    ['a house', () => undefined],
    ['just more envelope than a sphere', shape(212, 172, 84)],
    [
      'less envelope than a sphere: no building can be',
      shape(212, 171, 84),
      { severity: 'caution', value: 171, where: ['building.volume_m3', 'building.envelopeArea_m2'] },
    ],
    ['a digit too many in the volume', shape(2120, 238, 84), [{ value: 238 }, { value: 2120 / 84 }]],
    [
      'a digit too few',
      shape(21.2, 238, 84),
      [
        { severity: 'caution', value: 238 },
        { severity: 'caution', value: 21.2 / 84, limit: 1.8 },
      ],
    ],
    ['digits exchanged: 122 for 212 m³, a mean height of 1.45 m', shape(122, 238, 84), { limit: 1.8 }],
    ['a bungalow of 30 by 5 by 2.4 m', shape(360, 468, 150)],
    ['a hall of 40 by 25 by 12 m', shape(12_000, 3560, 1000)],
    [
      'no floor area and no envelope area',
      (r) => {
        delete r.building.envelopeArea_m2
        delete r.building.floorArea_m2
        r.building.volume_m3 = 50
      },
    ],
  ],
  'missing-basis': [
    ['all three logged', () => undefined],
    [
      'no floor area',
      (r) => {
        delete r.building.floorArea_m2
      },
      { severity: 'note', where: ['building.floorArea_m2'] },
    ],
    [
      'no envelope area',
      (r) => {
        delete r.building.envelopeArea_m2
      },
      { severity: 'note', where: ['building.envelopeArea_m2'] },
    ],
  ],
  'missing-preparation': [
    ['method and openings logged', () => undefined],
    [
      'method not logged',
      (r) => {
        delete r.test.preparation
      },
      { severity: 'note', where: ['test.preparation'] },
    ],
    [
      'openings empty',
      (r) => {
        r.test.openings = []
      },
      { severity: 'note', where: ['test.openings'] },
    ],
    [
      'neither',
      (r) => {
        delete r.test.preparation
        delete r.test.openings
      },
      { severity: 'note', where: ['test.preparation', 'test.openings'] },
    ],
  ],
  'missing-target': [
    ['a target', () => undefined],
    [
      'none',
      (r) => {
        delete r.target
      },
      { severity: 'note', where: ['target'] },
    ],
  ],
  'one-direction': [
    ['both run', () => undefined],
    [
      'one, where the target asks for both',
      (r) => void r.runs.pop(),
      { severity: 'invalidates', value: 1, limit: 2, where: ['runs'] },
    ],
    [
      'one, where each must meet the limit',
      (r) => {
        r.runs.pop()
        r.target = { quantity: 'n50', limit: 1, directions: 'each', volumeBasis: 'net' }
      },
      { severity: 'invalidates', where: ['runs'] },
    ],
    [
      'one, where one is enough',
      (r) => {
        r.runs.pop()
        r.target = { preset: 'england-2021' }
      },
      { severity: 'note', where: ['runs'] },
    ],
    [
      'one, without a target',
      (r) => {
        r.runs.pop()
        delete r.target
      },
      { severity: 'note', where: ['runs'] },
    ],
  ],
  // Ranges of ordinary tests: common practice, no source.
  'implausible-value': [
    [
      'values of an ordinary test at the ends of the ranges',
      (r) => {
        r.building.height_m = 2
        r.conditions.barometricPressure_Pa = 60_000
      },
    ],
    [
      'a volume of 3 m³',
      (r) => {
        r.building.volume_m3 = 3
      },
      { severity: 'caution', where: ['building.volume_m3'], value: 3, limit: 30 },
    ],
    [
      'a barometer above all records',
      (r) => {
        r.conditions.barometricPressure_Pa = 110_000
      },
      { severity: 'caution', where: ['conditions.barometricPressure_Pa'], limit: 108_500 },
    ],
  ],
  // Difference over mean of q and k·q is 2·(k − 1)/(k + 1): 0.15 at k = 2.15/1.85.
  'directions-differ': [
    ['the same', () => undefined],
    ['just below 15 % of the mean', other((2.15 / 1.85) * (1 - 1e-9))],
    [
      'just above 15 % of the mean',
      other((2.15 / 1.85) * (1 + 1e-9)),
      { severity: 'note', limit: 0.15, where: ['runs'] },
    ],
    ['smaller by as much', other((1.85 / 2.15) * (1 - 1e-9)), { severity: 'note', limit: 0.15 }],
  ],
  'sign-convention': [
    ['depressurisation below zero, pressurisation above', () => undefined],
    [
      'depressurisation logged above zero',
      (r) => {
        for (const reading of run(r).readings) reading.pressure_Pa *= -1
      },
      { severity: 'note', where: ['runs[0].readings'] },
    ],
    [
      'with zero-flow pressures, which are read the same way',
      (r) => {
        for (const reading of run(r).readings) reading.pressure_Pa *= -1
        run(r).zeroFlowBefore_Pa = Array.from({ length: 10 }, () => 0.5)
      },
      {
        severity: 'note',
        where: ['runs[0].readings', 'runs[0].zeroFlowBefore_Pa', 'runs[0].zeroFlowAfter_Pa'],
      },
    ],
  ],
})
