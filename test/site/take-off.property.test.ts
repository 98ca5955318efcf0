import { InputError, measureTakeOff, type Space, toMetres } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { box, space, takeOffOf } from './support/spaces.js'

const length = fc.double({ min: 0.5, max: 30, noNaN: true })
const room: fc.Arbitrary<Space> = fc
  .record({ l: length, w: length, h: length, countsIn: fc.constantFrom('both', 'net', 'overall internal') })
  .map(({ l, w, h, countsIn }) => space(box(l, w, h), { countsIn: countsIn as Space['countsIn'] }))
const rooms = fc.array(room, { minLength: 1, maxLength: 12 })

const close = (a: number | undefined, b: number | undefined) => {
  if (a === undefined || b === undefined) {
    expect(a).toBe(b)
    return
  }
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(a), Math.abs(b)))
}

const totals = (spaces: Space[], scaleUncertainty = 0.01) => {
  const { netVolume, overallInternalVolume, floorArea } = measureTakeOff(
    takeOffOf(spaces, { scaleUncertainty }),
  )
  return [netVolume, overallInternalVolume, floorArea]
}

describe('properties of a take-off', () => {
  it('splitting a room in two changes neither volumes nor floor area', () => {
    fc.assert(
      fc.property(rooms, fc.nat(), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (all, pick, share) => {
        const at = pick % all.length
        const split = all.flatMap((one, i) => {
          if (i !== at || one.solid.shape !== 'box') return [one]
          const { length_m, width_m, height_m } = one.solid
          return [share, 1 - share].map((part) => ({
            ...one,
            solid: box(length_m * part, width_m, height_m),
          }))
        })
        const [before, after] = [totals(all), totals(split)]
        for (const [i, total] of before.entries()) close(after[i]?.value, total?.value)
      }),
    )
  })

  it('splitting a room in two changes no uncertainty that all lengths share', () => {
    fc.assert(
      fc.property(
        length,
        length,
        length,
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (l, w, h, share) => {
          const exact = { lengthUncertainty_m: 0 }
          const [whole] = totals([space(box(l, w, h), exact)])
          const [halves] = totals([
            space(box(l * share, w, h), exact),
            space(box(l * (1 - share), w, h), exact),
          ])
          close(halves?.standardUncertainty, whole?.standardUncertainty)
        },
      ),
    )
  })

  it('the order of the rooms changes nothing', () => {
    fc.assert(
      fc.property(
        rooms.chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))),
        ([all, shuffled]) => {
          const [before, after] = [totals(all), totals(shuffled)]
          for (const [i, total] of before.entries()) {
            close(after[i]?.value, total?.value)
            close(after[i]?.standardUncertainty, total?.standardUncertainty)
          }
        },
      ),
    )
  })

  it('the unit of length changes nothing: the same rooms in metres and in another unit', () => {
    const perMetre = { mm: 1000, cm: 100, dm: 10, ft: 1 / 0.3048, in: 1 / 0.0254 }
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(perMetre) as (keyof typeof perMetre)[])),
        length,
        length,
        length,
        (unit, l, w, h) => {
          const read = (metres: number) => toMetres(metres * perMetre[unit], unit, 'B2')
          const [metric] = totals([space(box(l, w, h))])
          const [other] = totals([space(box(read(l), read(w), read(h)))])
          close(other?.value, metric?.value)
        },
      ),
    )
  })

  it('all lengths twice as long give eight times the volume and four times the floor', () => {
    fc.assert(
      fc.property(length, length, length, (l, w, h) => {
        const [small, , floor] = totals([space(box(l, w, h))])
        const [large, , largeFloor] = totals([space(box(2 * l, 2 * w, 2 * h))])
        close(large?.value, 8 * (small?.value ?? 0))
        close(largeFloor?.value, 4 * (floor?.value ?? 0))
      }),
    )
  })

  it('refuses a unit that is no length, naming the cell', () => {
    expect(() => toMetres(1, 'ells', 'Rooms!B2')).toThrow(InputError)
    expect(() => toMetres(1, 'ells', 'Rooms!B2')).toThrow('Rooms!B2: "ells" is not a unit of length')
  })
})
