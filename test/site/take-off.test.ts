import { measureTakeOff, type Solid, type TakeOff } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { box, space, takeOffOf } from './support/spaces.js'

const net = (takeOff: TakeOff) => measureTakeOff(takeOff).netVolume
const volumeOf = (solid: Solid): number => net(takeOffOf([space(solid)]))?.value ?? Number.NaN

describe('volumes of solids', () => {
  it('Moscow papyrus, problem 14: frustum of base 4, top 2 and height 6 holds 56', () => {
    expect(
      volumeOf({ shape: 'frustum', length_m: 4, width_m: 4, topLength_m: 2, topWidth_m: 2, height_m: 6 }),
    ).toBeCloseTo(56, 12)
  })

  it('Euclid, Elements XII.7: a pyramid is a third of the prism of same base and height', () => {
    expect(3 * volumeOf({ shape: 'pyramid', length_m: 5.2, width_m: 3.1, height_m: 2.4 })).toBeCloseTo(
      volumeOf(box(5.2, 3.1, 2.4)),
      10,
    )
  })

  it('Euclid, Elements XI.28: a plane through the diagonals halves a box, as the wedge under a stair does', () => {
    expect(volumeOf({ shape: 'wedge', length_m: 3.6, width_m: 0.9, height_m: 2.6 })).toBeCloseTo(
      (3.6 * 0.9 * 2.6) / 2,
      12,
    )
  })

  it('a room under slopes holds what integrating its height over the width gives (rule of Simpson, piecewise)', () => {
    const [length, width, knee, ridge, flat] = [6.4, 5, 0.9, 2.5, 1.4]
    const slope = (width - flat) / 2
    const heightAt = (x: number): number =>
      x < slope
        ? knee + ((ridge - knee) * x) / slope
        : x <= slope + flat
          ? ridge
          : knee + ((ridge - knee) * (width - x)) / slope
    const simpson = (a: number, b: number) =>
      ((b - a) / 6) * (heightAt(a) + 4 * heightAt((a + b) / 2) + heightAt(b))
    const section = simpson(0, slope) + simpson(slope, slope + flat) + simpson(slope + flat, width)
    expect(
      volumeOf({
        shape: 'under slopes',
        length_m: length,
        width_m: width,
        kneeHeight_m: knee,
        ridgeHeight_m: ridge,
        flatWidth_m: flat,
      }),
    ).toBeCloseTo(length * section, 10)
  })

  it('floor area times mean clear height: 21.37 m² × 2.46 m = 52.5702 m³', () => {
    expect(volumeOf({ shape: 'floor area', floorArea_m2: 21.37, height_m: 2.46 })).toBeCloseTo(52.5702, 10)
  })
})

describe('uncertainty of a volume', () => {
  const solids: [string, Solid][] = [
    ['box', box(5.1, 3.4, 2.5)],
    ['wedge', { shape: 'wedge', length_m: 3.6, width_m: 0.9, height_m: 2.6 }],
    ['pyramid', { shape: 'pyramid', length_m: 4.1, width_m: 3, height_m: 1.7 }],
    [
      'frustum',
      { shape: 'frustum', length_m: 4, width_m: 3, topLength_m: 1.5, topWidth_m: 1.2, height_m: 1.1 },
    ],
    [
      'room under slopes',
      {
        shape: 'under slopes',
        length_m: 6.4,
        width_m: 5,
        kneeHeight_m: 0.9,
        ridgeHeight_m: 2.5,
        flatWidth_m: 1.4,
      },
    ],
  ]
  it.each(solids)('%s: JCGM 100:2008, 5.1.3 note 2, by moving each length by its uncertainty', (_, solid) => {
    const u = 0.01
    const lengths = Object.entries(solid).filter((entry): entry is [string, number] => entry[0] !== 'shape')
    const squares = lengths.map(([key, value]) => {
      const moved = (by: number) => volumeOf({ ...solid, [key]: value + by } as Solid)
      return ((moved(u) - moved(-u)) / 2) ** 2
    })
    const expected = Math.sqrt(squares.reduce((sum, square) => sum + square, 0))
    const got = net(takeOffOf([space(solid)]))?.standardUncertainty ?? Number.NaN
    expect(Math.abs(got / expected - 1)).toBeLessThan(1e-4)
  })

  it('a scale error of 1 % that all lengths share is 3 % of the volume, whatever the rooms', () => {
    const rooms = [
      space(box(5, 4, 2.5), { lengthUncertainty_m: 0 }),
      space(box(3, 2, 2.5), { lengthUncertainty_m: 0 }),
    ]
    const total = net(takeOffOf(rooms, { scaleUncertainty: 0.01 }))
    expect((total?.standardUncertainty ?? 0) / (total?.value ?? 1)).toBeCloseTo(0.03, 12)
  })
})

