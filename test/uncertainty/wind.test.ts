import { evaluate } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { randomFrom } from '../../shared-calc/src/assessment/simulation/random.js'
import { drawHouse, pressureCoefficient } from '../../shared-calc/src/assessment/simulation/wind/house.js'
import {
  insidePressure,
  outsidePressures,
} from '../../shared-calc/src/assessment/simulation/wind/inside-pressure.js'
import { drawWindTest } from '../../shared-calc/src/assessment/simulation/wind/wind-test.js'
import { coverageAt } from '../bench/coverage'

const still = { speed_m_s: 0, bearing: 0 }
const equal = { indoor_kg_m3: 1.2, outdoor_kg_m3: 1.2 }

describe('the simulated house', () => {
  const house = drawHouse(randomFrom(4))

  it('follows its power law in still air of one temperature', () => {
    for (const pressure of [4, 10, 25, 50, -50]) {
      const flow = Math.sign(pressure) * 90 * Math.abs(pressure) ** house.exponent
      const inside = insidePressure(house, outsidePressures(house, still, equal), 90, flow, 1)
      expect(inside).toBeCloseTo(pressure, 4)
    }
  })

  it('lets in as much as it lets out, whatever the wind', () => {
    const outside = outsidePressures(
      house,
      { speed_m_s: 6, bearing: 1 },
      { indoor_kg_m3: 1.2, outdoor_kg_m3: 1.3 },
    )
    const inside = insidePressure(house, outside, 90, 0, 0)
    const flows = house.leaks.map(({ share }, i) => {
      const difference = inside - (outside[i] ?? 0)
      return 90 * share * Math.sign(difference) * Math.abs(difference) ** house.exponent
    })
    expect(Math.abs(flows.reduce((sum, flow) => sum + flow, 0))).toBeLessThan(0.01)
    expect(Math.max(...flows)).toBeGreaterThan(1)
    expect(Math.min(...flows)).toBeLessThan(-1)
  })

  it('has the stack pressure of the hydrostatic law between two heights', () => {
    const densities = { indoor_kg_m3: 1.2, outdoor_kg_m3: 1.3 }
    const outside = outsidePressures(house, still, densities)
    const [low, high] = [0, house.leaks.length - 1]
    const rise = (house.leaks[high]?.height_m ?? 0) - (house.leaks[low]?.height_m ?? 0)
    expect((outside[low] ?? 0) - (outside[high] ?? 0)).toBeCloseTo(0.1 * 9.80665 * rise, 10)
  })

  it('is pressed on the side the wind comes from and drawn on the others', () => {
    const wall = { share: 1, faces: 0, height_m: 2 }
    expect(pressureCoefficient(wall, 0.5, 0)).toBeGreaterThan(0)
    expect(pressureCoefficient(wall, 0.5, Math.PI / 2)).toBeLessThan(0)
    expect(pressureCoefficient(wall, 0.5, Math.PI)).toBeLessThan(0)
  })
})

describe('the simulated test', () => {
  it('finds the truth without wind within the errors of its instruments', () => {
    const random = randomFrom(9)
    for (let i = 0; i < 20; i += 1) {
      const { record, truth } = drawWindTest(0, random)
      // Four standard uncertainties of the calibration, 1.5 %.
      expect(Math.abs(Math.log(evaluate(record).results.q50.value / truth.q50))).toBeLessThan(0.065)
    }
  })

  it('shows at 4 m/s that fit scatter alone promises too much and the full budget keeps its word', () => {
    const { q50, ela4 } = coverageAt(4, 400)
    // Three standard deviations of a share of 400 tests are 3.3 %.
    expect(q50.budget).toBeGreaterThan(0.917)
    expect(ela4.budget).toBeGreaterThan(0.897)
    expect(ela4.budget).toBeLessThan(0.983)
    expect(ela4.fitScatter).toBeLessThan(0.75)
  })
})
