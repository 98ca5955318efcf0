import { allCautions, parseRecord, preparationList, type TestRecord } from '@draughtbook/shared-calc'
import { planRequest } from './plan-request.js'
import { box, space } from './spaces.js'

const zeroes = (value: number) => Array.from({ length: 10 }, (_, i) => value + (i % 2 === 0 ? 0.1 : -0.1))
const pressures = [65, 56, 47, 39, 30, 21, 12]

const run = (direction: 'depressurisation' | 'pressurisation', coefficient: number) => ({
  direction,
  averagingTime_s: 30,
  zeroFlowBefore_Pa: zeroes(-1.2),
  zeroFlowAfter_Pa: zeroes(-1),
  readings: pressures.map((dp, i) => ({
    pressure_Pa: (direction === 'pressurisation' ? dp : -dp) - 1.1,
    flow_m3_h: Number((coefficient * dp ** 0.66 * (1 + (i % 3 === 0 ? 0.003 : -0.002))).toFixed(1)),
  })),
})

/** A whole invented house, from rooms to leaks, as a record@2. Demo data: no real building, firm or person. */
export const house: TestRecord = parseRecord({
  format: 'draughtbook/record@2',
  building: {
    name: 'Invented house, plot 7',
    address: '7 Nowhere Lane, Example Town',
    volume_m3: 319.2,
    volumeBasis: 'net',
    envelopeArea_m2: 312.5,
    floorArea_m2: 128.04,
    height_m: 5.4,
    altitude_m: 120,
  },
  test: {
    id: 'DEMO-7',
    date: '2026-11-30',
    tester: 'A. Tester (invented)',
    method: 'iso-9972:2015',
    preparation: 'method 1',
    stage: 'retest',
    openings: preparationList.map(({ kind, asks }) => ({
      opening: kind,
      kind,
      state: kind === 'natural ventilation openings' ? 'sealed' : asks['method 1'].states[0],
    })),
  },
  conditions: {
    indoorTemperature_C: 20,
    outdoorTemperature_C: 4,
    barometricPressure_Pa: 100_200,
    windSpeed_m_s: 2,
    windAt: 'ground',
  },
  runs: [run('depressurisation', 15.2), run('pressurisation', 16.9)],
  target: { preset: 'passive-house-new' },
  takeOff: {
    lengthUncertainty_m: 0.01,
    scaleUncertainty: 0.002,
    spaces: [
      space(box(8.1, 7.2, 2.5), { name: 'ground floor, rooms', storey: 'ground' }),
      space(box(8.1, 7.2, 0.3), {
        name: 'floor between the storeys',
        countsIn: 'overall internal',
        countsAsFloor: false,
      }),
      space(
        {
          shape: 'under slopes',
          length_m: 8.1,
          width_m: 7.2,
          kneeHeight_m: 1.2,
          ridgeHeight_m: 2.6,
          flatWidth_m: 3,
        },
        { name: 'upper floor, rooms', storey: 'upper' },
      ),
      space(
        { shape: 'floor area', floorArea_m2: 11.4, floorAreaUncertainty_m2: 0.1, height_m: 4.1 },
        { name: 'stair hall', storey: 'ground' },
      ),
      space(box(0.6, 0.4, 5), {
        name: 'service shaft',
        use: 'exclude',
        reason: 'open to the roof space',
        countsAsFloor: false,
      }),
    ],
    elements: [
      {
        name: 'ground floor slab',
        kind: 'floor',
        use: 'add',
        figure: { shape: 'rectangle', length_m: 9.7, height_m: 7.2 },
      },
      {
        name: 'long walls',
        kind: 'wall',
        use: 'add',
        count: 2,
        figure: { shape: 'rectangle', length_m: 9.7, height_m: 4 },
      },
      {
        name: 'gable walls',
        kind: 'wall',
        use: 'add',
        count: 2,
        figure: { shape: 'trapezium', length_m: 7.2, topLength_m: 3, height_m: 5.4 },
      },
      {
        name: 'roof',
        kind: 'roof',
        use: 'add',
        figure: { shape: 'area', area_m2: 110, areaUncertainty_m2: 1 },
      },
    ],
    stated: { from: 'drawing 12 of the invented house', volume_m3: 330, volumeBasis: 'net' },
  },
  plan: planRequest.plan,
  preparation: {
    cautions: allCautions.map((caution) => ({
      caution,
      answer: caution === 'safety systems' ? 'does not apply' : 'taken care of',
      by: 'A. Tester (invented)',
      on: '2026-11-30',
    })),
  },
  leaks: {
    list: [
      {
        place: 'cable entry, plant room',
        kind: 'service penetration',
        foundBy: 'smoke',
        seenUnder: 'both',
        size: { words: 'finger' },
        count: 2,
        photo: 'IMG-0001.jpg',
        fixed: true,
        fixedInRound: 1,
      },
      {
        place: 'sill of the south window',
        kind: 'window or door frame',
        foundBy: 'anemometer',
        seenUnder: 'depressurisation',
        size: { words: 'card gap', length_m: 2.4 },
        photo: 'IMG-0002.jpg',
        fixed: false,
      },
      {
        place: 'flap of the cooker hood',
        kind: 'device opening',
        foundBy: 'hand',
        seenUnder: 'pressurisation',
        size: { diameter_mm: 60 },
        fixed: false,
      },
      { place: 'membrane at the collar beam', kind: 'membrane lap', foundBy: 'thermal camera', fixed: false },
    ],
    earlierTests: [
      {
        date: '2026-11-02',
        airLeakageRate50_m3_h: 290,
        directions: ['depressurisation', 'pressurisation'],
        repairsAfter: 'cable entries sealed, membrane laps taped',
      },
    ],
  },
})
