import { evaluate } from '@draughtbook/shared-calc'
import shareBelow from '@stdlib/stats-base-dists-t-cdf'
import { describe, expect, it } from 'vitest'
import { coverageOf, directions, drawCell, quantities } from '../bench/coverage'
import { chanceFrom } from '../bench/houses/chance'
import { heldBack, known, trueFlow } from '../bench/houses/house'
import { precise, usual } from '../bench/houses/instruments'
import { simulatedTest } from '../bench/houses/simulated-test'
import { reliabilityOf } from '../bench/reliability'

const TESTS = 250
/** Three standard deviations of a share of 95 % in 250 tests are 4.1 %. */
const LEAST = 0.909

const cells = [
  ['houses held back, precise instruments, still cold air', heldBack, { wind_m_s: 0, cold: true }, precise],
  ['houses held back, usual instruments, 4 m/s', heldBack, { wind_m_s: 4 }, usual],
  ['known houses, precise instruments, 0 m/s', known, { wind_m_s: 0 }, precise],
  ['known houses, precise instruments, 4 m/s', known, { wind_m_s: 4 }, precise],
] as const

const drawn = cells.map(([, family, weather, instruments], i) =>
  drawCell(family, weather, instruments, TESTS, 40 + i),
)

describe('the stated 95 % interval holds the truth of simulated houses', () => {
  it.each(cells.map(([name], i) => ({ name, i })))('$name', ({ i }) => {
    for (const quantity of quantities)
      for (const which of directions) {
        const stated = (drawn[i]?.stated ?? []).filter(
          (one) => one.quantity === quantity && one.directions === which,
        )
        expect(stated.length).toBeGreaterThan(0.95 * TESTS)
        expect(coverageOf(stated), `${quantity}, ${which}`).toBeGreaterThan(LEAST)
      }
  })

  it('is no wider than it need be: the spread of the true values is most of the stated uncertainty', () => {
    for (const quantity of quantities) {
      const stated = drawn.flatMap((one) => one.stated).filter((one) => one.quantity === quantity)
      const scores = stated.map(
        (one) => (one.error - one.expectedCorrection) / one.relativeStandardUncertainty,
      )
      const spread = Math.sqrt(scores.reduce((sum, z) => sum + z * z, 0) / scores.length)
      expect(spread).toBeGreaterThan(0.8)
      expect(spread).toBeLessThan(1.15)
    }
  })
})

describe('the stated probability of meeting a target', () => {
  it('comes true as often as stated', () => {
    // 2,000 statements a figure: a share of a half has a standard deviation of 1.6 points with two for each test.
    for (const quantity of quantities) {
      const stated = drawn.flatMap((one) => one.stated).filter((one) => one.quantity === quantity)
      for (const { stated: probability, met } of reliabilityOf(stated))
        expect(Math.abs(met - probability), `${quantity} at ${probability}`).toBeLessThan(
          0.03 + 3 * 0.016 * Math.sqrt(4 * probability * (1 - probability)),
        )
    }
  })

  it('is Student’s share by the budget’s own correction, uncertainty and degrees of freedom', () => {
    const chance = chanceFrom(6)
    const { house, record } = (() => {
      let drawnHouse = known(chanceFrom(1))
      const keep = (c: Parameters<typeof known>[0]) => {
        drawnHouse = known(c)
        return drawnHouse
      }
      const test = simulatedTest(keep, { wind_m_s: 3 }, usual, chance)
      return { house: drawnHouse, record: test.record }
    })()
    const limit = trueFlow(house, 4) * 1.05
    const target = { quantity: 'q_pr', referencePressure_Pa: 4, limit, directions: 'mean' } as const
    const { decision, uncertainty } = evaluate({ ...record, target })
    const figure = uncertainty?.figures.find((one) => one.quantity === 'q_pr')
    if (!figure || !decision?.[0]) throw new Error('no decision')
    const z =
      (Math.log(limit / figure.value) - figure.expectedCorrection) / figure.relativeStandardUncertainty
    expect(decision[0].probability).toBeCloseTo(shareBelow(z, figure.effectiveDegreesOfFreedom), 10)
  })
})