describe('a whole take-off', () => {
  const rooms = [
    space(box(5, 4, 2.5), { name: 'living room', storey: 'ground' }),
    space(box(3, 4, 2.5), { name: 'kitchen', storey: 'ground' }),
    space(box(0.12, 4, 2.5), {
      name: 'wall between living room and kitchen',
      countsIn: 'overall internal',
      countsAsFloor: false,
    }),
    space(box(0.6, 0.4, 2.5), {
      name: 'service shaft',
      use: 'exclude',
      reason: 'open to the roof space above',
      countsAsFloor: false,
    }),
  ]
  const elements = [
    { name: 'floor', kind: 'floor', use: 'add', figure: { shape: 'rectangle', length_m: 8.12, height_m: 4 } },
    {
      name: 'gable',
      kind: 'wall',
      use: 'add',
      count: 2,
      figure: { shape: 'triangle', length_m: 4, height_m: 1.5 },
    },
    {
      name: 'slanted wall',
      kind: 'wall',
      use: 'add',
      figure: { shape: 'trapezium', length_m: 8, topLength_m: 6, height_m: 2.5 },
    },
    {
      name: 'roof',
      kind: 'roof',
      use: 'add',
      figure: { shape: 'area', area_m2: 40, areaUncertainty_m2: 0.5 },
    },
  ] as const
  const takeOff = takeOffOf(rooms, {
    elements: elements.map((element) => ({ ...element, lengthUncertainty_m: 0.01 })),
    stated: { from: 'drawing 12', volume_m3: 83, volumeBasis: 'net', floorArea_m2: 40 },
  })
  const result = measureTakeOff(takeOff)

  it('net volume leaves the wall out, overall internal volume counts it (hand figures)', () => {
    expect(result.netVolume?.value).toBeCloseTo(5 * 4 * 2.5 + 3 * 4 * 2.5 - 0.6 * 0.4 * 2.5, 10)
    expect(result.overallInternalVolume?.value).toBeCloseTo(79.4 + 0.12 * 4 * 2.5, 10)
  })

  it('floor area counts the rooms once, envelope area every element by kind', () => {
    expect(result.floorArea?.value).toBeCloseTo(32, 10)
    expect(result.envelopeArea?.value).toBeCloseTo(8.12 * 4 + 2 * 3 + 17.5 + 40, 10)
    expect(result.elements.map(({ kind, area }) => [kind, Number(area.value.toFixed(9))])).toStrictEqual([
      ['floor', 32.48],
      ['wall', 23.5],
      ['roof', 40],
    ])
  })

  it('says in words what the bases differ by, and what that does to the air change rate', () => {
    expect(result.bases).toContain(
      '"wall between living room and kitchen" (1.2 m³) is included in the overall internal volume only.',
    )
    expect(result.bases.at(-1)).toBe(
      'Here the overall internal volume is 1.2 m³ larger than the net volume. The same leakage gives an air change rate 1.5 % higher with the net volume.',
    )
  })

  it("objects to the plan's own totals where the take-off does not bear them out", () => {
    const stated = result.findings.filter(({ rule }) => rule === 'take-off-stated')
    expect(stated.map(({ where }) => where[0])).toStrictEqual([
      'takeOff.stated.volume_m3',
      'takeOff.stated.floorArea_m2',
    ])
    expect(stated[1]?.value).toBeCloseTo(-8, 10)
  })

  it('is silent about a stated total within the expanded uncertainty', () => {
    const agreeing = {
      ...takeOff,
      stated: { from: 'drawing 12', volume_m3: 79.5, volumeBasis: 'net' as const },
    }
    expect(measureTakeOff(agreeing).findings.filter(({ rule }) => rule === 'take-off-stated')).toStrictEqual(
      [],
    )
  })

  it('an exclusion larger than the rooms invalidates the total', () => {
    const all = takeOffOf([
      space(box(2, 2, 2)),
      space(box(3, 3, 3), { use: 'exclude', reason: 'slip of the pen', countsAsFloor: false }),
    ])
    expect(measureTakeOff(all).findings.map(({ rule, severity }) => [rule, severity])).toContainEqual([
      'take-off-empty',
      'invalidates',
    ])
  })

  it('every assumption is a finding', () => {
    const bare = measureTakeOff({
      spaces: [
        {
          ...space({ shape: 'floor area', floorArea_m2: 20, height_m: 2.5 }),
          lengthUncertainty_m: undefined,
        },
      ],
    })
    expect(bare.findings.map(({ rule }) => rule)).toStrictEqual([
      'assumed-length-uncertainty',
      'area-uncertainty-not-stated',
      'scale-uncertainty-not-stated',
    ])
  })
})
